// A rig's checks after repair as plain data: the one that is open, the baseline, and the earlier ones. Kept at each touch.
import { keep, kept } from "../shared/store.js";

export const STEPS = ["shift", "circulate", "prime", "raise", "road"]; // each is confirmed; the first and last by the shift cards
const MOST_EARLIER = 50;
const nameOf = (id) => `quick:${id}`;

const fresh = (count) => ({ repaired: "", seen: {}, stopped: null, readings: Array.from({ length: count }, () => ({ engine_rpm: "", discharge_psi: "" })), begun_ms: null });

export async function opened(rig, count) {
  return (await kept(nameOf(rig.id))) ?? { rig_id: rig.id, revision: 0, baseline: null, earlier: [], open: fresh(count) };
}

export const keepQuick = (record) => keep(nameOf(record.rig_id), record);

const withOpen = (record, changes) => ({ ...record, revision: record.revision + 1, open: { ...record.open, ...changes } });

export const withRepaired = (record, repaired) => withOpen(record, { repaired });

export const withReading = (record, place, field, text) =>
  withOpen(record, { readings: record.open.readings.map((each, count) => (count === place ? { ...each, [field]: text } : each)) });

export const isOpenAt = ({ open }, step) => !open.stopped && open.seen[step] === undefined && STEPS.slice(0, STEPS.indexOf(step)).every((each) => open.seen[each] !== undefined);

export const withSeen = (record, step, wall) => withOpen(record, { seen: { ...record.open.seen, [step]: wall }, begun_ms: record.open.begun_ms ?? wall });

// What came after a step that was not so is no longer known either.
export const withUnseen = (record, step) =>
  withOpen(record, { seen: Object.fromEntries(Object.entries(record.open.seen).filter(([each]) => STEPS.indexOf(each) < STEPS.indexOf(step))) });

export const withStopped = (record, step, wall) => withOpen(record, { stopped: step, begun_ms: record.open.begun_ms ?? wall });

export const isUnderWay = ({ open }) => Object.keys(open.seen).length > 0 && !open.stopped && open.seen.road === undefined;

// The check is over, or is given up: it joins the earlier ones, with what it showed.
export function closed(record, { status, wall, count }) {
  const check = { ...record.open, status, at_ms: wall };
  return { ...record, revision: record.revision + 1, open: fresh(count), earlier: [check, ...record.earlier].slice(0, MOST_EARLIER) };
}

export const withBaseline = (record, check) =>
  ({ ...record, revision: record.revision + 1, baseline: { at_ms: check.at_ms, readings: check.readings.filter((each) => each.engine_rpm && each.discharge_psi) } });

// A baseline from a file, where the rig has none here; resolves to "taken", "same", "stands" or "unkept".
export async function takeBaseline({ rig_id, baseline }, count) {
  const record = await opened({ id: rig_id }, count);
  if (record.baseline) return JSON.stringify(record.baseline.readings) === JSON.stringify(baseline.readings) ? "same" : "stands";
  return (await keepQuick({ ...record, revision: record.revision + 1, baseline })) === "unkept" ? "unkept" : "taken";
}

export const withoutBaseline = (record) => ({ ...record, revision: record.revision + 1, baseline: null });

export const withEarlier = (record, earlier) => ({ ...record, revision: record.revision + 1, earlier });
