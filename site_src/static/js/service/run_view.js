// A pumping run at the panel: its clock, the readings under the thumb with what each should show, the verdict as it stands.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { beforeView } from "./before_view.js";
import { clockView, minutes, reasonView } from "./clock.js";
import { doingView } from "./doing_view.js";
import { amountView, labelOf } from "./entries.js";
import { missingView } from "./missing.js";
import { attemptOf, clockOf, countedS, testOf } from "./record.js";
import { verdictView } from "./status.js";
import { optionOf, tipName, tipOf, tipStanding } from "./tips.js";

export function runView(view, test, judged) {
  const { record, words, u, now, page, act } = view;
  const attempt = attemptOf(record, test.id);
  const clock = clockOf(record, test.id);
  const isOpen = attempt !== null && !attempt.stopped;
  const told = judged.attempts.at(-1);
  const dues = isOpen ? told.missing.filter((name) => name.startsWith("due_")).map((name) => Number(name.slice(4))) : [];
  const option = optionOf(test, record);
  const counted = countedS(clock, now);
  const missed = dues.filter((each) => isPast(test, each, counted));
  const due = isOpen ? dues.find((each) => !missed.includes(each)) ?? null : undefined;
  return html`
    <p class="run-point">${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}${option
      ? fill(words.run.through, { count: option.count, tip: tipName(tipOf(option, record).tip_in, view) }) : nothing}</p>
    ${clockView({ clock, stopped: attempt?.stopped, hold_s: test.hold_s, due, now, words })}
    ${record.finished_ms === null ? beforeView(view) : nothing}
    ${missed.length ? warning("caution", words.run.missed_word, fill(words.run.missed, { at: missed.map(minutes).join(", ") })) : nothing}
    ${page.asking === "pause" || page.asking === "stop" ? reasonView({ asking: page.asking, words, act }) : nothing}
    ${record.finished_ms !== null ? nothing : html`
      ${aimless(view, test)}
      ${record.conditions.flow_by !== "meter" && test.tips.length > 1 ? tipChoice(view, test) : nothing}
      ${entryView(view, test)}`}
    ${doingView(view, test, { attempt, clock, isOpen, dues, isMissed: missed.length > 0 })}
    <p class="beside">
      ${test.expected.map((each) => html`${words.run.expect}${colon} ${fill(words.test[`when_${each.of}`], { value: `${each.engine_text} ${u.u_speed}` })}${each.is_estimate ? ` (${words.test.estimate})` : nothing}. `)}
      ${test.loss_text === null ? nothing : `${fill(words.run.loss, { ...u, loss: test.loss_text })}. `}${fill(words.run.band, { ...u, least: test.band_texts[0], most: test.band_texts[1] })}.
    </p>
    ${readingsView(view, test, judged)}
    ${test.hold_s === null ? html`<p class="notice">${words.run.no_hold}</p>` : nothing}`;
}

// Why a gauge has no figure to be set to.
function aimless(view, test) {
  const { words, record } = view;
  if (record.conditions.source === "pressurised") return html`<p class="notice">${words.run.gauge_none}</p>`;
  return test.gauge_text === null ? html`<div class="notice">${words.run.gauge_missing} ${missingView(test.missing.filter((name) => name !== "hold"), view, test)}</div>` : nothing;
}

function tipChoice(view, test) {
  const { words, record, act } = view;
  const tip = tipStanding(test, record);
  return html`
    <fieldset class="chips"><legend>${words.run.tips}</legend>
      ${test.tips.map((option) => html`<label class="chip">
        <input type="radio" name="tip" .checked=${tip?.count === option.count && tip.tip_in === tipOf(option, record).tip_in}
          @change=${() => act.tip(test.id, option)}><span>${option.count} × ${tipName(tipOf(option, record).tip_in, view)}</span></label>`)}
    </fieldset>`;
}

// A reading that was due then can no longer be taken: whatever is read now is nearer to the next.
function isPast({ due_s }, due, counted) {
  const next = due_s[due_s.indexOf(due) + 1];
  return next !== undefined && counted > (due + next) / 2;
}

// The entries of one set, each beside what it should show; each pitot of several tips is one.
function entryView(view, test) {
  const { record, act, besideOf, words, u } = view;
  const values = testOf(record, test.id).draft?.values ?? {};
  const option = optionOf(test, record);
  const count = option?.count ?? tipStanding(test, record)?.count ?? 1;
  const aims = { discharge_psi: [test.gauge_text, u.u_pressure], pitot_psi: [option?.pitot_text, u.u_pitot], meter_gpm: [test.flow_text, u.u_flow] };
  const aimOf = (id) => (aims[id]?.[0] ? html`${words.run.aim} <b>${aims[id][0]}</b> ${aims[id][1]}` : null);
  const one = (field, place = null) => amountView(view, {
    id: place === null ? field.id : `${field.id}-${place + 1}`,
    name: field.id,
    label: place === null || count === 1 ? labelOf(field.id, view) : `${labelOf(field.id, view)} ${place + 1}`,
    aim: place === null || place === 0 ? aimOf(field.id) : null,
    text: (place === null ? values[field.id] : values[field.id]?.[place]) ?? "",
    start: startOf(test, field, option),
    at: [`tests.${test.id}.draft.${field.id}${place === null ? "" : `.${place}`}`],
    change: (text) => act.draft(test.id, field.id, text, place),
    beside: besideOf(view, test.id, field.id),
  });
  const control = (field) => field.id === "pitot_psi" ? Array.from({ length: count }, (_, place) => one(field, place)) : one(field);
  return html`
    <div class="entries">${test.fields.filter((field) => field.needed).map(control)}</div>
    <details class="section"><summary>${view.words.test.optional}</summary>${test.fields.filter((field) => !field.needed).map(control)}</details>`;
}

// Where nothing was read yet a step begins from the target, so that one tap shows a figure near the needle.
function startOf(test, field, option) {
  const us = { discharge_psi: test.gauge_psi ?? test.net_psi, pitot_psi: option?.pitot_psi, meter_gpm: test.flow_gpm, engine_rpm: test.expected[0]?.engine_rpm, pump_rpm: test.expected[0]?.pump_rpm };
  return us[field.id] ? `${Math.ceil(us[field.id])}@US` : "";
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
