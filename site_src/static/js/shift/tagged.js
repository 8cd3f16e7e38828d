// A rig that moved on a card is out of service in its own log as well: from that stop until its release, or until the stop itself
// is said to have been a slip of the finger. Without a chosen rig nothing is written. calc.bay.standing says what ends it.
import { Log } from "../bay/log.js";
import { fill } from "../shared/site.js";
import { keptRecords } from "../shared/store.js";

const HALT = "halt"; // calc.bay.records
const AFTER = new Set(["decision", "repair", "release"]);

const idOf = (run, { at_s }) => `${HALT}-${run.id}-${Math.round(at_s * 1000)}`;
const moved = (run, stopped) => Boolean(run?.rig) && stopped?.reason === "danger";

// Write the stop of a run in the log of its rig, at once; resolves to what tagOf does.
export async function tag(run, stopped, { titles, sequence, words }) {
  if (!moved(run, stopped)) return null;
  const at_ms = Math.round(stopped.at_s * 1000);
  await new Log(run.rig, []).add("defect", {
    id: idOf(run, stopped), at_ms, origin: HALT, item: null, what: words.shift.tag_what, seen: fill(words.shift.tag_seen, { card: titles[sequence.id] }),
    place: "", state: "", limit: "", class: "out_of_service", scope: "apparatus", rule: "",
  });
  return tagOf(run, stopped);
}

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

// The red key was touched by mistake: the log says so, and the rig is as it was.
export async function takeBack(run, stopped, words) {
  if (!moved(run, stopped)) return;
  const log = await Log.open(run.rig);
  await log.add("withdrawn", { reason: words.shift.mistouch, at: HALT }, { replaces: [idOf(run, stopped)] });
  await log.standing();
}
