// Which part of a line is open in the tray.
import { isInto, isJoint, linesOf, PIPED } from "./layout.js";

export const NOW = "now"; // the picture turned over: what flows

const OF = { hose: "hose", length: "length", height: "height", kind: "nozzle", flow: "nozzle", least: "nozzle", tip: "nozzle", pressure: "nozzle", runs: "more", device: "more", loss: "more", loss_at: "more", device_most: "more", gauge: NOW };

// The tab that a refused entry stands in, or null where it is none of a line.
export function tabOf(refusal, layout) {
  if (!refusal || !(refusal.field in OF)) return null;
  return refusal.field === "gauge" || linesOf(layout).some(({ id }) => id === refusal.line) ? OF[refusal.field] : null;
}

export const tabsOf = (line) => ["hose", ...(line.hose === PIPED ? [] : ["length"]), ...(isJoint(line) || isInto(line) ? [] : ["nozzle"]), ...(isInto(line) ? [] : ["height"]), "more"];

// A line that has no such part opens at its hose.
export const openTab = (tab, line) => (tab === NOW || tabsOf(line).includes(tab) ? tab : "hose");
