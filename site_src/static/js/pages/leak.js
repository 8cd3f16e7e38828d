// The leak hunt: one change, one timed minute, two readings. calc.diagnosis.leak halves what is suspect.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { stayAwake } from "../shared/awake.js";
import { choose } from "../shared/choices.js";
import { chosenRole, roleChips } from "../diagnose/role.js";
import { unplugView } from "../diagnose/unplug.js";
import { answering } from "../shared/answering.js";
import { calc, Refusal } from "../shared/engine.js";
import { orderView } from "../shared/order.js";
import { chosenSystem } from "../rig/chosen.js";
import { colon, fill, pageData, unitWords } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { bare, isAsTyped, tagged, unitsFor } from "../shared/units.js";

const DRAFT = "leak";
const MINUTE_MS = 60000;
const place = document.getElementById("leak");
const starting = calc.start();
const { parts, plugs, order, orders, systems, words } = await pageData();
const FRESH = { runs: [], from: "", to: "", began: null, isStopped: false, last: null };
const EMPTY = { ...FRESH, plugged: [], opened: [] }; // what is plugged outlives a hunt that begins again
let state = EMPTY;
let refusal = null;
let role = chosenRole();
const system = chosenSystem(systems);

function put(changes) {
  state = { ...state, ...changes };
  keep(DRAFT, state);
  return change();
}

const unitsOf = Object.fromEntries(Object.keys(systems).map((name) => [name, unitsFor(systems, name)]));
const units = () => unitsOf[system];
const READINGS = ["from", "to"];
const plugsOf = (shut) => parts.filter(({ id }) => shut.includes(id)).flatMap((part) => part.plugs ?? []);
const hunt = (runs) => calc.ask("leak.hunt", { runs, role }, { parts, units: units() }); // refuses a minute whose readings cannot be used

// Do what needs readings that can be used, or say at its field which of them cannot.
async function tried(act) {
  refusal = null;
  try {
    await act();
  } catch (refused) {
    if (!(refused instanceof Refusal)) throw refused;
    refusal = refused;
    redraw();
  }
}

// The minute begins, and what was plugged for it stands in the list from then on.
const begin = (shut) => tried(async () => {
  await calc.ask("leak.vacuum_inhg", { field: "from", text: state.from }, { units: units() });
  const now = plugsOf(shut);
  await put({ began: Date.now(), plugged: [...new Set([...state.plugged, ...now])], opened: state.opened.filter((plug) => !now.includes(plug)) });
});

// Keep the minute that was timed.
const enter = (shut) => tried(async () => {
  const runs = [...state.runs, { shut, from: state.from, to: state.to }];
  await hunt(runs);
  await put({ runs, from: "", to: "", began: null });
  scrollTo(0, 0);
});

// The minute with everything open again.
const enterLast = () => tried(async () => {
  const last = { shut: [], from: state.from, to: state.to };
  await hunt([last]);
  await put({ last, from: "", to: "", began: null });
});

const ask = () => calc.ask("leak_page.answer", {
  runs: state.runs, last: state.last, listed: state.plugged, opened: state.opened, role, texts: READINGS.map((name) => state[name]),
}, { parts, plugs, units: units() });

// Until the answer is there, the last one stands, whole, with the entries that it follows from.
const { change, redraw } = answering(ask, (answer) => answer && draw(answer));

function type(name, text) {
  state = { ...state, [name]: tagged(text, system) };
  keep(DRAFT, state);
  if (isAsTyped(state[name], system)) redraw();
  else change();
}

function draw(answer) {
  const { hunt: told, left } = answer;
  const isHunting = !state.isStopped && (told.kind === "first" || told.kind === "shut");
  render(html`
    ${state.runs.length ? nothing : html`<p>${words.leak.told}</p>`}
    ${isHunting ? nextMinute(told.shut, told.kind === "first" ? words.leak.run_first : words.leak.run_next, answer)
      : html`${state.isStopped ? nothing : ended(told)}${state.plugged.length ? restored(answer) : nothing}`}
    ${isHunting ? unplugView({ state, left, plugs, words }) : nothing}
    ${told.suspects.length > 1 ? html`<p><b>${words.leak.suspects}${colon}</b> ${named(told.suspects)}</p>` : nothing}
    ${state.runs.length ? minutes(told) : nothing}
    ${roleChips({ legend: words.leak.role, words, role, change: (id) => { role = id; choose("role", id); change(); } })}
    <div class="rows">
      ${isHunting && left.open.length ? html`
        <button type="button" class="key key-wide" @click=${() => put({ isStopped: true, began: null, from: "", to: "" })}>${words.leak.stop}</button>` : nothing}
      ${state.runs.length ? html`
        <button type="button" class="key key-wide" @click=${() => put({ ...FRESH, runs: state.runs.slice(0, -1) })}>${words.leak.back}</button>` : nothing}
      ${state.runs.length || state.isStopped ? html`<button type="button" class="key key-wide" @click=${() => put(FRESH)}>${words.leak.again}</button>` : nothing}
    </div>
    ${dock(isHunting, told, left)}`, place);
}

