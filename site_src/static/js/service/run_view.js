// A pumping run at the panel: its clock over its line, the readings beside what each should show, what they come to, and the keys.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { beforeView } from "./before_view.js";
import { minutes } from "../shared/times.js";
import { amountView, labelOf } from "./entries.js";
import { errorsText } from "./errors.js";
import { missingView } from "./missing.js";
import { attemptOf, testOf } from "./record.js";
import { cellsOf, cellsView, startOf } from "./run_cells.js";
import { dockView } from "./run_dock.js";
import { plateView } from "./run_plate.js";
import { runState } from "./run_state.js";
import { limitText, offText, verdictView } from "./status.js";
import { optionOf, tipName, tipOf, tipStanding } from "./tips.js";

// more: what stands folded below the run, of any part; next: the way to the part that follows, or null
export function runView(view, test, judged, { more, next }) {
  const { record, now, page, answer } = view;
  const run = runState(record, test, judged, now);
  const cells = cellsOf(view, test);
  const cell = cells.find(({ id }) => id === page.cell) ?? cells[0];
  const isOpen = record.finished_ms === null;
  const isHeld = isOpen && answer.before.open.length > 0 && !answer.before.override && !run.isUnderWay;
  const wantsTip = record.conditions.flow_by !== "meter" && isOpen && (test.tips.length === 0 || !run.isUnderWay && test.tips.length > 1);
  const back = isOpen ? backKey(view, test, run) : nothing;
  const isTyping = testOf(record, test.id).draft?.touched;
  return html`
    ${plateView(view, test, run)}
    ${isOpen ? beforeView(view) : nothing}
    ${isOpen ? aimless(view, test) : nothing}
    ${wantsTip && !isHeld ? tipChoice(view, test) : nothing}
    ${isOpen ? html`${cellsView(view, test, cells, isHeld ? null : cell)}${isHeld ? nothing : liveView(answer.live[test.id], view)}` : nothing}
    <div class="run-foot"><details class="section run-more"><summary>${view.words.run.more}</summary>
      ${isOpen && !wantsTip && test.tips.length > 1 ? tipChoice(view, test) : nothing}
      ${isOpen ? optional(view, test) : nothing}
      <p class="beside">
        ${test.expected.map((each) => html`${view.words.run.expect}${colon} ${fill(view.words.test[`when_${each.of}`], { value: `${each.engine_text} ${view.u.u_speed}` })}${each.is_estimate ? ` (${view.words.test.estimate})` : nothing}. `)}
        ${test.hold_texts ? `${fill(view.words.run.least, { ...view.u, gauge: test.gauge_text })} ` : nothing}${test.loss_text === null ? nothing : `${fill(view.words.run.loss, { ...view.u, loss: test.loss_text })}. `}${fill(view.words.run.band, { ...view.u, least: test.band_texts[0], most: test.band_texts[1] })}. ${errorsText(view)}
      </p>
      ${readingsView(view, test, judged, run)}
      ${isTyping ? back : nothing}
      ${test.hold_s === null ? html`<p class="notice">${view.words.run.no_hold}</p>` : nothing}
      ${more}
    </details><div role="status">${isTyping ? nothing : back}</div></div>
    ${isOpen ? dockView(view, test, { run, cells, cell: isHeld ? null : cell, near: page.near[cell.id] ?? { below: [], above: [] }, next }) : nothing}`;
}

// The reading that was just kept, what of it stands as in the one before, and the way to put a mistyped one right: in sight until the next is entered.
function backKey({ words, act }, { id }, { isOpen, attempt }) {
  if (!isOpen || !attempt.sets.length) return nothing;
  const before = [...new Set((attempt.sets.at(-1).as_before ?? []).map((cell) => cell.split(".")[0]))];
  return html`<button type="button" class="key run-back" @click=${() => act.takeBack(id)}>${fill(words.run.take_back, { at: minutes(attempt.sets.at(-1).at_s) })}${
    before.length ? html` <small>${fill(words.run.kept_before, { cells: before.map((field) => words.cell[field] ?? words.field[field]).join(", ") })}</small>` : nothing}</button>`;
}

