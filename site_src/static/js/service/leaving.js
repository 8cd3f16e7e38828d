// A part that is left with something not answered: what it is, and a touch of its own to go on without.
import { html } from "../../vendor/lit-html/lit-html.js";
import { colon } from "../shared/site.js";
import { labelOf } from "./entries.js";
import { nextAddress } from "./next.js";
import { testOf } from "./record.js";

const AT_THE_END = ["water_end_f"]; // read when the last run is over

// The fields of a part that want an answer and have none, in the order they stand in.
export function openIn({ record }, test) {
  if (record.finished_ms !== null || testOf(record, test.id).not_done) return [];
  const values = { ...(test.kind === "conditions" ? record.conditions : {}), ...testOf(record, test.id).values };
  return test.fields.filter(({ id, needed }) => needed && !values[id] && !AT_THE_END.includes(id)).map(({ id }) => id);
}

export const leavingView = (view, test, open, emergency) => html`
  <div class="dock doing">
    <section class="question hatched" role="alert"><p><b>${view.words.test.unanswered}${colon}</b> ${open.map((id) => labelOf(id, view)).join(" · ")}</p></section>
    <div class="acts">
      <button type="button" class="key key-act" @click=${() => { view.act.ask(null); view.act.goTo(open[0]); }}>${view.words.test.answer_it}</button>
      <a class="key" href=${nextAddress(view, test.id)}>${view.words.test.leave_open}</a>${emergency}</div>
  </div>`;
