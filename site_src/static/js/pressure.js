// The Pressure page: a lay, its answer, and the controls that change it.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "./engine.js";
import { addressOf } from "./address.js";
import { notices } from "./notice.js";
import { actsOn } from "./pressure/acts.js";
import { answerView } from "./pressure/answer.js";
import { NOTHING_TYPED, boundsView, reached } from "./pressure/bounds.js";
import { fallView } from "./pressure/fall.js";
import { figuresView } from "./pressure/figures.js";
import { PIPED, asBed, clean, hasRoom, isJoint, isOld, linesOf } from "./pressure/lay.js";
import { mapView } from "./pressure/map.js";
import { nowView } from "./pressure/now.js";
import { WATERS, pumpView } from "./pressure/pump.js";
import { KINDS, settingsView } from "./pressure/settings.js";
import { toolsView } from "./pressure/tools.js";
import { refusalOf } from "./refusal.js";
import { atHand, chosenRig, chosenSystem } from "./rig/chosen.js";
import { faultsOf } from "./rig/faults.js";
import { rigNamed } from "./rig/named.js";
import { fill, pageData, unitWords } from "./site.js";
import { keep, kept } from "./store.js";
import { bare, isAsTyped, systemChips, unitsFor } from "./units.js";

const DRAFT = "pressure";
const LONGEST_LINK = 40000;
const REST_MS = 20;
const MOST_UNDONE = 50;
const place = document.getElementById("pressure");
const starting = engine();
starting.catch(() => {}); // told below, where it can be shown
const [data, draft, rig] = await Promise.all([pageData(), kept(DRAFT), chosenRig()]);
const { words } = data;
const hoses = Object.fromEntries(data.hoses.map((hose) => [hose.id, hose]));
const readyLay = (family, id) => data.ready[family].find((each) => each.id === id).lay;
const standing = readyLay("customary", "one");
const choices = { ...data, source: standing.source, now: standing.now, waters: WATERS };
const cleaned = (lay) => clean(lay, choices);
const address = addressOf({ mark: "#lay=", longest: LONGEST_LINK, clean: cleaned });

const state = { system: chosenSystem(data.systems), lay: null, selected: "A", answer: null, unfolded: new Set(), flowing: null, atPump: null, bounds: null, reach: NOTHING_TYPED, refusal: null, stale: words.engine.loading, notice: null, own: rig, beds: [], faults: null };
const past = []; // lays to go back to, each with what was changed after it
let call = null;
let shelf = data.shelf;
let resting;

const family = () => data.systems[state.system].family;
const ready = (id) => readyLay(family(), id);
const lineOf = (id) => linesOf(state.lay).find((line) => line.id === id);

function labelOf(id) {
  const line = lineOf(id);
  return line && isJoint(line) ? fill(words.pressure[`to_${line.device}`], { id }) : fill(words.pressure.line, { id });
}

const act = actsOn({
  state, data, rig, ready, lineOf, added,
  show,
  undo: () => {
    const before = past.pop();
    if (before) show(before.lay, null, before.selected);
  },
  work: () => {
    workOut();
    draw();
  },
  afresh: () => {
    state.reach = NOTHING_TYPED;
    show(openingLay(), null, "A");
  },
  unfold: (part, isOpen) => {
    if (isOpen === state.unfolded.has(part)) return;
    if (isOpen) state.unfolded.add(part);
    else state.unfolded.delete(part);
    workOutRest();
  },
  share: () => address.share(state.lay, () => {
    state.notice = words.pressure.copied;
    draw();
  }),
});

// The opening lay with a rig's bed in it, or null where that cannot be laid.
function layOf(bed) {
  try {
    const lay = ready("one");
    return cleaned(asBed(lay, lay.lines[0].id, bed));
  } catch {
    return null;
  }
}

// Of a rig's beds those that can be laid.
const usable = (beds) => (beds ?? []).filter((bed) => layOf(bed) !== null);

// A rig opens on its first preconnect.
const openingLay = () => (state.beds.length ? layOf(state.beds[0]) : ready("one"));

// What stands in an input: as typed, or converted where it was typed in another system.
function shown(kind, entry) {
  return call && entry && !isAsTyped(entry, state.system)
    ? call("entry.shown", { units: unitsFor(data.systems, state.system, [entry]), kind, text: entry })
    : bare(entry);
}

// An entry with another added to it, or taken away; null where one is no number.
function added(kind, entry, other, sign) {
  return call("entry.added", { units: unitsFor(data.systems, state.system, [entry, other]), kind, text: entry, other, sign });
}

// A line by what it leads to.
function nameOf(line) {
  return isJoint(line) ? fill(words.pressure[`at_${line.device}`], line) : labelOf(line.id);
}

// What a line is made of, in a few words.
function told(line) {
  const runs = line.runs === "1" ? "" : `${line.runs} × `;
  const typed = shown("rise", line.height);
  const isBelow = /^\s*[-−]/.test(typed);
  const height = /[1-9]/.test(typed) ? ` · ${fill(words.pressure[isBelow ? "height_down" : "height_up"], { height: typed.replace(/^\s*[-−]/, ""), ...unitWords(words, state.system) })}` : "";
  const { chip, label, family: sizes } = hoses[line.hose];
  if (line.hose === PIPED) return `${label}${height}`;
  return `${runs}${chip ? `${chip} ${words.unit[sizes === "metric" ? "SI" : "US"].diameter}` : label} · ${shown("length", line.length)} ${words.unit[state.system].length}${height}`;
}

