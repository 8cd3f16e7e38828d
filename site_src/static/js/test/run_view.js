// A pumping run at the panel: its clock, what the gauges should show, the readings under the thumb, the verdict as it stands.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { warning } from "../warning.js";
import { clockView, minutes, reasonView } from "./clock.js";
import { amountView, labelOf } from "./entries.js";
import { missingView } from "./missing.js";
import { attemptOf, clockOf, countedS, testOf } from "./record.js";
import { figureView, verdictView } from "./status.js";

export function runView(view, test, judged) {
  const { record, words, u, answer, now, page, act } = view;
  const attempt = attemptOf(record, test.id);
  const clock = clockOf(record, test.id);
  const isOpen = attempt !== null && !attempt.stopped;
  const told = judged.attempts.at(-1);
  const dues = told && !attempt.stopped ? told.missing.filter((name) => name.startsWith("due_")).map((name) => Number(name.slice(4))) : [];
  const counted = countedS(clock, now);
  const missed = dues.filter((each) => isPast(test, each, counted));
  const due = isOpen ? dues.find((each) => !missed.includes(each)) ?? null : undefined;
  return html`
    <p class="run-point">${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}</p>
    ${clockView({ clock, stopped: attempt?.stopped, hold_s: test.hold_s, due, now, words })}
    ${isOpen && missed.length ? warning("caution", words.run.missed_word, fill(words.run.missed, { at: missed.map(minutes).join(", ") })) : nothing}
    ${page.asking === "pause" || page.asking === "stop" ? reasonView({ asking: page.asking, words, act }) : nothing}
    ${targets(view, test)}
    ${entryView(view, test)}
    ${live(view, test, answer.live[test.id])}
    ${keys(view, test, { attempt, clock, isOpen, missing: answer.live[test.id]?.missing ?? null, left: dues, isMissed: missed.length > 0 })}
    ${readingsView(view, test, judged)}
    ${test.hold_s === null ? html`<p class="notice">${words.run.no_hold}</p>` : nothing}`;
}

function targets(view, test) {
  const { words, u, record, act, data } = view;
  const tip = testOf(record, test.id).draft?.tip;
  const option = test.tips.find((each) => tip && each.count === tip.count && record.conditions.tips_in[each.place] === tip.tip_in);
  const gauge = record.conditions.source === "pressurised" ? words.run.gauge_none
    : test.gauge_text === null ? html`${words.run.gauge_missing} ${missingView(test.missing.filter((name) => name !== "hold"), view, test)}` : null;
  return html`
    <section class="targets">
      <div class="target"><span>${words.run.gauge}</span>${gauge ? html`<b class="target-none">${gauge}</b>` : html`<b>${test.gauge_text}<small> ${u.u_pressure}</small></b>`}</div>
      ${option ? html`<div class="target"><span>${fill(words.run.pitot, { ...u, count: option.count, tip: tipName(data, record, option).replace(" ", "\u00a0") })}</span><b>${option.pitot_text}<small> ${u.u_pitot}</small></b></div>` : nothing}
      ${record.conditions.flow_by === "meter" ? html`<div class="target"><span>${words.run.meter}</span><b>${test.flow_text}<small> ${u.u_flow}</small></b></div>` : nothing}
    </section>
    ${record.conditions.flow_by !== "meter" && test.tips.length !== 1 ? tipChoice({ words, record, act, data }, test, tip) : nothing}
    <p class="beside">
      ${test.expected.map((each) => html`${words.run.expect}: ${fill(words.test[`when_${each.of}`], { value: `${each.engine_text} ${u.u_speed}` })}${each.is_estimate ? ` (${words.test.estimate})` : nothing}. `)}
      ${test.loss_text === null ? nothing : `${fill(words.run.loss, { ...u, loss: test.loss_text })}. `}${fill(words.run.band, { ...u, least: test.band_texts[0], most: test.band_texts[1] })}.
    </p>`;
}

// A tip by the name it was chosen under, such as "2 1/4".
const tipName = (data, record, option) => {
  const typed = record.conditions.tips_in[option.place];
  return data.tips.find((tip) => tip.id === typed)?.chip ?? typed.split("@")[0];
};

const tipChoice = ({ words, record, act, data }, test, tip) => test.tips.length === 0
  ? html`<p class="notice">${words.run.no_tip}</p>`
  : html`
    <fieldset class="chips"><legend>${words.run.tips}</legend>
      ${test.tips.map((option) => html`<label class="chip">
        <input type="radio" name="tip" .checked=${tip?.count === option.count && tip.tip_in === record.conditions.tips_in[option.place]}
          @change=${() => act.tip(test.id, option)}><span>${option.count} × ${tipName(data, record, option)}</span></label>`)}
    </fieldset>`;

// A reading that was due then can no longer be taken: whatever is read now is nearer to the next.
function isPast({ due_s }, due, counted) {
  const next = due_s[due_s.indexOf(due) + 1];
  return next !== undefined && counted > (due + next) / 2;
}

