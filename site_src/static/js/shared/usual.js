// The pressure a nozzle is usually run at: by its kind, and a smooth bore by whether a crew or a device holds it.
import { bare } from "./units.js";

const FIXED = ["master", "aerial"];

export function usualPressure(data, family, { kind, tip }, device = "none") {
  const usual = data.usual[family];
  if (kind !== "smooth") return usual[kind];
  return FIXED.includes(device) || data.tips.find(({ id }) => id === tip)?.is_master ? usual.master : usual.smooth;
}

// A bed's end changed, and what holds it from `was` to `is`: where its pressure was the usual one, it becomes the usual one of
// what it is now.
export function withUsual(data, family, end, changes, [was, is]) {
  const after = { ...end, ...changes };
  const isUsual = bare(end.pressure).trim() === "" || end.pressure === usualPressure(data, family, end, was);
  return isUsual ? { ...after, pressure: usualPressure(data, family, after, is) } : after;
}

// The end of a bed on another hose, from `was` to `is`, or made a smooth bore on it: its tip is the usual one of that hose, unless
// another was picked or the hose has none.
export function withUsualTip(hoses, end, [was, is]) {
  const usual = (hose) => hoses.find(({ id }) => id === hose)?.tip ?? null;
  const isUsual = was === is ? hoses.some(({ tip }) => tip === end.tip) : end.tip === usual(was);
  return end.kind === "smooth" && isUsual && usual(is) ? { ...end, tip: usual(is) } : end;
}
