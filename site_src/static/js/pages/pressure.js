// The Pressure page: a layout, its answer, and the controls that change it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { addressOf } from "../shared/address.js";
import { answering } from "../shared/answering.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { calc } from "../shared/engine.js";
import { isUnfolded } from "../shared/fold.js";
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";
import { beside, toNotice } from "../shared/notice.js";
import { refusalOf } from "../shared/refusal.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { systemChips, unitsOnce } from "../shared/units.js";
import { actsOn } from "../pressure/acts.js";
import { answerView } from "../pressure/answer.js";
import { NOTHING_TYPED, boundsView } from "../pressure/bounds.js";
import { fallView } from "../pressure/fall.js";
import { figuresView } from "../pressure/figures.js";
import { clean, entriesOf, hasRoom, isOld, linesOf } from "../pressure/layout.js";
import { mapView } from "../pressure/map.js";
import { namesOf } from "../pressure/names.js";
import { nowView } from "../pressure/now.js";
import { openingsOf } from "../pressure/opening.js";
import { paperView } from "../pressure/paper.js";
import { Past, DRAFT as PAST } from "../pressure/past.js";
import { WATERS, pumpView } from "../pressure/pump.js";
import { Saved, savedView } from "../pressure/saved.js";
import { KINDS, settingsView } from "../pressure/settings.js";
import { toolsView } from "../pressure/tools.js";
import { wanted } from "../pressure/wanted.js";
import { atHand, chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";

const DRAFT = "pressure"; // what is worked on
const REST_MS = 20; // from an answer to its being kept
const place = document.getElementById("pressure");
const starting = calc.start();
const [data, draft, undone, rig] = await Promise.all([pageData(), draftOf(DRAFT), draftOf(PAST), chosenRig()]);
const { words } = data;
const unitsOf = unitsOnce(data.systems);
const hoses = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose]));
const readyLayout = (family, id) => data.ready[family].find((each) => each.id === id).layout;
const standing = readyLayout("customary", "one");
const choices = { ...data, source: standing.source, now: standing.now, waters: WATERS };
const { soundLayout, layoutOf, usable, openingLayout } = openingsOf(choices, (id) => ready(id));
const address = addressOf({ mark: "#layout=", old: "#lay=", longest: data.bounds.link, clean: (layout) => clean(layout, choices) });

const NOTHING = { answer: null, flowing: null, at_pump: null, bounds: null, refusal: null };
const state = { ...NOTHING, system: chosenSystem(data.systems), layout: null, selected: "A", shelf: data.shelf, isExample: false, isRunning: false, reach: NOTHING_TYPED, notice: null, own: rig, beds: [], faultyBeds: [], faults: null };
const past = new Past((undone ?? []).map(({ lay, layout = lay, selected }) => ({ layout: soundLayout(() => layout), selected })).filter(({ layout }) => layout));
const inputs = shownIn(state);
const { shown } = inputs;
const page = answering(question, draw);
const saved = new Saved({ words, longest: data.bounds.name, redraw, open: openSaved });
let resting;
let isDrawn = false;
let openedOn = null; // the opening layout, as long as calc has not judged the rig's beds

const units = () => unitsOf(state.system);
const family = () => data.systems[state.system].family;
const ready = (id) => readyLayout(family(), id);
const lineOf = (id) => linesOf(state.layout).find((line) => line.id === id);
const { labelOf, nameOf, told, endOf } = namesOf({ state, words, hoses, tips: data.tips, lineOf, shown });

state.beds = usable(rig?.beds);

// After a change: ask, or until the calculator runs show the last answer to exactly this where there is one.
const work = () => (state.isRunning ? page.change() : draw(recall()));

// Where nothing that is asked has changed.
function redraw() {
  if (state.isRunning) page.redraw();
  else draw(recall());
}

const act = actsOn({
  state, data, rig, ready, lineOf, show, work,
  before: (what) => past.before(what, state.layout),
  added: (kind, text, other, sign) => calc.ask("entry.added", { kind, text, other, sign }, { units: units() }),
  undo: () => {
    const step = past.back();
    show(step.layout, null, step.selected);
  },
  afresh: () => {
    state.reach = NOTHING_TYPED;
    show(openingLayout(state.beds), Symbol("afresh"), "A");
    keepDraft(DRAFT, null);
    state.isExample = !state.beds.length;
    say("afresh", words.pressure.is_opening, act.undo);
  },
  share: async () => say("share", words.link[await address.share(state.layout)]),
});

function openSaved(layout) {
  const sound = soundLayout(() => layout);
  if (sound) act.ready(sound);
  else saved.say("list", words.saved.unreadable);
}

// What is said beside the key that was pressed, with a way back where there is one.
function say(at, text, undo = null) {
  state.notice = text && { at, text, undo };
  redraw();
  toNotice(place);
}

// A layout in the place of the one before.
function set(layout, selected) {
  state.layout = layout;
  state.selected = linesOf(layout).some(({ id }) => id === selected) ? selected : linesOf(layout).at(-1).id;
}

// A new layout: keep it, work it out. What was changed is one step to go back; null for a step back.
function show(layout, what, selected = state.selected) {
  if (what !== null) past.note(what, state);
  set(layout, selected);
  state.notice = null;
  state.isExample = false;
  keepDraft(DRAFT, layout);
  address.leave();
  work();
}

// What an answer follows from; the last answer for exactly that stands until the calculator runs.
const basis = () => basisOf(data.version, state.system, rig, clean(state.layout, choices));

