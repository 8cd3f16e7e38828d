// The power path as it should stand once the sign of the offered step has come: the card's beginning, changed by what
// each step done so far has proved, then by this one (which may be an earlier guard, looked at again). An ask counts
// only by the answer that was given. `begin` and `changes`: data/power.toml; the rest is a run of calc.shift.run and its sequence.

export function pathAt({ sequence, position, step, facts, rig, begin, changes }) {
  const state = { ...begin[sequence.id], air: full(begin[sequence.id].air) };
  const proves = ({ kind, proves: proved = [], answers = [] }) =>
    kind === "ask" ? answers.flatMap((answer) => answer.proves ?? []).filter((fact) => facts.includes(fact)) : proved;
  const offered = sequence.steps.filter(({ id, kind }) => id === step && kind !== "ask");
  for (const each of [...sequence.steps.slice(0, position), ...offered]) {
    proves(each).forEach((fact) => change(state, changes[fact] ?? {}));
  }
  return drawn(state, rig);
}

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
