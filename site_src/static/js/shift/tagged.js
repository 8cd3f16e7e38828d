// A rig that moved on a card is out of service in its own log as well: from that stop until its release, or until the stop itself
// is said to have been a slip of the finger. Without a chosen rig nothing is written until somebody says which it was. calc.bay.standing says what ends it.
import { Log } from "../bay/log.js";
import { keptRecords } from "../shared/store.js";

export const HALT = "halt"; // calc.bay.records
const AFTER = new Set(["decision", "repair", "release"]);

export const idOf = (run, { at_s }) => `${HALT}-${run.id}-${Math.round(at_s * 1000)}`;
export const moved = (run, stopped) => Boolean(run?.rig) && stopped?.reason === "danger";

// What the log has of a stop: { id, isOpen, canTakeBack: nothing was done since }; null where it is in none, or its rig is no more on this phone.
export async function tagOf(run, stopped) {
  if (!moved(run, stopped) || !(await keptRecords("rigs")).some(({ id }) => id === run.rig.id)) return null;
  const log = await Log.open(run.rig);
  const id = idOf(run, stopped);
  if (!log.records.some((record) => record.id === id)) return null;
  const standing = await log.standing();
  const isAbout = ({ kind, defect, defects }) => AFTER.has(kind) && (defect === id || defects?.includes(id));
  return { id, isOpen: standing.defects.some((defect) => defect.id === id), canTakeBack: !log.records.some(isAbout) };
}
