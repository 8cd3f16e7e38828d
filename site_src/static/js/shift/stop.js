// What is said of a stop: by its reason, or by the step that it came at.
const TITLES = { danger: "danger_title", not_seen: "stop_title", repeat: "stop_title", failed_twice: "twice_title", time_up: "time_up_title", other_card: "other_title" };
const OWN = { danger: "danger", failed_twice: "twice", other_card: "other" };

export function saidOf({ reason, step }, steps, { shift }) {
  const own = OWN[reason];
  return {
    title: shift[TITLES[reason]],
    act: own ? shift[`${own}_do`] : steps[step].not_seen,
    never: own ? shift[`${own}_never`] : steps[step].never,
  };
}