// Why a gauge has no figure to be set to.
function aimless(view, test) {
  const { words, record } = view;
  if (record.conditions.source === "pressurised") return html`<p class="run-told">${words.run.gauge_none}</p>`;
  return test.gauge_text === null ? html`<div class="run-told">${words.run.gauge_missing} ${missingView(test.missing.filter((name) => name !== "hold"), view, test)}</div>` : nothing;
}

function tipChoice(view, test) {
  const { words, record, act } = view;
  const tip = tipStanding(test, record);
  if (!test.tips.length) return html`<p class="run-told"><a href="#${record.id}/site/tips_in">${words.run.no_tip}</a></p>`;
  return html`
    <fieldset class="chips run-tips"><legend>${words.run.tips}</legend>
      ${test.tips.map((option) => html`<label class="chip">
        <input type="radio" name="tip" .checked=${tip?.count === option.count && tip.tip_in === tipOf(option, record).tip_in}
          @change=${() => act.tip(test.id, option)}><span>${option.count} × ${tipName(tipOf(option, record).tip_in, view)}</span></label>`)}
    </fieldset>`;
}

// Readings a run can do without.
function optional(view, test) {
  const values = testOf(view.record, test.id).draft?.values ?? {};
  const last = attemptOf(view.record, test.id)?.sets.at(-1)?.values ?? {};
  return test.fields.filter((field) => !field.needed).map((field) => amountView(view, {
    id: field.id, name: field.id, label: labelOf(field.id, view), text: values[field.id] ?? "", start: last[field.id] || startOf(test, field, optionOf(test, view.record)),
    at: [`tests.${test.id}.draft.${field.id}`], change: (text) => view.act.draft(test.id, field.id, text, null), beside: view.besideOf(view, test.id, field.id),
  }));
}

const LEVEL = { meets: "go", close: "hold", short: "stop", unread: "line" };

// What a figure comes to while a run goes on: no verdict yet.
const stance = ({ status, is_close: isClose, value }) => (value === null ? "unread" : isClose ? "close" : status === "pass" ? "meets" : "short");

// Net pressure and flow of the reading that is being entered. The region is always there, so that a screen reader hears them.
const liveView = (judged, { words, u }) => html`
  <div class="live" role="status">
    ${!judged ? nothing : [judged.figures[1], judged.figures[0]].map((figure) => html`
      <div class="live-figure" data-level=${LEVEL[stance(figure)]}><span>${words.run[`${figure.id.split("_")[0]}_short`]} <b>${figure.value_text ?? "—"}</b> ${u[`u_${figure.kind}`]}</span>
        <span>${limitText(figure)}${figure.value !== null && figure.band_text ? ` · ±${figure.band_text}` : ""} <b>${words.stance[stance(figure)]}</b></span></div>`)}
  </div>`;

// Every attempt with its readings, newest first; none is ever taken out. One that is not over has no verdict.
export function readingsView({ words, u }, test, judged, run) {
  if (!judged.attempts.length) return nothing;
  return html`
    <h2>${words.run.readings}</h2>
    ${judged.attempts.map((attempt, count) => ({ attempt, count, isOpen: run.isUnderWay && count === judged.attempts.length - 1 })).reverse().map(({ attempt, count, isOpen }) => html`
      <div class="scroll" role="region" tabindex="0" aria-label=${fill(words.run.attempt, { count: count + 1 })}><table class="readings">
        <caption>${fill(words.run.attempt, { count: count + 1 })} ${isOpen ? words.run[run.state] : html`${verdictView(attempt.status, words)} <small>${words.code[attempt.code]}</small>`}</caption>
        <thead><tr><th scope="col">${words.run.at}</th><th scope="col">${words.run.net_short}, ${u.u_pressure}</th><th scope="col">${words.run.flow}, ${u.u_flow}</th><th scope="col">${words.cell.engine_rpm}</th></tr></thead>
        <tbody>${attempt.sets.map((set) => html`
          <tr class="set-${set.status}"><th scope="row">${minutes(set.at_s)}${offText(set, words)}</th>
            <td>${set.figures[1].value_text ?? "—"} ${short(set.figures[1], words)}</td><td>${set.figures[0].value_text ?? "—"} ${short(set.figures[0], words)}</td>
            <td>${set.engine_rpm ?? "—"}</td></tr>`)}</tbody>
      </table></div>`)}`;
}

const short = (figure, words) => (figure.status === "fail" ? html`<b class="set-word">${words.stance[stance(figure)]}</b>` : nothing);
