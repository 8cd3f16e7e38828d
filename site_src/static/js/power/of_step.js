// The power path as it stands before the sign of the offered step has come, and after it: the card's beginning, changed by what
// each step done so far has proved, then by this one (which may be an earlier guard, looked at again). An ask counts only by the
// answer that was given. `path`: data/why/power.toml for this card; the rest is a run of calc.shift.run and its sequence.
import { mayFit } from "../shift/known.js";

// Which drawing a rig of this drive has, or undefined where nobody has said the drive.
export const familyOf = (families, drive) => Object.keys(families).find((family) => families[family].includes(drive));

export function pathAt({ sequence, position, step, facts, rig, path }) {
  const { pto, front, ...begin } = path.begin;
  const own = { pto, front }[familyOf(path.families, rig.drive)];
  const state = { ...begin, ...own };
  state.air = full(state.air);
  const proves = ({ kind, proves: proved = [], answers = [] }) =>
    kind === "ask" ? answers.flatMap((answer) => answer.proves ?? []).filter((fact) => facts.includes(fact)) : proved;
  const offered = sequence.steps.filter(({ id, kind }) => id === step && kind !== "ask");
  for (const each of [...sequence.steps.slice(0, position).filter(({ only_if: only = {} }) => fitsKnown(only, rig)), ...offered]) {
    proves(each).forEach((fact) => change(state, path.changes[fact] ?? {}));
    change(state, path.act_changes[each.id] ?? {});
  }
  return drawn(state, rig);
}

const fitsKnown = (only, rig) => mayFit(only, Object.fromEntries(Object.entries(rig).filter(([, answer]) => answer !== "unknown")));

function change(state, changes) {
  const sides = state.air;
  Object.assign(state, changes);
  if (changes.air === "exhaust") state.air = leaving(sides);
  else if (changes.air) state.air = full(changes.air);
}

const full = (side) => ({ road: side === "road" ? "full" : "empty", pump: side === "pump" ? "full" : "empty" });

const leaving = (sides) => Object.fromEntries(Object.entries(sides).map(([side, air]) => [side, air === "empty" ? "empty" : "leaving"]));

// What only the rig can say stays unknown, unless its profile has said it.
function drawn(state, rig) {
  const known = (lit) => (lit === true || lit === false ? lit : null);
  const needle = state.speedometer !== "unknown" ? state.speedometer : { driveline: "up", wheels: "zero" }[rig.speedometer] ?? null;
  return {
    ...state,
    lights: { engaged: known(state.engaged), ok: known(state.ok), throttle: known(state.throttle) },
    speedometer: needle,
  };
}
