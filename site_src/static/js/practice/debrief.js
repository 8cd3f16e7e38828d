// Two phones and one fault, at its end: what was done beside what should have been, and the code for the phone that hid it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { codeView, fitsCode } from "../shared/code.js";
import { termed } from "../help/touched.js";
import { lasted } from "../shared/lasted.js";
import { notices } from "../shared/notice.js";
import { fill } from "../shared/site.js";
import { shape } from "../shared/warning.js";

export const SHAPES = { harm: "stop", missed: "caution", luck: "caution", unneeded: "caution" };

// An act in the words of the controls.
function actOf({ kind, to }, { practice, power, debrief }) {
  if (!kind) return debrief.look;
  if (kind === "selector") return `${practice.lever} ${power[`at_${to}`]}`;
  if (kind === "tank") return `${practice.tank} ${to ? practice.open : practice.shut}`;
  if (kind === "circulate") return `${practice.fill} ${to ? practice.open : practice.shut}`;
  return kind === "gear" ? practice[to] : `${practice.throttle} ${practice[to]}`;
}

/** @param {any} mark */
const row = (at, words, what, mark = nothing) => html`<li data-mark=${mark}><b>${fill(words.debrief.at, { at })}</b> ${what}</li>`;

const done = ({ done, ended }, words) => html`
  <ol>
    ${done.length ? nothing : html`<li>${words.debrief.nothing}</li>`}
    ${done.map((step) => (step.note
      ? html`<li class="debrief-note" data-mark=${step.is_harm ? "harm" : nothing}>${termed(words.note[step.note])}</li>`
      : row(step.at, words, actOf(step, words))))}
    ${row(ended.at, words, words.debrief[`ends_${ended.how}`], "end")}
  </ol>`;

const should = ({ should, should_end, stopped_after }, words) => html`
  <ol>
    ${should.map((step, at) => html`
      ${row(step.at, words, actOf(step, words))}
      <li class="debrief-note" data-mark=${step.shows ? nothing : "sign"}>${words.sign[step.shows ? step.sign : `no_${step.sign}`]}</li>
      ${stopped_after === at + 1 ? html`<li data-mark="end">${words.debrief.stopped_here}</li>` : nothing}`)}
    ${should_end.how === "stopped" ? html`<li data-mark="end">${words.debrief.stop_here}</li>` : row(should_end.at, words, words.debrief.ends_finished, "end")}
  </ol>`;

const names = (faults, words) => faults.map((fault) => words.practice[`fault_${fault}`]).join(", ");

// What a stop with nothing wrong missed: the next act, and the sign that would have come.
function needless({ should, stopped_after }, words) {
  const next = should[stopped_after];
  return next ? fill(words.debrief.needless, { act: actOf(next, words), sign: words.sign[next.sign] }) : words.debrief.needless_done;
}

function saidOf(debrief, words) {
  const { verdict } = debrief;
  if (verdict.outcome === "unneeded") return html`<p>${needless(debrief, words)}</p><p>${words.practice.outcome_unneeded_told}</p>`;
  if (verdict.outcome === "luck") return html`<p>${words.practice.outcome_luck_told}</p>`;
  return verdict.outcome === "good" ? html`<p>${words.debrief.sound_said}</p>` : nothing;
}

function namingOf({ naming, named, alike, verdict }, words) {
  const { debrief, practice } = words;
  return html`
    ${naming ? html`<p>${fill(debrief[`named_${naming}`], { named: practice[`fault_${named}`] ?? debrief.sound })}</p>` : nothing}
    ${alike.length && verdict.outcome !== "missed" && naming !== "alike" ? html`<p class="smallprint">${fill(debrief.alike, { faults: names(alike, words) })}</p>` : nothing}`;
}

export function debriefView({ debrief, words, isKept, proof }) {
  const { verdict, away } = debrief;
  const { practice } = words;
  return html`
    <section class="run-verdict" aria-live="polite">
      ${verdict.outcome in SHAPES ? shape(SHAPES[verdict.outcome]) : nothing}
      <h2>${practice[`outcome_${verdict.outcome}`]}</h2>
      <p><b>${verdict.faults.length ? fill(words.debrief.planted, { fault: names(verdict.faults, words) }) : practice.not_planted}</b></p>
      ${proof ? html`<p>${proof}</p>` : nothing}
      ${namingOf(debrief, words)}
      ${saidOf(debrief, words)}
      <p>${fill(practice.took, { time: lasted(verdict, words) })}</p>
      ${away ? html`<p>${fill(words.debrief.away, { time: lasted({ took_s: verdict.away_s }, words) })}</p>` : nothing}
    </section>
    <section class="debrief" aria-label=${words.debrief.result}>
      <div><h3>${words.debrief.done}</h3>${done(debrief, words)}</div>
      <div><h3>${words.debrief.should}</h3>${should(debrief, words)}</div>
    </section>
    <p class="smallprint">${words.debrief.soonest} ${isKept ? practice.kept : nothing}</p>`;
}

// A link for the other phone: as a square code, and to be sent.
export function handView({ link, title, told, notice, send, words }) {
  const { debrief } = words;
  return html`
    <section class="hand-over">
      <h2>${title}</h2>
      ${fitsCode(link) ? codeView(link, debrief.code_name) : html`<p>${debrief.long}</p>`}
      <p>${told}</p>
      <button type="button" class="key key-wide" @click=${() => send(link)}>${debrief.send}</button>
      ${notices(notice)}
    </section>`;
}
