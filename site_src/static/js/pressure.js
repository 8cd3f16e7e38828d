// The Pressure page: a lay, its answer, and the controls that change it.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "./engine.js";
import { answerView } from "./pressure/answer.js";
import { figuresView } from "./pressure/figures.js";
import { changed, clean, everyLine, fromLink, link, withoutWye, withWye } from "./pressure/lay.js";
import { pictureView } from "./pressure/picture.js";
import { settingsView } from "./pressure/settings.js";
import { fill, pageData } from "./site.js";
import { keep, kept } from "./store.js";

const DRAFT = "pressure";
const ADDRESS_MS = 300; // browsers refuse an address that changes at every tap of a held key
const place = document.getElementById("pressure");
const starting = engine();
starting.catch(() => {}); // told below, where it can be shown
const [data, draft] = await Promise.all([pageData(), kept(DRAFT)]);
const { words } = data;
const labels = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose.label]));

const state = { lay: null, selected: "A", answer: null, refusal: null, stale: words.engine.loading, notice: null };
let call = null;
let addressing;

const labelOf = (id) => (id === "S" ? words.pressure.supply : fill(words.pressure.line, { id }));

const act = {
  change: (id, name, value) => show(changed(state.lay, id, name, value)),
  entryOf: (id, name) => {
    const line = everyLine(state.lay).find((each) => each.id === id);
    return line[name] ?? line.end[name];
  },
  kind: (id, kind) => {
    const rated = kind === "smooth" ? usualPressure(act.entryOf(id, "tip")) : data.opening.lines[0].end.pressure;
    show(changed(changed(state.lay, id, "kind", kind), id, "pressure", rated));
  },
  tip: (id, tip) => show(changed(changed(state.lay, id, "tip", tip), id, "pressure", usualPressure(tip))),
  crew: (crew) => show({ ...state.lay, crew }),
  addWye: () => show(withWye(state.lay)),
  removeWye: () => {
    state.selected = "A";
    show(withoutWye(state.lay));
  },
  select: (id) => {
    state.selected = id;
    draw();
  },
  afresh: () => {
    state.selected = "A";
    show(data.opening);
  },
  share,
};

const usualPressure = (tip) => String(data.tips.find((each) => String(each.tip_in) === tip)?.usual_psi ?? 50);

// A new lay: keep it, put it in the address, work it out, draw it.
function show(lay) {
  state.lay = lay;
  state.notice = null;
  keep(DRAFT, lay);
  clearTimeout(addressing);
  addressing = setTimeout(() => history.replaceState(null, "", link(lay)), ADDRESS_MS);
  workOut();
  draw();
}

function workOut() {
  if (!call) return;
  try {
    state.answer = call("reading.answer", { lay: state.lay, shelf: data.shelf, units: data.units });
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
  render(html`
    ${state.notice ? html`<p class="notice" role="status">${state.notice}</p>` : nothing}
    ${answerView({ ...state, words, labelOf })}
    ${settingsView({ lay: state.lay, line, lines, tabs, data, refusal: state.refusal, act })}
    ${state.answer
      ? html`${pictureView({ answer: state.answer, lines, shelf: data.shelf, labels, words })}
          ${figuresView({ answer: state.answer, lines, data, labelOf })}`
      : nothing}
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
    return data.opening;
  }
}

function openLay() {
  const linked = fromLink(location.hash, data);
  const lay = linked ?? state.lay ?? draftLay();
  show(lay);
  if (linked === undefined) {
    state.notice = words.pressure.damaged_link;
    draw();
  }
}

addEventListener("hashchange", openLay);
const opensAsBaked = !location.hash && JSON.stringify(draftLay()) === JSON.stringify(clean(data.opening, data));
if (!opensAsBaked) {
  place.replaceChildren();
  openLay();
}
try {
  call = await starting;
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
