// What is read aloud of a card as it stands.
import { fill } from "../site.js";

export function spoken({ state, steps, words }) {
  const { shift } = words;
  if (state.status === "done") return shift.done;
  if (state.status === "stopped") {
    if (state.stopped.reason === "danger") return [shift.danger_title, shift.danger_do, shift.danger_never].join(". ");
    const step = steps[state.stopped.step];
    return [shift.stop_title, step.not_seen, step.never].join(". ");
  }
  const step = steps[state.offer.step];
  if (state.offer.holding) return state.offer.hold_left_s > 0 ? step.holding : step.over;
  return [step.act, fill(shift.see_said, step), step.caution ?? ""].join(" ");
}
