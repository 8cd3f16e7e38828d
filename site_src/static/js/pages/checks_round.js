// A check, one item to a screen: where, look, the good sign, the limit; good or not good at the thumb. calc.bay says which items,
// in which order, and what a reading is worth. Each answer is a record of its own as soon as it is touched.
import { render } from "../../vendor/lit-html/lit-html.js";
import { calc, Refusal } from "../shared/engine.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { toHeading } from "../shared/focus.js";
import { refusalOf } from "../shared/refusal.js";
import { running, runs } from "../shared/running.js";
import { isSettled } from "../shared/second_touch.js";
import { fragment, home } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { judgedFigures, metersRead, recordOf, typedOf } from "../bay/figures.js";
import { opened } from "../bay/opened.js";
import { Clock } from "../bay/clock.js";
import { leftOutView } from "../bay/department.js";
import { doneView, firstView, itemView } from "../bay/item.js";
import { lacking, rankOf } from "../bay/item_forms.js";
import { isAsked, limitOf as whoseLimit } from "../bay/reading.js";
import { isDriven, yourName } from "../bay/log.js";
import { prints } from "../bay/paper.js";
import { checkSheet, limitsOf } from "../bay/paper_check.js";
import { entryOf, lastText, nearby } from "../bay/near.js";
import { limitText } from "../bay/sentences.js";
import { defectOf, ownLimitOf } from "../bay/written.js";

const place = document.getElementById("bay");
const page = await opened(place);
const list = fragment();
/** @type {any} */
const state = { at: null, entry: "", judged: null, near: null, form: null, isRead: false, isTimed: false, isUnread: false, typed: {}, figures: [], later: new Set(), shownAt: -Infinity, after: [], took: [], ended: null, refused: null, said: null };
const asksAfter = list === "after_use"; // what there was, before the first item
const entries = new Map(); // what is typed for an item, its reading or its figures by name, whatever is looked at meanwhile
const clock = new Clock({ tick: () => draw(), done: (text) => { state.isTimed = true; enter(text); } });
// Whether the item has a clock that was not run to its end.
const isUntimed = (row) => Boolean(row.clock_s || row.tool) && !clock.isOver && !state.isTimed;

// What held as an item was answered: its clock, the figures written with it, its limit as it was shown and whose it is, and whether its figure could not be read.
const heldBy = (row) => ({ ...((row.clock_s || row.tool) && { clock: isUntimed(row) ? "not_run" : "run" }), ...(state.figures.length && { figures: recordOf(state.figures) }), ...(row.limit && { limit: `${limitText(state.limit, row, page)}, ${whoseLimit({ own: page.own, words: page.words }, row)}` }), ...(state.isUnread && { reading: "not_read" }) });

async function start() {
  const { data, log } = page;
  if (!data.lists.includes(list)) return location.replace(new URL("checks/", home));
  page.defects = (await log.standing()).defects;
  page.settings = await log.settings();
  page.round = log.openRound(list);
  await gather();
  state.isRead = Boolean(page.round) || !asksAfter && !page.defects.length && Boolean(yourName());
  const draft = await draftOf(draftName());
  if (!page.left.includes(draft?.at)) return show(page.left[0] ?? null);
  state.isRead = true;
  await show(draft.at);
  if (draft.entry) await enter(bare(draft.entry));
  if (draft.typed) await write(draft.typed);
  if (draft.form) act.form(draft.form);
}

// The items of the list, with the care that belongs to what there was.
async function gather() {
  const { data, rig, settings, round } = page;
  const { items, left_out: leftOut } = await calc.ask("rounds.items", { rows: data.rows, name: list, profile: rig, settings, after: state.after });
  Object.assign(page, { leftOut, items: round?.items ?? items });
  limits();
  await look();
}

// The limits of the whole list, which paper has.
async function limits() {
  page.limits = await limitsOf(page);
}

// A defect that is being written, with its item and reading, is noted at each touch of a key.
const draftName = () => `not-good:${page.rig.id}:${list}`;

// How far the check is, by all that is in the log of it.
async function look() {
  const { log, round, items } = page;
  const progress = round ? await log.progress(round.id) : { answers: {}, left: items, is_ended: false };
  const left = progress.left.filter((id) => page.rows.has(id));
  Object.assign(page, { answers: progress.answers, left: left.filter((id) => !isHeld(id)), held: left.filter(isHeld) });
}

