// A water or foam page: entries, their answer, and the controls that change them.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "./engine.js";
import { notices } from "./notice.js";
import { addressOf } from "./address.js";
import { answerView } from "./reckon/answer.js";
import { changed, clean, draftOf, opened, opening } from "./reckon/entries.js";
import { asked, enteredView, fieldsView } from "./reckon/fields.js";
import { figuresView } from "./reckon/figures.js";
import { enteredOf, knownOf, originsOf } from "./reckon/origin.js";
import { pictureView } from "./reckon/pictures.js";
import { linkTables } from "./reckon/tables.js";
import { atHand, chosenRig, chosenSystem } from "./rig/chosen.js";
import { faultsOf } from "./rig/faults.js";
import { rigNamed } from "./rig/named.js";
import { fill, pageData, unitWords } from "./site.js";
import { keep, kept } from "./store.js";
import { bare, isAsTyped, systemChips, tagged, unitsFor } from "./units.js";

const LONGEST_LINK = 3000;
const place = document.getElementById("reckon");
const why = document.getElementById("why");
const starting = engine();
starting.catch(() => {}); // told below, where it can be shown
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const DRAFT = `reckon-${data.page}`;
const draft = await kept(DRAFT);
const address = addressOf({ mark: "#with=", longest: LONGEST_LINK, clean: (entries) => clean(entries, data) });

const state = { system: chosenSystem(data.systems), entries: null, entered: [], answer: null, refusal: null, stale: words.engine.loading, notice: null, own: null, faults: null };
const family = () => data.systems[state.system].family;
let call = null;
let shelf = data.shelf;

const act = {
  choose: (name, id) => enter(name, id),
  type: (name, text) => enter(name, tagged(text, state.system)),
  entryOf: (name) => state.entries[name],
  system: (system) => {
    state.system = system;
    workOut();
    draw();
  },
  afresh: () => show(opening(data, family(), rig), []),
  share: () => address.share(state.entries, () => {
    state.notice = words.pressure.copied;
    draw();
  }),
};

// What stands in an input: as typed, or converted where it was typed in another system.
const shown = (kind, entry) =>
  call && kind && entry.includes("@") && !isAsTyped(entry, state.system)
    ? call("entry.shown", { units: unitsFor(data.systems, state.system, [entry]), kind, text: entry })
    : bare(entry);

const enter = (name, text) => show(changed(state.entries, name, text), [...state.entered, name]);

// New entries, and which of them a person made: keep them, put them in the address, work them out, draw them.
function show(entries, known) {
  state.entries = entries;
  state.entered = enteredOf(entries, known, data, rig);
  state.notice = null;
  keep(DRAFT, draftOf(entries, state.entered, rig));
  address.write(entries);
  workOut();
  draw();
}

function workOut() {
  if (!call) return;
  try {
    const units = unitsFor(data.systems, state.system, state.entries);
    const hose = state.entries.hose;
    const atHand = hose ? { ...shelf, hoses: { [hose]: shelf.hoses[hose] } } : shelf;
    state.answer = call(`${data.page}_reading.answer`, { entries: state.entries, shelf: atHand, units });
    state.refusal = null;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    state.answer = null;
    state.refusal = refusal;
    state.stale = words.reckon.waiting;
  }
}

// Where the chosen hose has a coefficient of the rig's own, its origin in words.
function origin() {
  const hose = shelf.hoses?.[state.entries.hose];
  return hose?.origin ? words.pressure[`origin_${hose.origin}`] : null;
}

// The department's own friction rule, where a page that reckons a hose does so by another.
const otherRule = () => (shelf.rule && shelf.rule !== "square" ? shelf.rule : null);

// How much the rig carries of the hose that is chosen, where the page is of supply hose.
function carried(u) {
  const row = data.fields.some(({ from_rig }) => from_rig === "hoses") && (state.own?.supply ?? []).find(({ hose }) => hose === state.entries.hose);
  if (!row) return nothing;
  const facts = { ...u, name: rig.name, length: shown("length", row.length), limit: row.limit && shown("pressure", row.limit) };
  return html`<p class="smallprint">${fill(words.reckon[row.limit ? "carried_limit" : "carried"], facts)}</p>`;
}

function draw() {
  linkTables(state.system);
  const u = unitWords(words, state.system);
  const origins = originsOf(asked({ data, entries: state.entries }), state.entries, state.entered, rig);
  render(html`
    ${notices(state.notice)}
    ${answerView({ ...state, data, origins, rig, u })}
    ${rigNamed(rig, state.faults, words)}
    ${otherRule() ? html`<p class="smallprint">${fill(words.reckon.other_rule, { rule: words.rule[otherRule()] })}</p>` : nothing}
    ${state.answer?.picture ? pictureView({ data, answer: state.answer, u }) : nothing}
    ${fieldsView({ ...state, data, origins, rig, u, shown, act })}
    ${enteredView({ ...state, data, u, shown })}
    ${carried(u)}
    ${systemChips({ systems: data.systems, system: state.system, words, change: act.system })}
    <div class="rows">
      <button type="button" class="key key-wide" @click=${act.share}>${words.reckon.share}</button>
      <button type="button" class="key key-wide" @click=${act.afresh}>${words.reckon.afresh}</button>
    </div>`, place);
  render(state.answer ? figuresView({ ...state, data, u, origin: origin() }) : nothing, why);
}

function open() {
  const linked = address.read();
  const known = linked ? [] : state.entries ? state.entered : knownOf(draft, data, rig);
  show(linked ?? state.entries ?? opened(draft, data, family(), rig), known);
  if (linked === undefined) {
    state.notice = words.reckon.damaged_link;
    draw();
  }
}

addEventListener("hashchange", open);
const sameAsBaked = state.system === document.documentElement.dataset.system && !rig && address.isOwn()
  && JSON.stringify(opened(draft, data, family(), rig)) === JSON.stringify(opening(data, family(), null));
const begin = () => {
  place.replaceChildren();
  open();
};
if (!sameAsBaked) begin();
try {
  call = await starting;
  const units = unitsFor(data.systems, state.system);
  const own = atHand(call, rig, shelf.hoses ? shelf : data.at_hand, units);
  state.own = own.rig;
  state.faults = await faultsOf(call, own.shelf, rig, { system: state.system, units });
  if (shelf.hoses) shelf = own.shelf;
} catch {
  state.stale = words.engine.failed;
}
if (sameAsBaked) begin();
else {
  workOut();
  draw();
}
performance.mark("live-answer");
