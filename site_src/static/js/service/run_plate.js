// The plate of a run: its clock over its minutes as a line, the readings its stations.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { route } from "../line/route.js";
import { fill } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { optionOf, tipName, tipOf } from "./tips.js";

const MINUTE_S = 60;

// run: of run_state.js
export function plateView(view, test, { state, counted, due, dues, missed, isRunning }) {
  const { record, words, u } = view;
  const option = optionOf(test, record);
  const left = due === null ? null : Math.ceil(due - counted);
  const isDue = isRunning && left !== null && left <= 0;
  return html`
    <section class="plate clock clock-${state}" aria-label=${words.run[state]}>
      <div class="clock-face" role="timer"><b ?data-long=${counted >= 3600}>${minutes(counted)}</b></div>
      <div class="clock-side">
        <p class="clock-state" ?data-due=${isDue}><b role="status">${words.run[state]}</b>
          ${isRunning ? html`<span>${left > 0 ? fill(words.run.due_in, { left: minutes(left) }) : nothing}<b role="status">${left === null ? words.run.all_read : isDue ? words.run.due : nothing}</b></span>` : nothing}</p>
        ${test.hold_texts && record.finished_ms === null ? html`<p>${termed(fill(words.run.hold_at, { ...u, least: test.hold_texts[0], most: test.hold_texts[1] }))}</p>` : nothing}
      </div>
      <p class="run-point">${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}${option
        ? ` · ${fill(words.run.through, { count: option.count, tip: tipName(tipOf(option, record).tip_in, view) })}` : nothing}</p>
      ${test.hold_s === null ? nothing : lineOf(test, { words, counted, due, dues, missed, isDue })}
    </section>`;
}

function lineOf({ due_s, hold_s }, { words, counted, due, dues, missed, isDue }) {
  const stateOf = (at) => (missed.includes(at) ? "shut" : !dues.includes(at) ? "proven" : at !== due ? (at === hold_s ? "end" : "todo") : isDue ? "overdue" : at === hold_s ? "end" : "todo");
  return route({
    stations: due_s.map((at) => ({ state: stateOf(at), place: at / hold_s, label: at === hold_s ? fill(words.run.minutes, { count: at / MINUTE_S }) : String(at / MINUTE_S) })),
    at: Math.min(counted / hold_s, 1),
    name: [fill(words.run.line, { count: due_s.length - dues.length, of: due_s.length }), ...missed.map((at) => fill(words.run.line_missed, { at: minutes(at) }))].join(" "),
    width: 19,
  });
}