// The entries of one set; each pitot of several tips is one.
function entryView(view, test) {
  const { record, act, besideOf } = view;
  const draft = testOf(record, test.id).draft ?? {};
  const values = draft.values ?? {};
  const count = draft.tip?.count ?? 1;
  const one = (field, place = null) => amountView(view, {
    id: place === null ? field.id : `${field.id}-${place + 1}`,
    name: field.id,
    label: place === null || count === 1 ? labelOf(field.id, view) : `${labelOf(field.id, view)} ${place + 1}`,
    text: (place === null ? values[field.id] : values[field.id]?.[place]) ?? "",
    start: startOf(test, field, draft, record),
    at: [`tests.${test.id}.draft.${field.id}${place === null ? "" : `.${place}`}`],
    change: (text) => act.draft(test.id, field.id, text, place),
    beside: besideOf(test.id, field.id),
  });
  const control = (field) => field.id === "pitot_psi" ? Array.from({ length: count }, (_, place) => one(field, place)) : one(field);
  return html`
    ${test.fields.filter((field) => field.needed).map(control)}
    <details class="section"><summary>${view.words.test.optional}</summary>${test.fields.filter((field) => !field.needed).map(control)}</details>`;
}

// Where nothing was read yet a step begins from the target, so that one tap shows a figure near the needle.
function startOf(test, field, draft, record) {
  const option = test.tips.find((each) => draft.tip && each.count === draft.tip.count && record.conditions.tips_in[each.place] === draft.tip.tip_in);
  const us = { discharge_psi: test.gauge_psi ?? test.net_psi, pitot_psi: option?.pitot_psi, meter_gpm: test.flow_gpm, engine_rpm: test.expected[0]?.engine_rpm, pump_rpm: test.expected[0]?.pump_rpm };
  return us[field.id] ? `${Math.ceil(us[field.id])}@US` : "";
}

const live = ({ words, u }, test, judged) => !judged ? nothing : html`
  <div class="live" role="status">
    ${figureView(judged.figures[1], words.run.net, u.u_pressure, words)}
    ${figureView(judged.figures[0], words.run.flow, u.u_flow, words)}
    ${judged.is_strayed ? warning("caution", words.run.flow, words.run.straying) : nothing}
  </div>`;

function keys({ words, act, record, page, now, ...view }, test, { attempt, clock, isOpen, missing, left, isMissed }) {
  if (record.finished_ms !== null || page.asking) return nothing;
  // what is to be read; figures worked from it, such as the flow, fill themselves
  const blank = test.fields.filter(({ id, needed }) => needed && (missing ?? [id]).includes(id)).map(({ id }) => labelOf(id, { words, ...view }));
  const isRunning = clock?.since != null;
  const strays = view.answer.live[test.id]?.is_strayed;
  const isSame = testOf(record, test.id).draft?.touched === false;
  const begin = (label) => html`<button type="button" class="key key-wide key-strong" @click=${() => act.begin(test.id)}>${label}</button>`;
  return html`
    <div class="rows">
      ${!isOpen ? begin(attempt ? words.run.begin_again : words.run.begin) : nothing}
      ${isOpen && isRunning ? html`
        ${blank.length ? html`<p class="notice">${fill(words.run.blank, { fields: blank.join(", ") })}</p>` : nothing}
        <button type="button" class="key key-wide key-strong" ?disabled=${blank.length > 0} @click=${() => act.take(test.id)}>${strays ? words.run.take_stray : isSame ? words.run.again : words.run.take}</button>
        <button type="button" class="key key-wide" @click=${() => act.ask("pause")}>${words.run.pause}</button>
        <button type="button" class="key key-wide key-danger" @click=${() => act.ask("stop")}>${words.run.stop}</button>
        ${isMissed ? begin(words.run.begin_again) : nothing}` : nothing}
      ${isOpen && attempt.sets.length ? html`<button type="button" class="key key-wide" @click=${() => act.takeBack(test.id)}>${words.run.take_back}</button>` : nothing}
      ${isOpen && !isRunning ? html`
        <button type="button" class="key key-wide key-strong" @click=${() => act.resume(test.id)}>${words.run.resume}</button>
        ${left.length || attempt.clock_s < (test.hold_s ?? 0) ? begin(words.run.begin_again) : nothing}` : nothing}
    </div>`;
}

// Every attempt with its readings, newest first; none is ever taken out.
export function readingsView({ words, u }, test, judged) {
  if (!judged.attempts.length) return nothing;
  return html`
    <h2>${words.run.readings}</h2>
    ${judged.attempts.map((attempt, count) => ({ attempt, count })).reverse().map(({ attempt, count }) => html`
      <div class="scroll" role="region" tabindex="0" aria-label=${fill(words.run.attempt, { count: count + 1 })}><table class="readings">
        <caption>${fill(words.run.attempt, { count: count + 1 })} ${verdictView(attempt.status, words)} <small>${words.code[attempt.code]}</small></caption>
        <thead><tr><th scope="col">${words.run.at}</th><th scope="col">${words.run.net}, ${u.u_pressure}</th><th scope="col">${words.run.flow}, ${u.u_flow}</th><th scope="col">${words.field.engine_rpm}</th></tr></thead>
        <tbody>${attempt.sets.map((set) => html`
          <tr class="set-${set.status}"><th scope="row">${minutes(set.at_s)}</th>
            <td>${set.figures[1].value_text ?? "—"} ${short(set.figures[1], words)}</td><td>${set.figures[0].value_text ?? "—"} ${short(set.figures[0], words)}</td>
            <td>${set.engine_rpm ?? "—"}</td></tr>`)}</tbody>
      </table></div>`)}`;
}

const short = (figure, words) => (figure.status === "fail" ? html`<b class="set-word">${words.figure_status.fail}</b>` : nothing);
