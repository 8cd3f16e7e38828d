// What a card writes in the log of its rig: that the rig moved, and that this was a slip of the finger.
import { Log } from "../bay/log.js";
import { fill } from "../shared/site.js";
import { HALT, idOf, moved, tagOf } from "./tagged.js";

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

// The red key was touched by mistake: the log says so, and the rig is as it was.
export async function takeBack(run, stopped, words) {
  if (!moved(run, stopped)) return;
  const log = await Log.open(run.rig);
  await log.add("withdrawn", { reason: words.shift.mistouch, at: HALT }, { replaces: [idOf(run, stopped)] });
  await log.standing();
}
