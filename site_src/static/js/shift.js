// A shift card, one step to a screen. calc.shift decides what is offered; this page shows it, times it and keeps it.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { stayAwake } from "./awake.js";
import { engine, Refusal } from "./engine.js";
import { doneView, haltView } from "./shift/halt.js";
import { pathView } from "./shift/path.js";
import { stepView } from "./shift/step.js";
import { chosenRig } from "./rig/chosen.js";
import { fill, pageData } from "./site.js";
import { keep, kept } from "./store.js";

const TICK_MS = 200;
const place = document.getElementById("card");
const starting = engine();
starting.catch(() => {}); // told below
const data = await pageData();
const { steps, words, sequence } = data;
const draft = `shift:${sequence.id}`;
const madeOf = JSON.stringify(sequence);

const rig = await chosenRig();
const known = Object.fromEntries(Object.keys(sequence.rig).filter((question) => rig?.[question]).map((question) => [question, rig[question]]));
const unlike = otherDrive(rig);

const page = { notice: null, resumed: false, awake: null, isKept: true };
let state = null;
let call = null;

// What of the rig's drive this card is not for, in words; null where nothing is known against it.
function otherDrive(profile) {
  const fits = { drive: "midship", shift_control: "air", transmission: "automatic" };
  const others = Object.keys(fits).filter((name) => profile?.[name] && profile[name] !== fits[name]);
  return others.length ? others.map((name) => `${words.field[name]}: ${words.option[profile[name]]}`).join(", ") : null;
}

const seconds = () => Date.now() / 1000;
const steady = () => performance.now() / 1000; // no clock that can be set counts a pause
const TIMED = new Set(["hold", "tick"]);
const SETTLE_MS = 400; // a second touch that follows at once is no answer to the step it brought
const SETTLING = new Set(["seen", "not_seen", "hold", "back"]);
let shownAt = -SETTLE_MS;
const clock = (at_s) => new Date(at_s * 1000).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", second: "2-digit" });

// Put an event to the card; what calc refuses leaves the card as it was.
function send(event) {
  if (SETTLING.has(event.kind) && performance.now() - shownAt < SETTLE_MS) return;
  try {
    const at_s = TIMED.has(event.kind) ? steady() : seconds();
    state = call("shift.advance", { state, event: { ...event, at_s } });
    page.notice = null;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    page.notice = words.shift.refused;
  }
  page.resumed &&= event.kind === "tick";
  if (event.kind !== "tick") {
    save();
    shownAt = performance.now();
  }
  draw();
  if (event.kind !== "tick") scrollTo(0, 0);
  if (state.offer.holding && state.offer.hold_left_s > 0) setTimeout(() => state.offer.holding && send({ kind: "tick" }), TICK_MS);
}

function save() {
  keep(draft, { state, madeOf }).then((isKept) => {
    if (isKept !== page.isKept) {
      page.isKept = isKept;
      draw();
    }
  });
}

function beginAgain() {
  state = call("shift.start", { sequence, rig: known });
  page.notice = null;
  page.resumed = false;
  save();
  draw();
}

function draw() {
  const last = state.confirmed.at(-1);
  const finished = last ? fill(words.shift.finished, { time: clock(last.at_s) }) : "";
  const done = state.status === "done";
  const screen = state.status === "stopped"
    ? haltView({ stopped: state.stopped, steps, words, send, state })
    : done
      ? doneView({ words, send, finished, told: sequence.id === "road" ? words.shift.done_road : words.shift.done_pump })
      : stepView({ offer: state.offer, steps, words, send, path: data.has_path ? pathView({ state, step: state.offer.step, words, redraw: draw }) : nothing });
  render(html`
    ${page.resumed && last ? html`<p class="notice" role="status">${fill(words.shift.resumed, { time: clock(last.at_s) })}</p>` : nothing}
    ${page.notice ? html`<p class="notice" role="status">${page.notice}</p>` : nothing}
    ${screen}
    ${page.isKept ? nothing : html`<p class="notice">${words.shift.unkept}</p>`}
    <details class="record">
      <summary>${words.shift.record}</summary>
      <ol>${state.confirmed.map((record) => html`
        <li><time datetime=${new Date(record.at_s * 1000).toISOString()}>${clock(record.at_s)}</time><span>${steps[record.step].act}</span></li>`)}</ol>
      <p>${page.awake ? words.shift.awake : words.shift.sleeps}</p>
      <button type="button" class="key" @click=${beginAgain}>${words.shift.begin_again}</button>
    </details>`, place);
}

// The card as it was left, if it still fits this version's steps.
function resume(left) {
  if (!left?.state || left.state.status === "done") return beginAgain();
  if (left.madeOf !== madeOf) {
    beginAgain();
    page.notice = words.shift.outdated;
    return draw();
  }
  state = left.state;
  if (state.confirmed.length === 0 && state.status === "running") return draw();
  send({ kind: "resume" });
  page.resumed = true;
  draw();
}

try {
  const [started, left] = await Promise.all([starting, kept(draft)]);
  call = started;
  place.replaceChildren();
  if (unlike) render(html`<p class="notice" role="alert">${fill(words.drive_note.other, { name: rig.name, what: unlike })}</p>`, place);
  else resume(left);
  stayAwake((awake) => {
    page.awake = awake;
    if (state) draw();
  });
} catch (problem) {
  if (call) throw problem;
  render(html`<p class="notice" role="alert">${words.engine.failed}</p>`, place);
}
