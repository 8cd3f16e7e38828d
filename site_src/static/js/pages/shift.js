// A shift card, one step to a screen. calc.shift.card decides what is offered; this page shows it, times it and keeps it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { stayAwake } from "../shared/awake.js";
import { engine, Refusal } from "../shared/engine.js";
import { toHeading } from "../shared/focus.js";
import { live, notices } from "../shared/notice.js";
import { Aids, aidsView } from "../shift/aids.js";
import { newRun, noted } from "../shift/diary.js";
import { doneView, haltView, leftView } from "../shift/halt.js";
import { ordersFor } from "../shared/order.js";
import { known, mayFit } from "../shift/known.js";
import { pathView } from "../shift/path.js";
import { stepView } from "../shift/step.js";
import { Presence } from "../shift/presence.js";
import { spoken } from "../shift/spoken.js";
import { unlikeView } from "../shift/unlike.js";
import { chosenRig } from "../rig/chosen.js";
import { fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { clockTime, dayAndTime } from "../shared/times.js";

const TICK_MS = 200;
const place = document.getElementById("card");
const starting = engine();
const data = await pageData();
const { steps, words, sequence } = data;
const draft = `shift:${sequence.id}`;
const madeOf = JSON.stringify(sequence);

const page = { rig: await chosenRig(), notice: null, resumed: false, awake: null, isKept: true, presence: null, isBusy: false };
let state = null;
let run = null;
let call = null;
const aids = new Aids({ words, redraw: () => state && draw() });

const seconds = () => Date.now() / 1000;
const steady = () => performance.now() / 1000; // no clock that can be set counts a pause
const TIMED = new Set(["hold", "tick"]);
const SETTLE_MS = 400; // a second touch that follows at once is no answer to the step it brought
const SETTLING = new Set(["seen", "not_seen", "report", "hold", "back"]);
const RENEWS = new Set(["begin_again", "released"]);
let shownAt = -SETTLE_MS;
const clock = (at_s) => clockTime(at_s * 1000);

// What is known of the rig, as calc.shift.card takes it.
function rigAnswers() {
  const answered = known(data.questions, page.rig);
  if (!page.rig?.pump_rated) return answered;
  try {
    answered.pump_size = call("pump_size.size", { rated: page.rig.pump_rated, units: data.units });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal; // a capacity that is no number is not known
  }
  return answered;
}

// Put an event to the card; what calc refuses leaves the card as it was.
function send(event) {
  if (page.isBusy || event.kind !== "resume" && event.kind !== "tick" && page.presence?.look()) return; // nobody looked until now
  if (SETTLING.has(event.kind) && performance.now() - shownAt < SETTLE_MS) return;
  if (event.kind !== "tick" && event.kind !== "resume") page.isReleasing = false;
  const before = state;
  try {
    const at_s = TIMED.has(event.kind) ? steady() : seconds();
    state = call("shift.advance", { state, event: { ...event, at_s } });
    page.notice = null;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    page.notice = words.shift.refused;
  }
  const isTick = event.kind === "tick" && state.status === before.status;
  page.resumed &&= isTick;
  if (before.offer.hold_left_s > 0 && before.offer.holding && state.offer.hold_left_s === 0) aids.buzz();
  if (!isTick) {
    if (!page.notice && state.status === "running" && state.confirmed.length === 0 && (RENEWS.has(event.kind) || before.confirmed.length > 0 && event.kind === "resume")) {
      run = newRun(data.titles[sequence.id], page.rig);
      page.notice = event.kind === "resume" ? words.shift.left_new : null;
    } else note(event, before);
    const saving = save();
    if (event.kind === "released" && page.isStale) return saving.then(() => location.reload()); // the rig is another than at the stop
    shownAt = performance.now();
  }
  draw();
  if (!isTick) {
    toHeading(place);
    scrollTo(0, 0);
  }
  if (state.offer.holding && state.offer.hold_left_s > 0) setTimeout(() => state.offer.holding && send({ kind: "tick" }), TICK_MS);
}

// One line of the log: what was touched, at which step.
function note(event, before) {
  if (page.notice) return;
  const kind = state.stopped?.reason === "time_up" && event.kind === "tick" ? "time_up" : event.kind;
  const id = kind === "start_over" ? null : event.step ?? before.offer.step ?? before.stopped?.step;
  const told = event.hazard ? data.orders[event.hazard].title : steps[id]?.act ?? "";
  const answer = event.answer && steps[id].answer[event.answer];
  run = noted(run, { event: kind, step: id, told, ...(answer && { answer }) }, state.stopped?.reason ?? state.status);
  if (state.status === "done" && before.status !== "done" && hurried()) run = noted(run, { event: "hurried", step: null, told: hurried() }, state.status);
}

// Which rig a run is for, and what its profile said: with another rig or another profile a run begins at its first step.
const standing = () => JSON.stringify([page.rig?.id ?? null, rigAnswers()]);

function save() {
  const left = { state, madeOf, run, standing: page.isStale ? null : page.standing, at_s: seconds() };
  page.left = JSON.stringify(left);
  return keep(draft, left).then((state) => {
    page.isKept = state !== "unkept";
  });
}

function beginAgain() {
  state = call("shift.start", { sequence, rig: rigAnswers() });
  run = newRun(data.titles[sequence.id], page.rig);
  page.notice = null;
  page.resumed = false;
  save();
  draw();
}

// What a run says whose steps were answered faster than they can be read; null where none was.
function hurried() {
  const quick = call("pace.too_quick", { records: state.confirmed, words: Object.fromEntries(Object.entries(steps).map(([id, { length }]) => [id, length])) });
  return quick.length ? fill(words.shift.hurried, { count: quick.length, of: state.confirmed.length, steps: quick.map((id) => steps[id].act).join(" ") }) : null;
}

// The power path is drawn of some rigs only, once it is known that this is one.
const isDrawn = () => data.path && mayFit(data.path, state.rig);

// Whether what is shown has failed once, so that it is out of service if it fails again.
const isSecondTry = () => state.repeats > 0 && sequence.steps.some(({ id, repeat }) => repeat && id === state.offer.step);

// The release takes two taps, the second after what it means.
function askRelease(isAsked) {
  page.isReleasing = isAsked;
  draw();
  toHeading(place);
}

const DONE = { road: "done_road", freeze: "done_road", check: "done_road", override: "done_tag", moving: "done_road" };

function draw() {
  const last = state.confirmed.at(-1);
  const orders = ordersFor(data.orders, state.rig.drive);
  const finished = last ? fill(words.shift.finished, { time: clock(last.at_s) }) : "";
  const screen = state.offer.can_go_on
    ? leftView({ words, send, left: dayAndTime(state.left_s * 1000) })
    : state.status === "stopped"
    ? haltView({ stopped: state.stopped, steps, words, send, state, orders, data, release: page.isReleasing, ask: askRelease })
    : state.status === "done"
      ? doneView({ words, send, finished, next: data.next, told: hurried() ?? words.shift[DONE[sequence.id] ?? "done_pump"] })
      : stepView({ offer: state.offer, steps, orders, rig: state.rig, isSecond: isSecondTry(), words, send, path: isDrawn() ? pathView({ state, step: state.offer.step, words, redraw: draw }) : nothing });
  render(html`
    ${live(page.resumed && last && !state.offer.can_go_on ? html`<p class="resumed">${fill(words.shift.resumed, { time: dayAndTime(last.at_s * 1000) })}</p>` : nothing)}
    <p class="card-rig">${page.rig ? fill(words.shift.beside, page.rig) : words.shift.beside_none}</p>
    ${notices(page.notice)}
    ${screen}
    ${aidsView(aids)}
    <details class="record">
      <summary>${words.shift.record}</summary>
      <ol>${state.confirmed.map((record) => html`
        <li><time datetime=${new Date(record.at_s * 1000).toISOString()}>${clock(record.at_s)}</time><span>${steps[record.step]?.act}</span></li>`)}</ol>
      <p><a href="../../log/">${words.shift.log}</a>. ${page.awake ? words.shift.awake : words.shift.sleeps}</p>
      ${state.offer.can_begin_again ? html`<button type="button" class="key" @click=${() => send({ kind: "begin_again" })}>${words.shift.begin_again}</button>` : nothing}
    </details>`, place);
  aids.say(spoken({ state, steps, words, orders }));
}

// The card as it was left, if it still fits this version's steps and the rig this phone stands beside.
function resume(left) {
  const isOther = left?.state && (left.madeOf !== madeOf || left.standing !== page.standing || !left.run);
  if (left?.run && left.state?.offer?.is_out) return keepHalt(left, isOther);
  if (!left?.state || left.state.status === "done" || isOther) {
    beginAgain();
    if (isOther && left.state.status !== "done" && left.state.repeats > 0 && mayBeSame(left.standing)) {
      state = { ...state, repeats: left.state.repeats }; // what failed before still counts, whatever the profile says now
      save();
    }
    if (isOther && left.state.status !== "done" && left.state.confirmed?.length > 0) {
      page.notice = left.madeOf === madeOf ? words.shift.other_rig : words.shift.outdated;
    }
    return draw();
  }
  ({ state, run } = left);
  page.left = JSON.stringify(left);
  if (state.confirmed.length === 0 && state.status === "running") return draw();
  takeUp(left.at_s ?? 0);
}

// Out of service outlasts an edited profile, another rig chosen and new steps: a technician's release alone ends it.
function keepHalt(left, isOther) {
  ({ state, run } = left);
  page.left = JSON.stringify(left);
  page.isStale = isOther;
  page.notice = isOther ? words.shift.still_out : null;
  draw();
}

// Whether a run was for the rig that is chosen now, as far as anybody said.
function mayBeSame(before) {
  const [id] = JSON.parse(before ?? "[null]");
  return !id || !page.rig || id === page.rig.id;
}

// In sight again: what may have changed unseen is asked for once more.
function takeUp(left_s) {
  if (!state || state.status === "done" || state.confirmed.length === 0 && state.status === "running") return;
  send({ kind: "resume", left_s });
  page.resumed = state.confirmed.length > 0;
  draw();
}

async function open() {
  const answered = known(data.questions, page.rig);
  page.standing = standing();
  const left = await kept(draft);
  if (mayFit(sequence.fits, answered) || left?.state?.offer?.is_out) return resume(left);
  render(unlikeView({ data, rig: page.rig, answered, take: () => {
    page.rig = null;
    open();
  } }), place);
}

// In sight again: where another tab went on with this card, this one goes on from there.
async function backInSight(left_s) {
  if (page.left && page.isKept) {
    page.isBusy = true;
    const left = await kept(draft);
    page.isBusy = false;
    if (left && JSON.stringify(left) !== page.left) return location.reload();
  }
  takeUp(left_s);
}

call = await starting;
place.replaceChildren();
await open();
page.presence = new Presence(call, { back: backInSight, left: () => state?.confirmed.length && save() });
stayAwake((awake) => {
  page.awake = awake;
  if (state) draw();
});
