// What is due on the rig: overdue, within 30 days, later; by date, hours or miles. A touch asks when it was done; a second writes it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { calc, Refusal } from "../shared/engine.js";
import { fill, home } from "../shared/site.js";
import { live } from "../shared/notice.js";
import { aheadMin, day } from "../shared/times.js";
import { send } from "../shared/send.js";
import { calendarOf } from "../bay/calendar.js";
import { dueName } from "../bay/sentences.js";
import { opened } from "../bay/opened.js";
import { prints } from "../bay/paper.js";
import { dueSheet } from "../bay/paper_forms.js";
import { field } from "../bay/item_forms.js";
import { lastFailed } from "../service/failed.js";
import { instrumentsOf } from "../service/instruments.js";

const METERS = ["miles", "engine_h", "pump_h"];
const place = document.getElementById("bay");
const page = await opened(place);
/** @type {any} */
const state = { rows: [], meters: {}, open: null, date: "", typed: {}, refused: null, noDate: false };

const today = () => new Date(Date.now() + aheadMin() * 60000).toISOString().slice(0, 10);

async function look() {
  const [board, instruments, failed] = await Promise.all([page.log.board(page.data), instrumentsOf(page.rig), lastFailed(page.rig)]);
  Object.assign(state, board, { failed, rows: inTurn([...instruments, ...board.rows]) });
  draw();
}

// By date, as the board has them; what has none stays behind those that have.
const inTurn = (rows) => rows.sort((one, other) => (one.due_day ?? Infinity) - (other.due_day ?? Infinity) || 0);

// Ask for the day it was done, today until another is chosen.
function askWhen(id) {
  Object.assign(state, { open: id, date: today(), dateRefused: null, isAsking: true });
  draw();
  document.getElementById("done-on")?.focus();
}

async function done(id) {
  let at;
  try {
    at = await calc.ask("board.done_at", { date: state.date, on_ms: Date.now(), offset_min: aheadMin() });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    state.dateRefused = page.words.due[`date_${refusal.code}`];
    return draw();
  }
  await page.log.add("done", { due: id, at_ms: at });
  state.open = null;
  await look();
}

async function notHere(id) {
  const { data, log } = page;
  const name = data.due.find((row) => row.id === id).equipment ?? id;
  await log.set(name, { applies: false, reason: page.words.reason.none });
  state.open = null;
  await look();
}

async function readMeters() {
  const read = {};
  state.refused = null;
  for (const name of METERS) {
    const text = (state.typed[name] ?? "").trim();
    if (!text) {
      read[name] = null;
      continue;
    }
    const least = state.meters[name] ?? 0;
    let judged = null;
    try {
      judged = await calc.ask("limits.judged", { limit: { kind: "min", value: least, to: null, quantity: null }, text, own: null, earlier: [] }, { units: page.units });
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
    }
    if (!judged?.is_good) {
      state.refused = fill(page.words.due.meter_refused, { name: page.words.meter[name], least });
      return draw();
    }
    read[name] = judged.amount;
  }
  if (Object.values(read).every((number) => number === null)) return;
  await page.log.add("meters", read);
  state.typed = {};
  await look();
}

const instrument = (id) => state.rows.find((row) => row.id === id && row.name);
const nameOf = (id) => (instrument(id) ? fill(page.words.due.instrument, { name: instrument(id).name }) : dueName(id, page));
function calendar() {
  const dated = state.rows.filter(({ due_date: date }) => date);
  state.noDate = !dated.length;
  draw();
  if (dated.length) send(calendarOf(dated, { rig: page.rig, nameOf, words: page.words }));
}

const openRow = (id, { due, due_pass: pass, round }) => html`
  ${pass[id] ? html`<p>${pass[id]}</p>` : nothing}
  ${state.isAsking ? html`
    <label class="field"><span>${due.done_on}</span><input id="done-on" type="date" max=${today()} .value=${state.date} @input=${({ target }) => { state.date = target.value; }}></label>
    ${live(state.dateRefused ? html`<p class="refusal">${state.dateRefused}</p>` : nothing)}
    <p class="bay-others"><button type="button" class="key key-act" @click=${() => done(id)}>${due.write_done}</button><button type="button" class="key" @click=${() => turn(id)}>${round.back}</button></p>`
    : html`<p class="bay-others"><button type="button" class="key key-act" @click=${() => askWhen(id)}>${due.done}</button><button type="button" class="key" @click=${() => notHere(id)}>${round.not_here}</button></p>`}`;

// Open a row, or shut the one that is open.
function turn(id) {
  Object.assign(state, { open: state.open === id ? null : id, isAsking: false });
  draw();
}

const isFailed = ({ id, done_ms: done }) => id === "service_test" && state.failed && state.failed.at_ms > (done ?? 0);

function when(row) {
  const { words } = page;
  const more = [["hours", row.left_hours], ["miles", row.left_miles]].filter(([, left]) => left !== null).map(([unit, left]) => fill(words.due[unit], { left: Math.round(left) }));
  if (isFailed(row)) return fill(words.due.failed, { date: day(state.failed.at_ms) });
  if (row.done_ms === null && !row.name) return words.due.never;
  return [row.due_date ? fill(words.due.by, { date: day(new Date(row.due_date[0], row.due_date[1] - 1, row.due_date[2])) }) : "", ...more].filter(Boolean).join(" · ");
}

// A pump whose last test failed is due for one, whatever day was written before.
const standingOf = (row) => (isFailed(row) ? "overdue" : row.standing);

function draw() {
  const { words } = page;
  const group = (standing) => {
    const rows = state.rows.filter((row) => standingOf(row) === standing);
    return rows.length ? html`<section class="group"><h2 class="due-${standing}">${words.due[`group_${standing}`]} (${rows.length})</h2><ul class="due-rows">${rows.map((row) => html`
      <li><button type="button" class="row" aria-expanded=${state.open === row.id ? "true" : "false"} @click=${() => turn(row.id)}>
        <span>${nameOf(row.id)}<small>${when(row)}</small></span></button>
        ${state.open !== row.id ? nothing : row.name ? html`<p>${words.due.instrument_told}</p><a class="key key-wide" href=${new URL("test/", home).href}>${words.due.instrument_test}</a>` : openRow(row.id, words)}</li>`)}</ul></section>` : nothing;
  };
  render(html`
    ${["overdue", "soon", "never", "later"].map(group)}
    <section class="group"><h2>${words.due.meters}</h2>
      ${METERS.map((name) => field({ id: name, label: state.meters[name] === null ? words.meter[name] : fill(words.due.meter, { name: words.meter[name], last: state.meters[name] }), value: state.typed[name] ?? "", mode: "decimal",
        change: (text) => { state.typed[name] = text; } }))}
      ${live(state.refused ? html`<p class="refusal">${state.refused}</p>` : nothing)}
      <button type="button" class="key key-wide" @click=${readMeters}>${words.due.read}</button></section>
    ${live(state.noDate ? html`<p class="refusal">${words.due.no_dates}</p>` : nothing)}
    <div class="dock bay-dock"><button type="button" class="key" @click=${() => window.print()}>${words.bay.print}</button>
      <button type="button" class="key key-act" @click=${calendar}>${words.due.calendar}</button></div>`, place);
}

if (page) prints(() => dueSheet(page, { ...state, rows: state.rows.map((row) => ({ ...row, standing: standingOf(row) })), nameOf, when, isFailed }));
if (page) await look();
