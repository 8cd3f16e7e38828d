// What is read aloud of a card as it stands.
import { spokenOrder } from "../shared/order.js";
import { fill } from "../shared/site.js";
import { signOf } from "./known.js";
import { orderOf, saidOf } from "./stop.js";

export function spoken({ state, steps, words, orders }) {
  const { shift } = words;
  if (state.offer.can_go_on) return shift.left_title;
  if (state.status === "done") return shift.done;
  if (state.status === "stopped") {
    const order = orderOf(state.stopped, orders, words);
    if (order) return spokenOrder(order);
    const { title, act, never } = saidOf(state.stopped, steps, words);
    return [title, act, never].filter(Boolean).join(". ");
  }
  const step = steps[state.offer.step];
  if (state.offer.holding) return state.offer.hold_left_s > 0 ? step.holding : step.over;
  const cautions = [step.caution ?? "", ...(step.warns ?? []).map((name) => orders[name].short)];
  return [step.act, fill(shift.see_said, { see: signOf(step, state.rig) }), ...cautions].join(" ");
}
