// The Pressure page: a layout, its answer, and the controls that change it.
import { render } from "../../vendor/lit-html/lit-html.js";
import { startTerms } from "../help/touched.js";
import { roomIn } from "../line/labels.js";
import { addressOf } from "../shared/address.js";
import { answering } from "../shared/answering.js";
import { chosen } from "../shared/choices.js";
import { draftOf } from "../shared/draft.js";
import { calc } from "../shared/engine.js";
import { isUnfolded, unfold } from "../shared/fold.js";
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";
import { toNotice } from "../shared/notice.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";
import { actsOn } from "../pressure/acts.js";
import { NOTHING_TYPED } from "../pressure/bounds.js";
import { firstOf, keepLayout, noteOpened, onOther } from "../pressure/first.js";
import { clean, entriesOf, hasRoom, isOld, linesOf } from "../pressure/layout.js";
import { linked } from "../pressure/loss.js";
import { namesOf } from "../pressure/names.js";
import { openingsOf } from "../pressure/opening.js";
import { bedName, keepOrigin, lastOrigin, origin } from "../pressure/origin.js";
import { Past, DRAFT as PAST } from "../pressure/past.js";
import { staleOf } from "../pressure/plate.js";
import { WATERS } from "../pressure/pump.js";
import { hasThreePanes, measuring } from "../pressure/room.js";
import { Saved } from "../pressure/saved.js";
import { inStages } from "../pressure/stages.js";
import { NOW, openTab, tabOf } from "../pressure/tabs.js";
import { pageView } from "../pressure/view.js";
import { wanted } from "../pressure/wanted.js";
import { atHand } from "../rig/at_hand.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";

const DRAFT = "pressure"; // what is worked on
const REST_MS = 20; // from an answer to its being kept
const place = document.getElementById("pressure");
const starting = calc.start();
const profiles = chosen("profiles", "");
const [data, draft, undone, rig] = await Promise.all([pageData(), draftOf(DRAFT), draftOf(PAST), chosenRig()]);
const { words } = data;
const unitsOf = unitsOnce(data.systems);
const hoses = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose]));
const readyLayout = (family, id) => data.ready[family].find((each) => each.id === id).layout;
const standing = readyLayout("customary", "one");
const choices = { ...data, source: standing.source, now: standing.now, waters: WATERS };
const { soundLayout, layoutOf, usable, openingLayout } = openingsOf(choices, (id) => ready(id));
const address = addressOf({ mark: "#layout=", old: "#lay=", longest: data.bounds.link, clean: (layout) => clean(layout, choices) });

const NOTHING = { isLast: false, answer: null, scale: null, flowing: null, at_pump: null, bounds: null, refusal: null };
const state = { ...NOTHING, system: chosenSystem(data.systems), layout: null, from: null, selected: "A", tab: rig?.beds?.length ? "hose" : "length", lengths: {}, width: roomIn(null) - 1, shelf: data.shelf, isExample: false, isRunning: false, printed: null, reach: NOTHING_TYPED, notice: null, own: rig, beds: [], faultyBeds: [], faults: null };
const past = new Past((undone ?? []).map(({ lay, layout = lay, selected, from }) => ({ layout: soundLayout(() => layout), selected, from })).filter(({ layout }) => layout));
const inputs = shownIn(state);
const { shown } = inputs;
const page = answering(question, draw);
const saved = new Saved({ words, longest: data.bounds.name, redraw, open: openSaved });
let stood = typeof window.painted === "string" ? window.painted : null; // the pressure that stood for this layout before the live answer
const measure = measuring({ place, state, redraw });
const paint = inStages({ draw: (parts, stage) => render(pageView({ ...parts, stage }), place), settle: measure, isOf: ({ layout }) => layout === state.layout });
let resting;
let refused = null; // the entry that was refused last
let isDrawn = false;
let openedOn = null; // the opening layout, as long as calc has not judged the rig's beds
let mine = null; // what stood before the layout of a link, which is only shown: nothing of that is kept before somebody changes it here

const units = () => unitsOf(state.system);
const family = () => data.systems[state.system].family;
const ready = (id) => readyLayout(family(), id);
const lineOf = (id) => linesOf(state.layout).find((line) => line.id === id);
const names = namesOf({ state, words, hoses, tips: data.tips, lineOf, shown });

state.beds = usable(rig?.beds);

// After a change: ask, or until the calculator runs show the last answer to exactly this where there is one.
const work = () => (state.isRunning ? page.change() : draw(recall()));

// Where nothing that is asked has changed.
function redraw() {
  if (state.isRunning) page.redraw();
  else draw(recall());
}

// Another line or tab of the same layout: drawn at once, and asked only where a part that is in sight follows from it.
function look(changes) {
  const before = JSON.stringify(parts());
  Object.assign(state, changes);
  if (JSON.stringify(parts()) === before) redraw();
  else work();
}

