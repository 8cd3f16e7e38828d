// A water or foam page: entries, their answer, and the controls that change them.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { addressOf } from "../shared/address.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";
import { beside, toNotice } from "../shared/notice.js";
import { startTerms } from "../help/touched.js";
import { answerView } from "../reckon/answer.js";
import { amountsOf, changed, clean, draftOf as ofRig, opened, opening } from "../reckon/entries.js";
import { asked, enteredView, fieldsView, hoseNamed, labelOf } from "../reckon/fields.js";
import { figuresView } from "../reckon/figures.js";
import { enteredOf, knownOf, originsOf } from "../reckon/origin.js";
import { pictureView } from "../reckon/pictures.js";
import { siteView } from "../reckon/pictures/site.js";
import { linkTables } from "../reckon/tables.js";
import { atHand } from "../rig/at_hand.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { tagged, unitsOnce } from "../shared/units.js";

const LONGEST_LINK = 3000;
const place = document.getElementById("reckon");
const why = document.getElementById("why");
const terms = startTerms();
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const unitsOf = unitsOnce(data.systems);
const DRAFT = `reckon-${data.page}`;
const draft = await draftOf(DRAFT);
const address = addressOf({ mark: "#with=", longest: LONGEST_LINK, clean: (entries) => clean(entries, data) });

const NOTHING = { answer: null, refusal: null };
const state = { ...NOTHING, system: chosenSystem(data.systems), entries: null, entered: [], shelf: data.shelf, isRunning: false, notice: null, own: null, faults: null, open: null };
const page = answering(question, draw);
const inputs = shownIn(state);
const { shown } = inputs;
let isDrawn = false;
let mine = null; // what stood before the figures of a link, and the way back to it
let isForeign = false; // a link's figures are only shown: nothing of them is kept before somebody changes one here

const family = () => data.systems[state.system].family;
const units = () => unitsOf(state.system);

// After a change: ask, or until the calculator runs show the last answer to exactly this where there is one.
const work = () => (state.isRunning ? page.change() : draw(recall()));

const act = {
  choose: (name, id) => enter(name, id),
  type: (name, text) => enter(name, tagged(text, state.system)),
  asIs: (name) => enter(name, state.entries[name]),
  // One tray at a time, and the whole of it in sight.
  open: (name) => {
    state.open = name;
    redraw();
    place.querySelector("[data-open]")?.scrollIntoView({ block: "nearest" });
  },
  afresh: () => {
    const { entries, entered } = state;
    mine = null;
    show(opening(data, family(), rig), []);
    keepDraft(DRAFT, null);
    say("afresh", words.reckon.is_opening, () => show(entries, entered));
  },
  share: async () => say("share", words.link[await address.share(state.entries, !isForeign)]),
};

// What is said beside the key that was pressed, with a way back where there is one.
function say(at, text, undo = null) {
  state.notice = text && { at, text, undo };
  redraw();
  toNotice(place);
}

function redraw() {
  if (state.isRunning) page.redraw();
  else draw(recall());
}

const enter = (name, text) => show(changed(state.entries, name, text), [...state.entered, name]);

// New entries, and which of them a person made: keep them, work them out, draw them.
function show(entries, known) {
  state.entries = entries;
  state.entered = enteredOf(entries, known, data, rig);
  state.notice = mine && linkNotice();
  isForeign = false;
  keepDraft(DRAFT, ofRig(entries, state.entered, rig));
  address.leave();
  work();
}

const linkNotice = () => ({ at: "top", text: words.reckon.is_linked, undo: leaveLink });

// Back from a link's figures to what stood before them.
function leaveLink() {
  const { entries, entered } = mine;
  mine = null;
  if (!isForeign) return show(entries, entered);
  isForeign = false;
  Object.assign(state, { entries, entered, notice: null });
  address.leave();
  work();
}

// What an answer follows from; the last answer for exactly that stands until the calculator runs.
const basis = () => basisOf(data.version, state.system, rig, state.entries);

function recall() {
  const last = lastAnswer(DRAFT, basis()) ?? (isAsBaked() ? { answer: data.baked, texts: [], shelf: state.shelf } : null);
  if (!last) return null;
  inputs.recall(last.texts);
  state.shelf = last.shelf;
  return { ...NOTHING, answer: last.answer };
}

const isAsBaked = () => !rig && state.system === document.documentElement.dataset.system
  && JSON.stringify(state.entries) === JSON.stringify(opening(data, family(), null));

