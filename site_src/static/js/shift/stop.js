// What is said of a stop: by the order of its hazard, by its reason, or by the step that it came at.
import { finalOf } from "../shared/order.js";

const TITLES = { not_seen: "stop_title", repeat: "stop_title", time_up: "time_up_title", other_card: "other_title" };
const OWN = { other_card: "other" };

// The order that a stop is answered with, if it is a hazard's; after a second failure nothing in it offers another try.
export const orderOf = ({ order, reason }, orders, words) => (reason === "failed_twice" ? finalOf(orders[order], words) : orders[order]);

export function saidOf({ reason, step }, steps, { shift }) {
  const own = OWN[reason];
  return {
    title: shift[TITLES[reason]],
    act: own ? shift[`${own}_do`] : steps[step].not_seen,
    never: own ? shift[`${own}_never`] : steps[step].never,
  };
}