function recall() {
  const last = lastAnswer(DRAFT, basis()) ?? (isAsBaked() ? { answer: data.baked, texts: [], laid: {} } : null);
  if (!last) return null;
  inputs.recall(last.texts);
  state.shelf = { ...data.shelf, ...last.laid, hoses: { ...data.shelf.hoses, ...last.laid.hoses } };
  return { ...NOTHING, answer: last.answer };
}

const isAsBaked = () => !rig && state.system === document.documentElement.dataset.system && JSON.stringify(clean(state.layout, choices)) === JSON.stringify(clean(standing, choices));

// The page's one question: the answer, and of what is folded the parts that are in sight.
async function question() {
  const held = { shelf: state.shelf, units: units(), profile: state.own };
  if (isOld(state.layout)) await convert(held);
  const { layout, selected: line, reach } = state;
  const parts = Object.fromEntries(["workings", "fall", "flowing", "at_pump", "bounds"].filter((part) => isUnfolded(part)).map((part) => [
    part, part === "bounds" ? { line, reach: { ...reach, length: reach.length || lineOf(line).length } } : true]));
  const { texts, learn } = inputs.unread(entriesOf(layout, reach));
  const answered = await calc.ask("layout_page.answer", { layout, parts, texts }, held);
  learn(answered.texts);
  return answered;
}

// A layout of the old kind, with its elevations above the pump.
async function convert({ units }) {
  const { layout } = state;
  const converted = await calc.ask("heights.converted", { layout }, { units });
  if (state.layout !== layout) return;
  state.layout = clean(converted, choices);
  keepDraft(DRAFT, state.layout);
}

function keepLast() {
  const laid = Object.fromEntries(linesOf(state.layout).map(({ hose }) => [hose, state.shelf.hoses[hose]]));
  if (state.answer) keepAnswer(DRAFT, basis(), { answer: state.answer, laid: { ...state.shelf, hoses: laid }, texts: inputs.kept() });
}

// Why there is no answer, or null where it only has not come yet.
function staleOf(refusal) {
  if (!refusal) return null;
  const isElsewhere = lineOf(refusal.line) && refusal.line !== state.selected;
  const named = { ...refusal, line: labelOf(refusal.line) };
  return refusal.field in KINDS ? fill(words.pressure[isElsewhere ? "waiting_line" : "waiting"], named) : refusalOf(words, named);
}

function draw(answered) {
  if (!state.isRunning && !isDrawn && !answered) return; // dashes stand there
  if (!isDrawn) place.replaceChildren();
  isDrawn = true;
  Object.assign(state, NOTHING, answered);
  clearTimeout(resting);
  if (state.isRunning) resting = setTimeout(keepLast, REST_MS);
  const { layout, answer, notice } = state;
  const lines = linesOf(layout);
  const common = { ...state, line: lineOf(state.selected), lines, data, rig, words, u: unitWords(words, state.system), stale: staleOf(state.refusal), shown, labelOf, nameOf, lineOf, told, endOf, act, work, redraw };
  render(html`
    ${beside(notice, "top", words.pressure)}
    ${paperView({ rig, words })}
    ${answerView(common)}
    ${rigNamed(rig, state.faults, words)}
    ${mapView(common)}
    ${toolsView({ ...common, ready: data.ready[family()], canUndo: !past.isEmpty, hasRoom: (added) => hasRoom(layout, state.selected, added, data.bounds) })}
    ${settingsView(common)}
    ${answer ? html`${nowView(common)}${pumpView(common)}${boundsView(common)}${fallView(common)}${figuresView(common)}` : nothing}
    <div class="rows">
      <button type="button" class="key key-wide" @click=${act.share}>${words.pressure.share}</button>
      ${beside(notice, "share", words.pressure)}
      <button type="button" class="key key-wide" @click=${() => window.print()}>${words.pressure.print}</button>
    </div>
    ${savedView({ saved, layout, words })}
    ${systemChips({ systems: data.systems, system: state.system, words, change: act.system })}
    <div class="rows">
      <button type="button" class="key key-wide" @click=${act.afresh}>${words.pressure.afresh}</button>
      ${beside(notice, "afresh", words.pressure)}
    </div>`, place);
}

// What was worked on last, or the layout the page opens on: an example, unless it is a rig's own.
function draftLayout() {
  const own = draft && soundLayout(() => draft);
  state.isExample = !own && !state.beds.length;
  return own || (openedOn = openingLayout(state.beds));
}

// Open on the link that was followed, one step from what it replaces, or else on what was worked on.
function open() {
  const linked = address.take();
  const led = wanted({ rig, layoutOf, ready, readyIds: data.ready.customary.map(({ id }) => id) });
  set(state.layout ?? draftLayout(), state.selected);
  if (led) return show(led, Symbol("led"), "A");
  if (linked) {
    if (!state.isExample) past.note(Symbol("link"), state);
    state.isExample = false;
    set(linked, "A");
    keepDraft(DRAFT, linked);
  }
  work();
  if (linked || linked === undefined) say("top", words.pressure[linked ? "is_linked" : "damaged_link"]);
}

open();
addEventListener("hashchange", open);
addEventListener("beforeprint", redraw); // with the date of now
await starting;
const own = await atHand(rig, data.shelf, units());
Object.assign(state, { shelf: own.shelf, own: own.rig, beds: usable(own.beds), faultyBeds: own.faulty_beds });
state.faults = await faultsOf(own.shelf, rig, state);
if (state.layout === openedOn) {
  set(openingLayout(state.beds), "A");
  const [first] = state.faultyBeds;
  if (first?.before === 0 && state.beds.length) state.notice ??= { at: "top", text: fill(words.pressure.opened_on_other, { name: first.name, other: state.beds[0].name }) };
}
state.isRunning = true;
await work();
performance.mark("live-answer");
saved.load();
