// The power path in sentences, for whoever does not see the drawing, and to learn to read it.
import { fill } from "../shared/site.js";

export const rolling = (state) => Boolean(state.moved || state.rolls);

const turns = (state, power) => {
  const parts = [
    state.engine !== "off" && power.engine, state.shaft_turning && power.shaft, state.pump_turning && power.pump, rolling(state) && power.wheels,
  ].filter(Boolean);
  return fill(power.turns, { what: parts.length ? parts.join(", ") : power.nothing });
};

// What turns, and what the pump is joined to.
export const turning = (state, power, family) => `${turns(state, power)} ${power[family === "split" ? `joined_${state.collar}` : `${family}_${state.collar}`]}`;

// All that the large picture shows.
export const sayings = (state, { power }) => [
  turns(state, power),
  power[`joined_${state.collar}`],
  power[state.shift && state.shift !== "air" ? `by_${state.shift}` : `air_${airCode(state.air)}`],
  state.grinding ? power.grinds : null,
  state.moved ? power.runs_away : state.strains ? power.strains : null,
].filter(Boolean);

function airCode(air) {
  const side = ["pump", "road"].find((name) => air[name] === "full");
  if (side) return air[side === "pump" ? "road" : "pump"] === "leaving" ? `${side}_leaving` : side;
  return air.pump === "leaving" || air.road === "leaving" ? "leaving" : "none";
}
