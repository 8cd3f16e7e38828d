// The Pressure page: a layout, its answer, and the controls that change it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "../shared/engine.js";
import { addressOf } from "../shared/address.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";
import { beside, toNotice } from "../shared/notice.js";
import { actsOn } from "../pressure/acts.js";
import { answerView } from "../pressure/answer.js";
import { NOTHING_TYPED, boundsView, reached } from "../pressure/bounds.js";
import { fallView } from "../pressure/fall.js";
import { figuresView } from "../pressure/figures.js";
import { asBed, clean, hasRoom, isOld, linesOf } from "../pressure/layout.js";
import { mapView } from "../pressure/map.js";
import { paperView } from "../pressure/paper.js";
import { namesOf } from "../pressure/names.js";
import { nowView } from "../pressure/now.js";
import { WATERS, pumpView } from "../pressure/pump.js";
import { Saved, savedView } from "../pressure/saved.js";
import { KINDS, settingsView } from "../pressure/settings.js";
import { toolsView } from "../pressure/tools.js";
import { refusalOf } from "../shared/refusal.js";
import { atHand, chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { systemChips, unitsFor } from "../shared/units.js";

const [DRAFT, PAST] = ["pressure", "pressure-past"]; // what is worked on, and the last few layouts one can go back to
const [LONGEST_LINK, REST_MS, MOST_UNDONE, MOST_KEPT] = [40000, 20, 50, 5];
const place = document.getElementById("pressure");
const starting = engine();
const [data, draft, undone, rig] = await Promise.all([pageData(), draftOf(DRAFT), draftOf(PAST), chosenRig()]);
const { words } = data;
const hoses = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose]));
const readyLayout = (family, id) => data.ready[family].find((each) => each.id === id).layout;
const standing = readyLayout("customary", "one");
const choices = { ...data, source: standing.source, now: standing.now, waters: WATERS };
const cleaned = (layout) => clean(layout, choices);
const address = addressOf({ mark: "#layout=", old: "#lay=", longest: LONGEST_LINK, clean: cleaned });

const state = { system: chosenSystem(data.systems), layout: null, selected: "A", answer: null, isExample: false, isBehind: false, unfolded: new Set(), flowing: null, atPump: null, bounds: null, reach: NOTHING_TYPED, refusal: null, stale: null, notice: null, own: rig, beds: [], faultyBeds: [], faults: null };
const past = []; // layouts to go back to, each with what was changed after it
const { shown, kept: shownTexts, recall: recallTexts } = shownIn({ data, state, calculator: () => call });
const saved = new Saved({ words, redraw: () => draw(), open: openSaved });
let call = null;
let shelf = data.shelf;
let resting;
let isDrawn = false;
let openedOn = null; // the opening layout, as long as calc has not judged the rig's beds

const family = () => data.systems[state.system].family;
const ready = (id) => readyLayout(family(), id);
const lineOf = (id) => linesOf(state.layout).find((line) => line.id === id);
const { labelOf, nameOf, told, endOf } = namesOf({ state, words, hoses, tips: data.tips, lineOf, shown });

// An entry with another added to it, or taken away; null where one is no number.
const added = (kind, entry, other, sign) =>
  call && call("entry.added", { units: unitsFor(data.systems, state.system, [entry, other]), kind, text: entry, other, sign });