// The page's one question.
async function question() {
  const { entries } = state;
  const { texts, learn } = inputs.unread([...amountsOf(entries, data), ...carriedRows().flatMap(({ length, limit }) => [["length", length], ["pressure", limit]])]);
  const answered = await calc.ask("water_page.answer", { page: data.page, entries, texts }, { shelf: state.shelf, units: units() });
  learn(answered.texts);
  return answered;
}

function keepLast() {
  const { answer, entries: { hose }, shelf } = state;
  if (answer && !isForeign) keepAnswer(DRAFT, basis(), { answer, shelf: hose ? { ...shelf, hoses: { [hose]: shelf.hoses[hose] } } : shelf, texts: inputs.kept() });
}

// The department's own friction rule, where a page that reckons a hose does so by another.
const otherRule = ({ rule } = state.shelf) => (rule && rule !== "square" ? rule : null);

// The rig's own supply hose of the size that is chosen, where the page is of supply hose.
const carriedRows = () => (data.fields.some(({ from_rig }) => from_rig === "supply") ? state.own?.supply ?? [] : []).filter(({ hose }) => hose === state.entries.hose);

// Why there is no answer: the entry to correct, by its name.
const refused = () => fill(words.reckon.waiting, { entry: labelOf(data.fields.find(({ name }) => name === state.refusal.field), data) });

// How much the rig carries of it.
function carried(u) {
  const [row] = carriedRows();
  if (!row) return nothing;
  const facts = { ...u, name: rig.name, length: shown("length", row.length), limit: row.limit && shown("pressure", row.limit) };
  return html`<p class="smallprint">${fill(words.reckon[row.limit ? "carried_limit" : "carried"], facts)}</p>`;
}

function draw(answered) {
  if (!state.isRunning && !isDrawn && !answered) return; // dashes stand there
  if (!isDrawn) place.replaceChildren();
  isDrawn = true;
  Object.assign(state, NOTHING, answered);
  if (state.isRunning) keepLast();
  const { notice } = state;
  linkTables(state.system);
  const u = unitWords(words, state.system);
  const origins = originsOf(asked({ data, entries: state.entries }), state.entries, state.entered, rig);
  const view = { ...state, data, origins, rig, u, shown, act };
  render(html`
    <div class="water-head" data-pane="answer">
      ${beside(notice, "top", words.pressure)}
      ${answerView({ ...view, stale: state.refusal && refused() })}
      ${pictureView({ ...view, hose: hoseNamed(view) })}
    </div>
    <div class="water-entries" data-pane="entries">
      ${fieldsView(view)}
      ${enteredView(view)}
      ${siteView(view)}
      ${carried(u)}
      ${otherRule() ? html`<p class="smallprint">${fill(words.reckon.other_rule, { rule: words.rule[otherRule()] })}</p>` : nothing}
      ${rigNamed(rig, state.faults, words)}
      <div class="pair-keys">
        <button type="button" class="key" @click=${act.share}>${words.reckon.share}</button>
        <button type="button" class="key" @click=${act.afresh}>${words.reckon.afresh}</button>
      </div>
      ${beside(notice, "share", words.pressure)}${beside(notice, "afresh", words.pressure)}
    </div>`, place);
  render(state.answer ? figuresView({ ...state, data, u }) : nothing, why);
}

// Open on what was entered, or on the link that was followed, one touch from that.
function open() {
  const linked = address.take();
  if (!state.entries) {
    const entries = opened(draft, data, family(), rig);
    Object.assign(state, { entries, entered: enteredOf(entries, knownOf(draft, data, rig), data, rig) });
  }
  if (linked) {
    if (!isForeign) mine = { entries: state.entries, entered: state.entered };
    isForeign = true;
    Object.assign(state, { entries: linked, entered: enteredOf(linked, [], data, rig), notice: linkNotice() });
  } else if (isForeign && !location.hash) leaveLink(); // back, or a link that cannot be read
  if (linked === undefined) state.notice = { at: "top", text: words.reckon.damaged_link };
  work();
  if (linked === null) return;
  redraw();
  toNotice(place);
}

open();
addEventListener("hashchange", open);
await starting;
const own = await atHand(rig, data.shelf.hoses ? data.shelf : data.at_hand, units());
state.own = own.rig;
state.faults = await faultsOf(own.shelf, rig, state);
if (data.shelf.hoses) state.shelf = own.shelf;
state.isRunning = true;
await page.change(state.answer && { ...NOTHING, answer: state.answer });
performance.mark("live-answer");
terms.then(redraw);