// What is done by driving waits while the rig is out of service as a whole.
const isHeld = (id) => page.rows.get(id).place === "road" && !isDriven(page.defects);

// What comes after an item: the next that is open and was not put off.
function next(id) {
  const open = page.left.filter((other) => !state.later.has(other));
  return open.find((other) => page.items.indexOf(other) > page.items.indexOf(id)) ?? open[0] ?? null;
}

// After an answer what was put off comes last.
const after = (id) => next(id) ?? page.left[0] ?? null;

async function show(id) {
  clock.stop();
  Object.assign(state, { at: id, entry: "", judged: null, near: null, form: null, refused: null, isTimed: false, isUnread: false, typed: {}, figures: [], said: null, shownAt: performance.now() });
  const row = id && page.rows.get(id);
  if (row?.limit) {
    page.own = page.settings[id]?.limit ?? null;
    state.limit = await calc.ask("limits.shown", { limit: row.limit, own: page.own }, { units: page.units });
    state.earlier = page.log.readings(id, page.round?.id);
    state.last = await lastText(row, state.earlier, page);
    await nearby(row, state, page);
  }
  const before = page.answers[id];
  state.isTimed = before?.clock === "run";
  state.isUnread = before?.reading === "not_read";
  const entry = entries.get(id) ?? (row?.limit && before?.entry ? await entryOf(row, before, page) : "");
  if (row?.reads.length) await write(entry || typedOf(before?.figures ?? [], row, page.system));
  else if (entry) await enter(bare(entry));
  mark();
  draw();
  toHeading(place);
  scrollTo({ top: 0, behavior: "instant" });
}

async function enter(text) {
  const row = page.rows.get(state.at);
  state.entry = text.trim() ? `${text.trim()}@${page.system}` : "";
  entries.set(state.at, state.entry);
  noteDraft();
  state.judged = state.refused = null;
  state.isUnread &&= !state.entry;
  if (state.said !== state.entry) state.said = page.answers[state.at]?.entry ?? null; // what was said again holds for that figure alone
  if (state.entry) {
    const entry = state.entry;
    try {
      const judged = await calc.ask("limits.judged", { limit: row.limit, text: entry, own: page.own, earlier: state.earlier }, { units: page.units });
      if (entry === state.entry) state.judged = judged;
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      state.refused = refusalOf(page.words, refusal);
    }
    if (state.judged) await nearby(row, state, page);
  }
  draw();
}

const noteDraft = () => keepDraft(draftName(), { at: state.at, entry: state.entry, typed: state.typed, form: state.form });

// The figures that are typed with an item, by name.
async function write(typed) {
  Object.assign(state, { typed });
  const figures = await judgedFigures(page.rows.get(state.at), typed, page);
  if (state.typed !== typed) return;
  state.figures = figures;
  state.isUnread &&= !figures.length;
  draw();
}

// The record that begins the check, with its first answer.
async function begun() {
  page.round ??= await page.log.add("round", { list, items: page.items });
  return page.round.id;
}

async function answer(says, more = {}) {
  const id = state.at;
  const before = page.answers[id];
  if (before?.answer === says && (before.entry ?? "") === state.entry && (before.reading === "not_read") === state.isUnread && String(before.figures ?? "") === String(recordOf(state.figures))) return show(after(id)); // as it stands
  const round = await begun();
  state.took.push({ item: id, took_s: (performance.now() - state.shownAt) / 1000 });
  await page.log.add("answer", { round, item: id, answer: says, entry: state.entry || null, amount: state.judged?.amount ?? null, ...(says === "not_here" ? {} : heldBy(page.rows.get(id))), ...more }, { replaces: before ? [before.id] : [] });
  entries.delete(id);
  await keepDraft(draftName(), null);
  await look();
  await show(after(id));
}