const act = actsOn({
  state, data, rig, ready, lineOf, show, work, look,
  before: (what) => past.before(what, state.layout),
  added: (kind, text, other, sign) => calc.ask("entry.added", { kind, text, other, sign }, { units: units() }),
  undo: () => (mine ? leaveLink() : stepBack(past.back())),
  afresh: () => {
    state.reach = NOTHING_TYPED;
    show(openingLayout(state.beds), Symbol("afresh"), "A", openingOrigin());
    keepLayout(null);
    state.isExample = !state.beds.length;
    say("afresh", words.pressure.is_opening, act.undo);
  },
  toEntry: async ({ line = state.selected, ...refusal }) => {
    Object.assign(state, { selected: line, tab: tabOf({ line, ...refusal }, state.layout) });
    await work();
    document.getElementById(`${refusal.field === "gauge" ? NOW : line}-${refusal.field}`)?.focus();
  },
  toPart: async (name) => {
    unfold(name);
    await work();
    place.querySelector(`[data-part=${name}]`)?.scrollIntoView();
  },
  share: async () => say("share", words.link[await address.share(linked(state.layout), !mine)]),
});

function openSaved(layout) {
  const sound = soundLayout(() => layout);
  if (sound) act.ready(sound);
  else saved.say("list", words.saved.unreadable);
}

// What is said beside the key that was pressed, with a way back where there is one.
function say(at, text, undo = null, label = null) {
  state.notice = text && { at, text, undo, label };
  redraw();
  toNotice(place);
}

// A layout in the place of the one before.
function set(layout, selected) {
  state.layout = layout;
  state.selected = linesOf(layout).some(({ id }) => id === selected) ? selected : linesOf(layout).at(-1).id;
  state.tab = openTab(state.tab, lineOf(state.selected));
}

// A new layout: keep it, work it out. What was changed is one step to go back; null for a step back.
function show(layout, what, selected = state.selected, from = state.from) {
  if (mine && !mine.isExample) past.note(Symbol("link"), mine);
  if (what !== null) past.note(what, state);
  set(layout, selected);
  state.from = from;
  keepOrigin(rig, from, layout);
  mine = stood = null;
  state.notice = null;
  state.isExample = false;
  keepLayout(layout);
  address.leave();
  work();
}

const stepBack = ({ layout, selected, from = null }) => show(layout, null, selected, from);

// Back from a link's layout to what stood before it.
function leaveLink() {
  Object.assign(state, mine, { notice: null });
  mine = stood = null;
  address.leave();
  work();
}

// What an answer follows from; the last answer for exactly that stands until the calculator runs.
const basis = () => basisOf(data.version, state.system, rig, clean(state.layout, choices));

function recall() {
  const own = lastAnswer(DRAFT, basis());
  const last = own ?? (isAsBaked() ? { answer: data.baked, scale: data.baked_scale, texts: [], laid: {} } : null);
  if (!last) return null;
  stood ??= last.answer.pressure;
  inputs.recall(last.texts);
  state.shelf = { ...data.shelf, ...last.laid, hoses: { ...data.shelf.hoses, ...last.laid.hoses } };
  return { ...NOTHING, answer: last.answer, scale: last.scale ?? null, isLast: own !== null };
}

const isAsBaked = () => !rig && state.system === document.documentElement.dataset.system && JSON.stringify(clean(state.layout, choices)) === JSON.stringify(clean(standing, choices));

// Of what is folded the parts that are in sight, each with what it is asked of.
function parts() {
  const { selected: line, reach, tab } = state;
  return Object.fromEntries(["workings", "fall", "at_pump", "bounds"].filter((part) => isUnfolded(part, hasThreePanes && part !== "fall")).concat(tab === NOW ? "flowing" : []).map((part) => [
    part, part === "bounds" ? { line, reach: { ...reach, length: reach.length || lineOf(line).length } } : true]));
}

// The page's one question: the answer, and those parts.
async function question() {
  clearTimeout(resting); // the answer that stands is of what was there before
  const held = { shelf: state.shelf, units: units(), profile: state.own };
  if (isOld(state.layout)) await convert(held);
  const { layout, reach } = state;
  const { texts, learn } = inputs.unread(entriesOf(layout, reach));
  const answered = await calc.ask("layout_page.answer", { layout, parts: parts(), texts }, held);
  learn(answered.texts);
  return answered;
}

// A layout of the old kind, with its elevations above the pump.
async function convert({ units }) {
  const { layout } = state;
  const converted = await calc.ask("heights.converted", { layout }, { units });
  if (state.layout !== layout) return;
  state.layout = clean(converted, choices);
  if (!mine) keepLayout(state.layout);
}

function keepLast() {
  const laid = Object.fromEntries(linesOf(state.layout).map(({ hose }) => [hose, state.shelf.hoses[hose]]));
  if (!state.answer || mine) return;
  const first = state.tab === NOW || state.notice ? undefined : firstOf({ place, profiles, system: state.system, version: data.version, pressure: state.answer.pressure, label: words.pressure.last });
  keepAnswer(DRAFT, basis(), { answer: state.answer, scale: state.scale, laid: { ...state.shelf, hoses: laid }, texts: inputs.kept(), first });
}