const act = actsOn({
  state, data, rig, ready, lineOf, added,
  show,
  undo: () => {
    const before = past.pop();
    if (before) show(before.layout, null, before.selected);
  },
  before: (what) => (past.at(-1)?.what === what ? past.at(-1).layout : state.layout),
  work: () => {
    workOut();
    draw();
  },
  afresh: () => {
    state.reach = NOTHING_TYPED;
    show(openingLayout(), Symbol("afresh"), "A");
    keepDraft(DRAFT, null);
    state.isExample = !state.beds.length;
    say("afresh", words.pressure.is_opening, act.undo);
  },
  unfold: (part, isOpen) => {
    if (isOpen === state.unfolded.has(part)) return;
    if (isOpen) state.unfolded.add(part);
    else state.unfolded.delete(part);
    workOutRest();
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
  draw();
  toNotice(place);
}

// The opening layout with a rig's bed in it, or null where that cannot be laid.
const layoutOf = (bed) => soundLayout(() => asBed(ready("one"), ready("one").lines[0].id, bed));

// Of a rig's beds those that can be laid.
const usable = (beds) => (beds ?? []).filter((bed) => layoutOf(bed) !== null);

// A rig opens on its first preconnect.
const openingLayout = () => (state.beds.length ? layoutOf(state.beds[0]) : ready("one"));

// A layout of the old kind with its elevations above the pump, as soon as calc can say them.
const converted = (layout) => (call && isOld(layout) ? cleaned(call("heights.converted", { layout, units: unitsFor(data.systems, state.system, [layout]) })) : layout);

// A layout in the place of the one before, with nothing kept of it yet.
function set(layout, selected) {
  state.layout = converted(layout);
  state.selected = linesOf(layout).some(({ id }) => id === selected) ? selected : linesOf(layout).at(-1).id;
}

// The layout as it stands goes on the list to go back to.
function remember(what) {
  past.push({ layout: state.layout, what, selected: state.selected });
  if (past.length > MOST_UNDONE) past.shift();
  keepPast();
}

const keepPast = () => keepDraft(PAST, past.slice(-MOST_KEPT).map(({ layout, selected }) => ({ layout, selected })));

// A new layout: keep it, work it out, draw it. Changes of one and the same thing are undone at once; null for a step back.
function show(layout, what = null, selected = state.selected) {
  if (what !== null && past.at(-1)?.what !== what) remember(what);
  if (what === null) {
    if (past.length) past.at(-1).what = Symbol("done");
    keepPast();
  }
  set(layout, selected);
  state.notice = null;
  state.isExample = false;
  keepDraft(DRAFT, state.layout);
  address.leave();
  workOut();
  draw();
}

// What an answer follows from; the last answer for exactly that stands until the calculator runs.
const basis = () => basisOf(data.version, state.system, rig, cleaned(state.layout));

function recall() {
  const last = lastAnswer(DRAFT, basis()) ?? (isAsBaked() ? { answer: data.baked, texts: [], laid: {} } : null);
  state.answer = last?.answer ?? null;
  if (!last) return;
  recallTexts(last.texts);
  shelf = { ...data.shelf, ...last.laid, hoses: { ...data.shelf.hoses, ...last.laid.hoses } };
}

const isAsBaked = () => !rig && state.system === document.documentElement.dataset.system && JSON.stringify(cleaned(state.layout)) === JSON.stringify(cleaned(standing));

function workOut() {
  state.isBehind = true;
  if (!call) return recall();
  state.refusal = null;
  state.answer = asked("layout.answer", given());
  clearTimeout(resting);
  resting = setTimeout(workOutRest, REST_MS);
}

// What calc is given of the layout as it stands.
function given() {
  const laid = Object.fromEntries(linesOf(state.layout).map(({ hose }) => [hose, shelf.hoses[hose]]));
  return { layout: state.layout, shelf: { ...shelf, hoses: laid }, units: unitsFor(data.systems, state.system, [state.layout, state.reach, rig?.pump_rated]) };
}

// What stands below the answer waits until the answer is on the screen, and is worked out only where it is unfolded.
const PARTS = {
  flowing: (laid) => asked("flowing.now", laid),
  atPump: (laid) => asked("at_pump.answer", { ...laid, profile: state.own ?? {} }),
  bounds: (laid) => asked("reach.answer", { ...laid, line: state.selected, reach: reached(state.reach, lineOf(state.selected), state.answer.lines.find(({ id }) => id === state.selected), state.system) }),
};

function workOutRest() {
  if (!call) return;
  const laid = given();
  for (const [part, workedOut] of Object.entries(PARTS)) state[part] = state.answer && state.unfolded.has(part) ? workedOut(laid) : null;
  state.isBehind = false;
  draw();
  if (state.answer) keepAnswer(DRAFT, basis(), { answer: state.answer, laid: laid.shelf, texts: shownTexts() });
}

// What calc says, or null with its refusal noted.
function asked(door, given) {
  try {
    return call(door, given);
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    state.refusal = refusal;
    const isElsewhere = lineOf(refusal.line) && refusal.line !== state.selected;
    const named = { ...refusal, line: labelOf(refusal.line) };
    state.stale = refusal.field in KINDS ? fill(words.pressure[isElsewhere ? "waiting_line" : "waiting"], named) : refusalOf(words, named);
    return null;
  }
}

function draw() {
  if (!call && !isDrawn && !state.answer) return; // dashes stand there
  if (!isDrawn) place.replaceChildren();
  isDrawn = true;
  const { layout, answer, notice } = state;
  place.toggleAttribute("data-behind", state.isBehind);
  const lines = linesOf(layout);
  const line = lineOf(state.selected);
  const u = unitWords(words, state.system);
  const common = { ...state, line, lines, data, rig, shelf, words, u, shown, labelOf, lineOf, nameOf, told, endOf, act };
  render(html`
    ${beside(notice, "top", words.pressure)}
    ${paperView({ rig, words })}
    ${answerView(common)}
    ${rigNamed(rig, state.faults, words)}
    ${mapView(common)}
    ${toolsView({ ready: data.ready[family()], canUndo: past.length > 0, canAdd: hasRoom(layout), canRemove: lines.length > 1, words, act })}
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
  return own || (openedOn = openingLayout());
}

// Open on the link that was followed, one step from what it replaces, or else on what was worked on.
function open() {
  const linked = address.take();
  const own = state.layout ?? draftLayout();
  if (!linked) set(own, state.selected);
  else {
    if (state.layout === null) set(own, state.selected);
    if (!state.isExample) remember(Symbol("link"));
    state.isExample = false;
    set(linked, "A");
    keepDraft(DRAFT, linked);
  }
  workOut();
  if (linked || linked === undefined) say("top", words.pressure[linked ? "is_linked" : "damaged_link"]);
  draw();
}

// A layout rebuilt, or null where it is of another kind than this version reads.
function soundLayout(made) {
  try {
    return cleaned(made());
  } catch (strange) {
    if (!(strange instanceof TypeError)) throw strange;
    return null;
  }
}

state.beds = usable(rig?.beds);
past.push(...(undone ?? []).map(({ lay, layout = lay, selected }) => ({ layout: soundLayout(() => layout), selected, what: Symbol("kept") })).filter(({ layout }) => layout));
open();
addEventListener("hashchange", open);
addEventListener("beforeprint", () => draw()); // with the date of now
call = await starting;
const own = atHand(call, rig, data.shelf, unitsFor(data.systems, state.system));
shelf = own.shelf;
Object.assign(state, { own: own.rig, beds: usable(own.beds), faultyBeds: own.faulty_beds });
state.faults = await faultsOf(call, shelf, rig, { system: state.system });
if (state.layout === openedOn) {
  set(openingLayout(), "A");
  const [first] = state.faultyBeds;
  if (first?.before === 0 && state.beds.length) state.notice ??= { at: "top", text: fill(words.pressure.opened_on_other, { name: first.name, other: state.beds[0].name }) };
}
if (isOld(state.layout)) {
  set(state.layout, state.selected);
  keepDraft(DRAFT, state.layout);
}
workOut();
draw();
performance.mark("live-answer");
saved.load();
