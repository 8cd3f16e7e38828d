// What is said of a stop: by the order of its hazard, by its reason, or by the step that it came at.
const TITLES = { not_seen: "stop_title", repeat: "stop_title", failed_twice: "twice_title", time_up: "time_up_title", other_card: "other_title" };
const OWN = { failed_twice: "twice", other_card: "other" };

// The order that a stop is answered with, if it is a hazard's.
export const orderOf = ({ order }, orders) => orders[order];

export function saidOf({ reason, step }, steps, { shift }) {
  const own = OWN[reason];
  return {
    title: shift[TITLES[reason]],
    act: own ? shift[`${own}_do`] : steps[step].not_seen,
    never: own ? shift[`${own}_never`] : steps[step].never,
  };
}