// An entry that is refused as the page opens, or as a part of it is brought, is the one that is open.
function bringRefused(answered) {
  const refusal = answered?.refusal;
  const tab = tabOf(refusal, state.layout);
  const [before] = [refused, (refused = refusal ? JSON.stringify(refusal) : null)];
  if (tab && refused !== before && !document.activeElement?.matches("input")) Object.assign(state, { selected: refusal.line ?? state.selected, tab });
}

function draw(answered) {
  if (!state.isRunning && !isDrawn && !answered && !window.painted) return; // dashes stand there
  if (!isDrawn) place.replaceChildren();
  isDrawn = true;
  bringRefused(answered);
  if (answered?.answer?.cautions.length === 0) unfold("careful", false); // the next one begins folded
  Object.assign(state, NOTHING, answered);
  for (const { id, length_ft } of state.answer?.lines ?? []) state.lengths[id] = length_ft;
  clearTimeout(resting);
  if (state.isRunning) resting = setTimeout(keepLast, REST_MS);
  const lines = linesOf(state.layout);
  const common = {
    ...state, ...names, line: lineOf(state.selected), lines, data, rig, words, u: unitWords(words, state.system), stale: staleOf(state, words, names.labelOf), shown, lineOf, act, work, redraw, saved,
    was: stood && state.answer && state.answer.pressure !== stood ? stood : null, ready: data.ready[family()], canUndo: mine !== null || !past.isEmpty, hasRoom: (added) => hasRoom(state.layout, state.selected, added, data.bounds),
  };
  paint(common);
}

// What was worked on last, or the layout the page opens on: an example, unless it is a rig's own.
function draftLayout() {
  const own = draft && soundLayout(() => draft);
  state.isExample = !own && !state.beds.length;
  state.from = own ? lastOrigin(rig) : openingOrigin();
  return own || (openedOn = openingLayout(state.beds));
}

const openingOrigin = () => (state.beds.length ? origin(bedName(rig, state.beds[0]), openingLayout(state.beds)) : null);

// Whether a layout is one that a person made: no opening, and no bed of the rig as it is.
const isOwn = (layout) => ![openingLayout(state.beds), ...state.beds.map(layoutOf), ...data.ready[family()].map(({ layout: own }) => own)]
  .some((other) => JSON.stringify(clean(other, choices).lines) === JSON.stringify(clean(layout, choices).lines));

// Open on the link that was followed, one step from what stood, or else on what was worked on.
function open() {
  const linked = address.take();
  const led = wanted({ rig, layoutOf, ready, readyIds: data.ready.customary.map(({ id }) => id) });
  set(state.layout ?? draftLayout(), state.selected);
  if (led) {
    state.tab = "length"; // what is changed most of a bed
    const before = state.layout;
    show(led.layout, Symbol("led"), "A", led.bed && origin(led.bed, led.layout));
    return isOwn(before) && say("top", words.pressure.is_led, act.undo);
  }
  if (linked) {
    const { layout, selected, tab, from, isExample } = state;
    mine ??= { layout, selected, tab, from, isExample };
    Object.assign(state, { from: null, isExample: false });
    stood = null;
    set(linked, "A");
  } else if (mine && !location.hash) leaveLink(); // back, or a link that cannot be read
  work();
  if (linked !== null) say("top", words.pressure[linked ? "is_linked" : "damaged_link"]);
}

noteOpened(draft ?? null);
open();
addEventListener("hashchange", open);
onOther(() => state.layout, soundLayout, (layout) => say("top", words.pressure.other_tab, () => act.ready(layout), words.pressure.take_other));
addEventListener("resize", measure);
addEventListener("beforeprint", () => {
  state.printed = Date.now();
  redraw();
});
await starting;
const own = await atHand(rig, data.shelf, units());
Object.assign(state, { shelf: own.shelf, own: own.rig, beds: usable(own.beds), faultyBeds: own.faulty_beds });
state.faults = await faultsOf(own.shelf, rig, state);
const recalledFor = basis();
if (mine?.layout === openedOn) Object.assign(mine, { layout: openingLayout(state.beds), from: openingOrigin() });
if (state.layout === openedOn) {
  set(openingLayout(state.beds), "A");
  state.from = openingOrigin();
  const [first] = state.faultyBeds;
  if (first?.before === 0 && state.beds.length) state.notice ??= { at: "top", text: fill(words.pressure.opened_on_other, { name: first.name, other: state.beds[0].name }) };
}
state.isRunning = true;
await page.change(state.answer && recalledFor === basis() ? { ...NOTHING, isLast: state.isLast, answer: state.answer, scale: state.scale } : null);
performance.mark("live-answer");
saved.load();
startTerms().then(redraw); // last: nothing that answers waits for it
