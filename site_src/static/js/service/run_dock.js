// What can be done now in a run, always under the thumb: a question where one is open, else the tray and the keys.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { door } from "../shared/door.js";
import { colon, fill } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { missingView } from "./missing.js";
import { askedOf } from "./record.js";
import { trayView } from "./run_cells.js";

// run: of run_state.js; cell: the one of `cells` that is touched, with the figures `near` it; next: the link to the part that follows, or null
export function dockView(view, test, { run, cells, cell, near, next }) {
  const { record, page, words } = view;
  const asked = askedOf(record);
  const isOver = !run.isUnderWay && run.attempt !== null;
  const unsaid = run.missed.filter((at) => !page.said_missed.includes(`${test.id}.${run.attempt.clock.events[0]?.wall}.${at}`));
  const question = asked ? awayView(view, asked)
    : page.asking === "carry" && cells.some(({ isOld }) => isOld) ? carryView(view, test, run, cells)
    : page.asking === "pause" || page.asking === "stop" ? reasonView(view)
    : unsaid.length ? missedView(view, test, run, unsaid) : null;
  return html`
    <div class="dock doing">
      ${question ?? html`
        ${told(view, test, run, isOver)}
        ${cell && !(isOver && page.asking !== "again") ? trayView(view, test, cell, near) : nothing}
        ${isOver && page.asking !== "again" ? overKeys(view, next) : keys(view, test, run)}`}
      ${page.awake === false ? html`<p class="doing-told">${words.test.sleeps}</p>` : nothing}
    </div>`;
}

const act = (label, touch, isOff = false, more = "key-act") => html`<button type="button" class="key ${more}" ?disabled=${isOff} @click=${touch}>${label}</button>`;
const key = (label, touch, more = "") => html`<button type="button" class="key ${more}" @click=${touch}>${label}</button>`;

const wantedIn = ({ answer }, test) => answer.waits[test.id].filter(({ code }) => code === "blank").map(({ id }) => id);
const isUnready = ({ answer }, test) => answer.waits[test.id].some(({ code }) => code === "unready");

// Why the key beside it cannot be touched, or what it would do.
function told(view, test, { isRunning }, isOver) {
  const { words, u, answer, page } = view;
  if (isOver && page.asking !== "again") return nothing;
  const live = answer.live[test.id];
  const wanting = wantedIn(view, test);
  const refused = answer.problems.some(({ place }) => place.startsWith(`tests.${test.id}.draft.`));
  const line = isUnready(view, test) && !isRunning ? words.run.waits_before
    : refused ? words.run.refused
    : wanting.length ? html`${isRunning ? words.run.blank : words.run.waits} ${missingView(wanting, view, test)}`
    : live?.is_strayed ? (isRunning ? words.run.straying : fill(words.run.waits_flow, { ...u, least: test.band_texts[0], most: test.band_texts[1] })) : nothing;
  const doubts = refused ? [] : (answer.doubts[test.id] ?? []).slice(0, 1);
  return html`${line === nothing ? nothing : html`<p class="doing-told">${line}</p>`}${doubts.map(({ code }) => html`<p class="doing-told doubt" role="status">${words.doubt[code]}</p>`)}`;
}

function keys(view, test, { isRunning, isUnderWay, at, counted }) {
  const { words, answer, act: acts } = view;
  const live = answer.live[test.id];
  const waits = answer.waits[test.id];
  const isOff = wantedIn(view, test).length > 0;
  const stop = key(words.run.stop, () => acts.ask("stop"), "key-trouble");
  if (isRunning) {
    return html`<div class="acts acts-run">
      ${act(live?.is_strayed ? words.run.take_stray : at === null ? words.run.take : fill(words.run[at - counted > test.end_grace_s ? "take_early" : "take_at"], { at: minutes(at) }), () => acts.take(test.id), isOff, live?.is_strayed ? "key-trouble" : "key-act")}
      ${key(words.run.pause, () => acts.ask("pause"))}${stop}${door(words.danger.title)}</div>`;
  }
  const isShort = !isOff && !isUnready(view, test) && live?.figures[0].status === "fail" && live.is_strayed;
  return html`<div class="acts">
    ${isUnderWay ? act(words.run.resume, () => acts.resume(test.id), waits.length > 0) : act(words.run.begin, () => acts.begin(test.id), waits.length > 0)}
    ${isShort ? key(words.run.short, () => acts.short(test.id), "key-danger") : nothing}
    ${isUnderWay ? stop : nothing}${door(words.danger.title)}</div>`;
}

// A run that is over: on to what follows, or once more.
const overKeys = ({ words, act: acts }, next) => html`
  <div class="acts">${next ?? nothing}${key(words.run.once_more, () => acts.ask("again"))}${door(words.danger.title)}</div>`;

// A reading that was due and is past, said once: it stays a cross on the line.
function missedView({ words, act: acts }, test, run, unsaid) {
  const marks = unsaid.map((at) => `${test.id}.${run.attempt.clock.events[0]?.wall}.${at}`);
  return html`
    <section class="question hatched" role="alert"><p><b>${words.run.missed_word}</b> ${fill(words.run.missed, { at: unsaid.map(minutes).join(", ") })}</p></section>
    <div class="acts">${act(words.run.go_on, () => acts.saidMissed(marks))}
      ${key(words.run.stop, () => acts.halt("stop", words.run.missed_word, test.id), "key-trouble")}${door(words.danger.title)}</div>`;
}

// Readings that nobody touched since the last, each with its figure: read, or kept as before on the tester's word.
function carryView({ words, act: acts, shown, u }, test, { isRunning }, cells) {
  const old = cells.filter(({ isOld }) => isOld).map((cell) => `${cell.short} ${shown(cell.kind, cell.text)} ${u[`u_${cell.kind}`]}`);
  return html`
    <section class="question" role="alert"><p>${fill(words.run.carry_ask, { cells: old.join(", ") })}</p></section>
    <div class="acts">${act(words.run.carry_no, () => acts.ask(isRunning ? null : "again"))}
      ${key(words.run.carry, () => (isRunning ? acts.take : acts.begin)(test.id, true))}${door(words.danger.title)}</div>`;
}

// Time that nobody saw.
export const awayView = ({ words, act: acts }, asked) => html`
  <section class="question hatched" role="alert"><p>${fill(words.steady.asked, { s: minutes(asked.s) })}</p></section>
  <div class="acts">${act(words.steady.leave, () => acts.away(false))}${key(fill(words.steady.count, { s: minutes(asked.s) }), () => acts.away(true))}${door(words.danger.title)}</div>`;

// A reason is asked for before a clock halts.
const reasonView = ({ page: { asking }, words, act: acts }) => html`
  <section class="question" role="group" aria-label=${words.run[asking]}>
    <h2>${words.run[asking]}${colon} ${words.run.reason}</h2>
    <div class="reasons">
      ${words.run[`reasons_${asking}`].map((reason) => key(reason, () => acts.halt(asking, reason)))}
      ${act(words.run.never_mind, () => acts.ask(null))}
      ${door(words.danger.title)}
    </div>
  </section>`;