// A lay of the old kind with its elevations above the pump, as soon as calc can say them.
const converted = (lay) => (call && isOld(lay) ? cleaned(call("heights.converted", { lay, units: unitsFor(data.systems, state.system, [lay]) })) : lay);

// A new lay: keep it, put it in the address, work it out, draw it. Changes of one and the same thing are undone at once.
function show(lay, what = null, selected = state.selected) {
  if (what !== null && state.lay && past.at(-1)?.what !== what) past.push({ lay: state.lay, what, selected: state.selected });
  if (what === null) past.at(-1) && (past.at(-1).what = Symbol("done"));
  if (past.length > MOST_UNDONE) past.shift();
  state.lay = converted(lay);
  state.selected = linesOf(lay).some(({ id }) => id === selected) ? selected : linesOf(lay).at(-1).id;
  state.notice = null;
  keep(DRAFT, state.lay);
  address.write(state.lay);
  workOut();
  draw();
}

function workOut() {
  if (!call) return;
  state.refusal = null;
  state.answer = asked("reading.answer", given());
  clearTimeout(resting);
  resting = setTimeout(workOutRest, REST_MS);
}

// What calc is given of the lay as it stands.
function given() {
  const laid = Object.fromEntries(linesOf(state.lay).map(({ hose }) => [hose, shelf.hoses[hose]]));
  return { lay: state.lay, shelf: { ...shelf, hoses: laid }, units: unitsFor(data.systems, state.system, [state.lay, state.reach, rig?.pump_rated]) };
}

// What stands below the answer waits until the answer is on the screen, and is worked out only where it is unfolded.
const PARTS = {
  flowing: (laid) => asked("flowing.now", laid),
  atPump: (laid) => asked("at_pump.answer", { ...laid, profile: state.own ?? {} }),
  bounds: (laid) => asked("bounds.answer", { ...laid, line: state.selected, reach: reached(state.reach, lineOf(state.selected), state.answer.lines.find(({ id }) => id === state.selected), state.system) }),
};

function workOutRest() {
  const laid = given();
  for (const [part, workedOut] of Object.entries(PARTS)) state[part] = state.answer && state.unfolded.has(part) ? workedOut(laid) : null;
  draw();
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
  const { lay, answer } = state;
  const lines = linesOf(lay);
  const line = lineOf(state.selected);
  const u = unitWords(words, state.system);
  const common = { ...state, line, lines, data, rig, shelf, words, u, shown, labelOf, lineOf, nameOf, told, act };
  render(html`
    ${notices(state.notice)}
    ${answerView(common)}
    ${rigNamed(rig, state.faults, words)}
    ${mapView(common)}
    ${toolsView({ ready: data.ready[family()], canUndo: past.length > 0, canAdd: hasRoom(lay), canRemove: lines.length > 1, words, act })}
    ${settingsView(common)}
    ${answer ? html`${nowView(common)}${pumpView(common)}${boundsView(common)}${fallView(common)}${figuresView(common)}` : nothing}
    ${systemChips({ systems: data.systems, system: state.system, words, change: act.system })}
    <div class="rows">
      <button type="button" class="key key-wide" @click=${act.share}>${words.pressure.share}</button>
      <button type="button" class="key key-wide" @click=${act.afresh}>${words.pressure.afresh}</button>
    </div>`, place);
}

function draftLay() {
  try {
    return cleaned(draft);
  } catch {
    return openingLay();
  }
}

function openLay() {
  const linked = address.read();
  const lay = linked ?? state.lay ?? draftLay();
  show(lay, null);
  if (linked === undefined) {
    state.notice = words.pressure.damaged_link;
    draw();
  }
}

addEventListener("hashchange", openLay);
state.beds = usable(rig?.beds);
const opensAsBaked = address.isOwn() && JSON.stringify(draftLay()) === JSON.stringify(ready("one")) && state.system === document.documentElement.dataset.system && !rig;
if (!opensAsBaked) {
  place.replaceChildren();
  openLay();
}
// The place of the rig's bed that the page opened on before calc could judge it, or -1.
const openedOn = state.lay && state.beds.length && JSON.stringify(state.lay) === JSON.stringify(layOf(state.beds[0])) ? rig.beds.indexOf(state.beds[0]) : -1;
let isUnfit = false;
try {
  call = await starting;
  const own = atHand(call, rig, data.shelf, unitsFor(data.systems, state.system));
  shelf = own.shelf;
  state.own = own.rig;
  state.beds = usable(own.beds);
  isUnfit = Boolean(shelf.faults?.some(({ field }) => `${field}.`.startsWith(`beds.${openedOn}.`)));
  state.faults = await faultsOf(call, shelf, rig, { system: state.system, units: unitsFor(data.systems, state.system) });
} catch {
  state.stale = words.engine.failed;
}
if (opensAsBaked) {
  place.replaceChildren();
  openLay();
} else if (isUnfit) show(openingLay(), null, "A");
else if (isOld(state.lay)) show(state.lay);
else {
  workOut();
  draw();
}
performance.mark("live-answer");
