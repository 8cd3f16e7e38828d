// A reading in the units of now, and the figures near it that are offered.
import { calc } from "../shared/engine.js";
import { bare, isAsTyped } from "../shared/units.js";

// The reading of an answer as it was typed, or its amount in the units of now.
export const entryOf = async (row, { entry, amount }, page) => (isAsTyped(entry, page.system) || amount === null ? entry : amountText(row, amount, page));

const amountText = async (row, amount, { units }) => (await calc.ask("limits.shown", { limit: { ...row.limit, kind: "target", value: amount, to: null }, own: null }, { units })).value;

// The newest of earlier readings as it is shown, or null.
export async function lastText(row, earlier, page) {
  const last = [...earlier].sort((one, other) => one.at_ms - other.at_ms).at(-1);
  return last ? amountText(row, last.amount, page) : null;
}

// The figures next to what stands in the tray, or next to the last reading, or to the limit.
export async function nearby(row, state, { data, system, units }) {
  const isNone = row.limit.kind === "max" && row.limit.value === 0; // where none is the good answer it is offered first
  state.start = state.entry ? bare(state.entry) : isNone ? state.limit.value : state.last ?? state.limit.value;
  const step = row.limit.quantity ? data.systems[system].steps[row.limit.quantity] : data.steps[row.unit];
  [state.near] = await calc.ask("entry.near", { rows: [{ text: state.start, kind: row.limit.quantity ?? "count", step }], decimal: units.decimal, below: 2, above: 2 });
}