// What comes next: the minute, and once nothing is plugged any more one minute with everything open, and the end.
function dock(isHunting, told, left) {
  const act = isHunting ? minuteAct(told.shut, enter) : !state.plugged.length || left.open.length ? nothing
    : state.last === null ? minuteAct([], enterLast) : html`<button type="button" class="key key-act" @click=${() => put(EMPTY)}>${words.leak.finish}</button>`;
  return act === nothing ? nothing : html`<div class="dock">${act}</div>`;
}

const named = (list) => list.map((part) => words.part[part]).join(", ");

// What ends the hunt: the list ticked off, one more minute with nothing plugged, and only then the end.
const restored = (answer) => {
  const { left, last_loss: loss } = answer;
  return html`
  ${left.open.length ? orderView({ order: orders[order], words }) : nothing}
  ${unplugView({ state, left, plugs, words, tick: (plug) => put({ opened: [...state.opened, plug] }) })}
  ${left.open.length ? nothing : state.last === null ? nextMinute([], words.leak.last, answer) : html`
    <p>${fill(words.leak.finish_told, { ...unitWords(words, system), loss })}</p>
    `}`;
};

function nextMinute(shut, title, answer) {
  // the phone's clock, so that a minute goes on while the page is away
  const left_s = state.began === null ? null : Math.max(0, Math.ceil((state.began + MINUTE_MS - Date.now()) / 1000));
  if (left_s > 0) setTimeout(redraw, 250);
  return html`
    <h2 class="step-act">${title}</h2>
    <ul class="shut">${shut.map((part) => html`<li><b>${words.part[part]}</b>${words.part_how[part]}</li>`)}</ul>
    ${reading("from", answer)}
    ${left_s === null ? nothing : html`
        <div class="minute plate">
          <p role="status">${left_s > 0 ? words.leak.running : html`<b>${words.leak.over}</b>`}</p>
          ${left_s > 0 ? html`<span class="minute-left" role="timer">${fill(words.leak.left, { left: left_s })}</span>` : nothing}
        </div>
        ${left_s > 0 ? nothing : reading("to", answer)}`}`;
}

// The one next act of a minute; none while it goes.
function minuteAct(shut, done) {
  if (state.began === null) return html`<button type="button" class="key key-act" @click=${() => begin(shut)}>${words.leak.start}</button>`;
  return Date.now() < state.began + MINUTE_MS ? nothing : html`<button type="button" class="key key-act" @click=${() => done(shut)}>${words.leak.enter}</button>`;
}

function reading(name, { shown }) {
  const u = unitWords(words, system);
  const refused = refusal?.field === name ? fill(words.leak[refusal.code] ?? words.refusal[refusal.code] ?? words.refusal.other, { ...u, ...refusal }) : null;
  return html`
    <div class="readings"><div>
      <label for=${name}>${words.leak[name]}, ${u.u_vacuum}</label>
      <input id=${name} inputmode="decimal" autocomplete="off" .value=${isAsTyped(state[name], system) ? bare(state[name]) : shown[READINGS.indexOf(name)]} aria-invalid=${refused ? "true" : "false"} aria-describedby=${refused ? `${name}-refused` : nothing}
        @input=${(event) => type(name, event.target.value)}>
      ${refused ? html`<p class="refusal" id=${`${name}-refused`} role="alert">${refused}</p>` : nothing}
    </div></div>`;
}

const ended = (told) => html`
  <section class="verdict" role="status">
    <h2>${told.kind === "found" ? `${words.leak.found}${colon} ${named(told.suspects)}` : words.leak[told.kind]}</h2>
    ${told.also.length ? html`<p>${fill(words.leak.found_also, { parts: named(told.also) })}</p>` : nothing}
    ${told.kind === "tight" ? html`<p>${words.leak.tight_do}</p>` : nothing}
  </section>`;

const minutes = (told) => html`
  <h2>${words.leak.losses}</h2>
  <ol class="listed">${state.runs.map((run, count) => html`
    <li>${run.shut.length ? named(run.shut) : words.leak.nothing_shut}${colon} <b>${fill(words.leak.lost, { ...unitWords(words, system), loss: told.losses[count] })}</b>${count
      ? html`, ${told.mattered.includes(count) ? words.leak.mattered : words.leak.unchanged}` : nothing}</li>`)}</ol>`;

// A hunt of an older version, with parts that are not known now, begins again.
const usable = (left) => left && left.runs.every((run) => run.shut.every((part) => parts.some(({ id }) => id === part)))
  && [...(left.plugged ?? []), ...(left.opened ?? [])].every((plug) => plugs.some(({ id }) => id === plug));

const [left] = await Promise.all([kept(DRAFT), starting]);
if (usable(left)) state = { ...EMPTY, ...left, plugged: left.plugged ?? left.runs.flatMap(({ shut }) => plugsOf(shut)) };
place.replaceChildren();
change();
stayAwake(() => {});
