// The power path in sentences, for whoever does not see the drawing, and to learn to read it.
import { fill } from "../shared/site.js";

export const rolling = (state) => Boolean(state.moved || state.rolls);

// What turns, and what the pump is joined to.
export function turning(state, power, family = "split") {
  const parts = [
    state.engine !== "off" && power.engine, state.shaft_turning && power.shaft, state.pump_turning && power.pump, rolling(state) && power.wheels,
  ].filter(Boolean);
  return `${fill(power.turns, { what: parts.length ? parts.join(", ") : power.nothing })} ${power[family === "split" ? `joined_${state.collar}` : `${family}_${state.collar}`]}`;
}
