// A shift card, one step to a screen. calc.shift decides what is offered, shift/card.js has it in hand; this page shows it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chosenRig } from "../rig/chosen.js";
import { stayAwake } from "../shared/awake.js";
import { calc } from "../shared/engine.js";
import { startTerms } from "../help/touched.js";
import { placeView } from "../log/place.js";
import { toHeading } from "../shared/focus.js";
import { fold } from "../shared/fold.js";
import { live, notices } from "../shared/notice.js";
import { ordersFor } from "../shared/order.js";
import { showStatus, stopsPump } from "../shared/rig_status.js";
import { running, runs } from "../shared/running.js";
import { fill, home, pageData } from "../shared/site.js";
import { clockTime, dayAndTime } from "../shared/times.js";
import { Aids, aidsView } from "../shift/aids.js";
import { bedsOf } from "../shift/beds.js";
import { Card } from "../shift/card.js";
import { fit } from "../shift/fit.js";
import { doneView, haltView, leftView } from "../shift/halt.js";
import { outElsewhere, pass } from "../shift/out.js";
import { outView } from "../shift/out_view.js";
import { largeView, powerView } from "../shift/power.js";
import { spoken } from "../shift/spoken.js";
import { stepView, whyBelow } from "../shift/step.js";
import { unlikeView } from "../shift/unlike.js";
import { passed } from "../shift/pump_out.js";

const DONE = { road: "done_road", freeze: "done_road", check: "done_road", override: "done_tag", moving: "done_road" };
const place = document.getElementById("card");
const where = document.getElementById("place");
const help = /** @type {HTMLAnchorElement} */ (document.querySelector("[data-help]"));
const ofCard = help.href;
const terms = startTerms();
const starting = calc.start();
const data = await pageData();
const { steps, words } = data;
const page = { awake: null, asking: null, out: null, beds: null };
const rig = await chosenRig();
const card = new Card({ data, rig, shown, over: () => aids.buzz() });
const aids = new Aids({ words, redraw: () => card.state && draw() });
const send = (event) => card.send(event);
const clock = (at_s) => clockTime(at_s * 1000);

function shown(event) {
  if (event && event.kind !== "resume") page.asking = null;
  draw();
  if (!event) return;
  toHeading(place);
  scrollTo({ top: 0, behavior: "instant" });
}

// A way back from out of service takes two taps, the second after what it means.
function ask(which) {
  page.asking = which;
  draw();
  toHeading(place);
}

// Another card stopped for a rig that moved: this one waits for a second touch, wherever it stands, unless it is stopped itself.
const isHeld = () => page.out && card.state?.status !== "stopped";
const held = () => outView({
  out: page.out, words, order: ordersFor(data.orders, rig?.drive).moved, isAsking: page.asking === "out", ask: (isAsked) => ask(isAsked ? "out" : null),
  go: async () => {
    await pass(page.out);
    Object.assign(page, { out: null, asking: null });
    draw();
    toHeading(place);
  },
});

// What the strip of every other page says of this card, while it is under way.
function mark({ state, sequence, log }) {
  const address = `shift/${sequence.id}/`;
  const isOpen = state.status !== "done" && (state.confirmed.length > 0 || state.status === "stopped");
  const began = Date.parse(log.began_at ?? "");
  if (isOpen) runs("card", { title: data.titles[sequence.id], said: [address, "titles", sequence.id], address, began_at: Number.isNaN(began) ? Date.now() : began });
  else if (running().card?.address === address) runs("card", null);
}

function draw() {
  const step = !isHeld() && card.state?.status === "running" && !card.state.offer.can_go_on ? steps[card.state.offer.step] : null;
  where.hidden = !step;
  where.textContent = step ? words.place[step.place] : "";
  help.href = step?.about ? new URL(`help/${step.about.replace(".", "/index.html#")}`, home).href : ofCard;
  if (card.state) mark(card);
  document.body.toggleAttribute("data-gate", card.state?.stopped?.reason === "danger"); // its order says it
  showStatus();
  if (isHeld()) return render(held(), place);
  render(card.state ? cardView(card) : unlikeView({ data, rig: card.rig, answered: card.answers, take: () => {
    card.rig = null;
    card.open();
  } }), place);
  fit(place.querySelector(".step"));
}

function cardView({ state, sequence, rig, notice, isResumed, hurried }) {
  const last = state.confirmed.at(-1);
  const orders = ordersFor(data.orders, state.rig.drive);
  aids.say(spoken({ state, steps, words, orders }));
  return html`
    ${live(isResumed && last && !state.offer.can_go_on ? html`<p class="resumed">${fill(words.shift.resumed, { time: dayAndTime(last.at_s * 1000) })}</p>` : nothing)}
    ${notices(notice)}
    ${screen({ state, sequence, orders, last, hurried })}
    <div class="card-more">
      ${state.status === "done" ? nothing : placeOf()}
      <p class="card-rig">${rig ? fill(words.shift.beside, rig) : words.shift.beside_none}</p>
      ${aidsView(aids)}
      ${largeView({ path: data.path, state, rig: card.answers, words })}
      ${fold({ name: "record", summary: words.shift.record, redraw: draw }, () => html`
        <ol>${state.confirmed.map((record) => html`
          <li><time datetime=${new Date(record.at_s * 1000).toISOString()}>${clock(record.at_s)}</time><span>${steps[record.step]?.act}</span></li>`)}</ol>
        <p><a href="../../log/">${words.shift.log}</a>. ${page.awake ? words.shift.awake : words.shift.sleeps}</p>
        ${state.offer.can_begin_again ? html`<button type="button" class="key" @click=${() => send({ kind: "begin_again" })}>${words.shift.begin_again}</button>` : nothing}`)}
    </div>`;
}

const placeOf = () => placeView({ run: card.log, words: words.run_place, change: (said) => card.place(said) });

function screen({ state, sequence, orders, last, hurried }) {
  const { offer, status } = state;
  if (offer.can_go_on) return leftView({ words, send, left: dayAndTime(state.left_s * 1000) });
  if (status === "stopped") return haltView({ sequence, state, steps, words, send, orders, data, tag: card.tag, rig: card.log.rig, chosen: card.rig, own: () => card.own(), asking: page.asking, ask });
  if (status === "done") {
    return doneView({ words, send, sequence, data, next: data.next, finished: last ? fill(words.shift.finished, { time: clock(last.at_s) }) : "",
      told: hurried?.told ?? words.shift[DONE[sequence.id] ?? "done_pump"], again: hurried?.steps ?? [], place: placeOf() });
  }
  // what has failed once is out of service if it fails again
  const isSecond = state.repeats > 0 && sequence.steps.some(({ id, repeat }) => repeat && id === offer.step);
  return html`
    ${stepView({ state, sequence, steps, orders, isSecond, words, send, beds: page.beds, power: powerView({ path: data.path, state, sequence, rig: card.answers, words }) })}
    ${whyBelow(steps[offer.step], words)}`;
}

await starting;
place.replaceChildren();
if (data.into_pump && stopsPump(card.rig) && !(await card.isOut())) await passed({ rig: card.rig, words, place });
else page.out = await outElsewhere({ titles: data.titles, own: data.sequence.id, rig });
await card.open();
terms.then(() => card.state && draw());
bedsOf(rig, steps).then((beds) => {
  page.beds = beds;
  if (beds && card.state) draw();
});
stayAwake((awake) => {
  page.awake = awake;
  if (card.state) draw();
});
addEventListener("resize", () => fit(place.querySelector(".step")));
