// The Pressure page: a lay, its answer, and the controls that change it.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "./engine.js";
import { answerView } from "./pressure/answer.js";
import { figuresView } from "./pressure/figures.js";
import { changed, clean, everyLine, fromLink, link, ofBed, withoutWye, withWye } from "./pressure/lay.js";
import { pictureView } from "./pressure/picture.js";
import { settingsView } from "./pressure/settings.js";
import { chosenRig, chosenSystem, shelfOf } from "./rig/chosen.js";
import { fill, pageData, unitWords } from "./site.js";
import { keep, kept } from "./store.js";
import { bare, systemChips, tagged, unitsFor } from "./units.js";

const DRAFT = "pressure";
const OWN = { own: true }; // an address this page wrote itself, which may lag behind what was entered
const ADDRESS_MS = 300; // browsers refuse an address that changes at every tap of a held key
const place = document.getElementById("pressure");
const starting = engine();
starting.catch(() => {}); // told below, where it can be shown
const [data, draft, rig] = await Promise.all([pageData(), kept(DRAFT), chosenRig()]);
const { words } = data;
const labels = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose.label]));

const state = { system: chosenSystem(data.systems), lay: null, selected: "A", answer: null, refusal: null, stale: words.engine.loading, notice: null };
let call = null;
let shelf = data.shelf;
let addressing;

const labelOf = (id) => (id === "S" ? words.pressure.supply : fill(words.pressure.line, { id }));

const act = {
  choose: (id, name, value) => show(changed(state.lay, id, name, value)),
  type: (id, name, text) => show(changed(state.lay, id, name, tagged(text, state.system))),
  entryOf: (id, name) => {
    const line = everyLine(state.lay).find((each) => each.id === id);
    return line[name] ?? line.end[name];
  },
  kind: (id, kind) => {
    const rated = kind === "smooth" ? usualPressure(act.entryOf(id, "tip")) : opening().lines[0].end.pressure;
    show(changed(changed(state.lay, id, "kind", kind), id, "pressure", rated));
  },
  tip: (id, tip) => show(changed(changed(state.lay, id, "tip", tip), id, "pressure", usualPressure(tip))),
  crew: (crew) => show({ ...state.lay, crew }),
  bed: (id, bed) => {
    const { lines: [line], crew } = ofBed(bed, opening());
    const laid = Object.entries({ hose: line.hose, length: line.length, ...line.end });
    show({ ...laid.reduce((lay, [name, value]) => changed(lay, id, name, value), state.lay), crew });
  },
  addWye: () => show(withWye(state.lay, data.systems[state.system].family)),
  removeWye: () => {
    state.selected = "A";
    show(withoutWye(state.lay));
  },
  select: (id) => {
    state.selected = id;
    draw();
  },
  system: (system) => {
    state.system = system;
    workOut();
    draw();
  },
  afresh: () => {
    state.selected = "A";
    show(openingLay());
  },
  share,
};

const opening = () => data.openings[data.systems[state.system].family];

// A rig opens on its first preconnect.
const openingLay = () => (rig?.beds?.length ? ofBed(rig.beds[0], opening()) : opening());

const usualPressure = (tip) => (data.tips.find((each) => each.id === tip) ?? data.tips[0]).usual;

// What stands in an input: as typed, or converted where it was typed in another system.
const shown = (kind, entry) =>
  call && !entry.endsWith(`@${state.system}`)
    ? call("entry.shown", { units: unitsFor(data.systems, state.system, [entry]), kind, text: entry })
    : bare(entry);

// A new lay: keep it, put it in the address, work it out, draw it.
function show(lay) {
  state.lay = lay;
  state.notice = null;
  keep(DRAFT, lay);
  clearTimeout(addressing);
  addressing = setTimeout(() => history.replaceState(OWN, "", link(lay)), ADDRESS_MS);
  workOut();
  draw();
}

function workOut() {
  if (!call) return;
  try {
    const hoses = Object.fromEntries(everyLine(state.lay).map(({ hose }) => [hose, shelf.hoses[hose]]));
    const units = unitsFor(data.systems, state.system, state.lay);
    state.answer = call("reading.answer", { lay: state.lay, shelf: { ...shelf, hoses }, units });
    state.refusal = null;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    state.answer = null;
    state.refusal = refusal;
    const told = words.refusal[refusal.code];
    const atField = ["length", "rise", "flow", "pressure"].includes(refusal.field);
    state.stale = atField ? words.pressure.waiting : fill(told ?? words.refusal.other, { line: labelOf(refusal.line) });
    if (atField && everyLine(state.lay).some((line) => line.id === refusal.line)) state.selected = refusal.line;
  }
}

function draw() {
  const lines = everyLine(state.lay);
  const line = lines.find((each) => each.id === state.selected) ?? lines[0];
  const tabs = lines.map(({ id }) => ({ id, label: id === "S" ? words.pressure.supply_short : labelOf(id) }));
  const u = unitWords(words, state.system);
  render(html`
    ${state.notice ? html`<p class="notice" role="status">${state.notice}</p>` : nothing}
    ${answerView({ ...state, words, u, labelOf })}
    ${settingsView({ ...state, line, lines, tabs, data, rig, u, shown, act })}
    ${state.answer
      ? html`${pictureView({ answer: state.answer, lines, shelf, labels, words, u, shown })}
          ${figuresView({ answer: state.answer, lines, data, shelf, u, labelOf })}`
      : nothing}
    ${systemChips({ systems: data.systems, system: state.system, words, change: act.system })}
    <div class="rows">
      <button type="button" class="key key-wide" @click=${act.share}>${words.pressure.share}</button>
      <button type="button" class="key key-wide" @click=${act.afresh}>${words.pressure.afresh}</button>
    </div>`, place);
}

async function share() {
  const url = new URL(link(state.lay), location.href).href;
  try {
    if (navigator.share) await navigator.share({ url });
    else {
      await navigator.clipboard.writeText(url);
      state.notice = words.pressure.copied;
      draw();
    }
  } catch {
    // the person turned it down, or the browser did: the address bar still holds the lay
  }
}

function draftLay() {
  try {
    return clean(draft, data);
  } catch {
    return openingLay();
  }
}

function openLay() {
  const linked = history.state?.own ? null : fromLink(location.hash, data);
  const lay = linked ?? state.lay ?? draftLay();
  show(lay);
  if (linked === undefined) {
    state.notice = words.pressure.damaged_link;
    draw();
  }
}

addEventListener("hashchange", openLay);
const opensAsBaked = (!location.hash || history.state?.own) && JSON.stringify(draftLay()) === JSON.stringify(clean(data.openings.customary, data)) && state.system === "US" && !rig;
if (!opensAsBaked) {
  place.replaceChildren();
  openLay();
}
try {
  call = await starting;
  shelf = shelfOf(call, rig, data.shelf, unitsFor(data.systems, state.system));
} catch {
  state.stale = words.engine.failed;
}
if (opensAsBaked) {
  place.replaceChildren();
  openLay();
} else {
  workOut();
  draw();
}
performance.mark("live-answer");
