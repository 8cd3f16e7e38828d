// What is read aloud of a card as it stands.
import { fill } from "../site.js";
import { signOf } from "./known.js";
import { saidOf } from "./stop.js";

export function spoken({ state, steps, words }) {
  const { shift } = words;
  if (state.status === "done") return shift.done;
  if (state.status === "stopped") {
    const { title, act, never } = saidOf(state.stopped, steps, words);
    return [title, act, never].join(". ");
  }
  const step = steps[state.offer.step];
  if (state.offer.holding) return state.offer.hold_left_s > 0 ? step.holding : step.over;
  return [step.act, fill(shift.see_said, { see: signOf(step, state.rig) }), step.caution ?? ""].join(" ");
}