const act = {
  async print() {
    await limits();
    window.print();
  },
  redraw: () => draw(),
  enter,
  figure(name, text) {
    entries.set(state.at, { ...state.typed, [name]: text });
    const writing = write(entries.get(state.at));
    noteDraft();
    return writing;
  },
  unread() {
    state.isUnread = true;
    draw();
  },
  sayAgain() {
    state.said = state.entry;
    draw();
  },
  read: () => {
    state.isRead = true;
    show(state.at);
  },
  async after(code) {
    state.after = state.after.includes(code) ? state.after.filter((other) => other !== code) : [...state.after, code];
    await gather();
    state.at = page.left[0] ?? null;
    draw();
  },
  good: () => isSettled(state.shownAt) && answer("good"),
  notGood() {
    if (!isSettled(state.shownAt) || isAsked(state)) return;
    const row = page.rows.get(state.at);
    if (page.defects.some(({ item }) => item === row.id)) return answer("not_good"); // it is written already
    act.form({ kind: "defect", seen: "", rank: rankOf(row, page.data), scope: row.scope, rule: "", isWithout: !state.entry && !state.figures.length });
    toHeading(place);
  },
  form(change) {
    state.form = change && { ...state.form, ...change };
    if (!change) keepDraft(draftName(), null);
    else if (state.form.kind === "defect") noteDraft();
    draw();
  },
  async writeDefect() {
    const row = page.rows.get(state.at);
    if (lacking(page.words, state.form).length) return act.form({ isAsked: true });
    if (state.refused || isAsked(state) || state.figures.some(({ refused }) => refused)) return; // said at its field
    state.isUnread = Boolean(row.limit || row.reads.length) && !state.entry && !state.figures.length;
    await page.log.add("defect", defectOf(page, state, row, isUntimed(row)));
    await keepDraft(draftName(), null);
    page.defects = (await page.log.standing()).defects;
    await answer("not_good");
  },
  async notHere() {
    const row = page.rows.get(state.at);
    const name = row.equipment ?? row.id;
    await page.log.set(name, { applies: false, reason: state.form.reason.trim() });
    page.settings = await page.log.settings();
    const others = page.left.filter((id) => id !== row.id && row.equipment && page.rows.get(id).equipment === row.equipment);
    const round = await begun();
    for (const id of others) await page.log.add("answer", { round, item: id, answer: "not_here", entry: null, amount: null });
    await answer("not_here");
  },
  async ownLimit() {
    const row = page.rows.get(state.at);
    try {
      await page.log.set(row.id, { limit: await ownLimitOf(page, state.form, row) });
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      return act.form({ refused: refusalOf(page.words, refusal) });
    }
    page.settings = await page.log.settings();
    await show(state.at);
  },
  clock: () => {
    state.isTimed = false;
    clock.start(page.rows.get(state.at));
  },
  tap: () => clock.tap(),
  later() {
    state.later.add(state.at);
    return show(next(state.at));
  },
  open: show,
  back() {
    const place = state.at === null ? page.items.length : page.items.indexOf(state.at);
    const done = page.items.filter((id) => page.answers[id] && page.rows.has(id));
    return show(done.filter((id) => page.items.indexOf(id) < place).at(-1) ?? done.at(-1) ?? state.at);
  },
  async end() {
    const words = Object.fromEntries(state.took.map(({ item }) => [item, page.data.text[item].title.split(" ").length + page.data.text[item].good.split(" ").length]));
    for (const read of await metersRead(page)) await page.log.add("meters", read);
    const hurried = await calc.ask("rounds.hurried", { answers: state.took, words });
    const record = await page.log.add("ended", { round: page.round.id, took_s: tookS(page.round), hurried: hurried.length });
    state.ended = { ...record, hurried };
    await page.log.board(page.data);
    mark();
    draw();
  },
};

// A phone's clock that was set back, or another phone's that is ahead, gives no time below 0.
const tookS = ({ at_ms }) => Math.max(0, Math.round((Date.now() - at_ms) / 1000));

// What the strip of every other page says of this check, while it is under way.
function mark() {
  const address = `checks/round/#${list}`;
  if (page.round && !state.ended) runs("check", { title: page.words.list[list], said: ["checks/", "words", "list", list], address, began_at: page.round.at_ms });
  else if (running().check?.address === address) runs("check", null);
}

function draw() {
  /** @type {any} */
  const view = { ...page, page, state, act, clock, list, leftOut: leftOutView(page), asksAfter, isUntimed: state.at !== null && isUntimed(page.rows.get(state.at)) };
  render(!state.isRead ? firstView(view) : state.at === null ? doneView(view) : itemView(view), place);
}

addEventListener("hashchange", () => location.reload());
if (page) prints(() => page.items && checkSheet({ ...page, list }));
if (page) await start();
