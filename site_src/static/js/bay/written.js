// What an item's forms come to as they are written: its defect, and the rig's own limit.
import { calc, Refusal } from "../shared/engine.js";
import { conditionOf, limitOf, NONE } from "./conditions.js";
import { figuresText, recordOf } from "./figures.js";
import { asWritten, limitText } from "./sentences.js";

// The record of a defect: what was seen with the figure it is about, or that there was none, and that its clock was not run.
export function defectOf(page, state, row, isUntimed) {
  const { words, data } = page;
  const { seen, rank, scope, rule } = state.form;
  const is = conditionOf(rule, data);
  const restricts = limitOf(is, rank) || (row.restricts && rank === "restricted" ? words.restricts[row.restricts] : "");
  return {
    origin: "check", item: row.id, what: data.text[row.id].title,
    seen: [is?.what, seen.trim(), state.entry && asWritten(state.entry, { ...row, ...row.limit }, words), state.figures.length ? figuresText(recordOf(state.figures), row, words) : "",
      state.isUnread ? words.round.not_read : "", isUntimed ? words.clock.not_run : "", restricts].filter(Boolean).join("; "),
    place: words.place[row.place], state: words.engine_state[row.state], limit: row.limit ? limitText(state.limit, row, page) : "",
    class: rank, scope, rule: rule === NONE ? "" : (is ?? row).source[0] ?? row.basis,
  };
}

// The limit that was typed for this rig; a Refusal where it is none.
export async function ownLimitOf(page, { value, to, whose }, row) {
  const read = async (text) => (await calc.ask("limits.judged", { limit: { ...row.limit, kind: "target" }, text: `${text}@${page.system}`, own: null, earlier: [] }, { units: page.units })).amount;
  const limit = { value: await read(value), to: row.limit.kind === "range" ? await read(to) : null, whose: whose.trim() };
  if (limit.to !== null && limit.to < limit.value) throw new Refusal({ field: "to", code: "other" });
  return limit;
}
