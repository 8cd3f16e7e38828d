// The call of the shift: a made-up call of the chosen rig, one step a screen on drawn gauges, its debrief at the end. Kept as it goes.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { sceneView, slideView } from "../drill/scene.js";
import { answerText, replyText, workingText } from "../drill/sentences.js";
import { questionView } from "../drill/view.js";
import { startTerms } from "../help/touched.js";
import { atHand } from "../rig/at_hand.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { calc, Refusal } from "../shared/engine.js";
import { refusalOf } from "../shared/refusal.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { tagged, unitsOnce } from "../shared/units.js";

const MOST_SEED = 1e6;
const place = document.getElementById("call");
const terms = startTerms();
const starting = calc.start();
const [data, chosen] = await Promise.all([pageData(), chosenRig()]);
const words = { ...data.words, drill: { ...data.words.drill, end: data.words.call.end, next: data.words.call.next } };
const system = chosenSystem(data.systems);
const { family } = data.systems[system];
const u = unitWords(words, system);
const units = unitsOnce(data.systems)(system);
const page = { rig: chosen, ground: null, shift: 0, seed: 0, replies: [], made: null, at: 0, typed: "", refusal: null };
const draft = () => `call:${page.rig?.id ?? ""}`;

async function stand(rig) {
  const own = await atHand(rig ?? data.example, data.shelf, units);
  page.rig = rig;
  page.ground = { shelf: own.shelf, rig: own.rig, beds: own.beds, tips: data.tips.filter((tip) => tip.family === family), lights: data.lights, gauges: data.gauges };
}

const ask = (seed, replies) => calc.ask("call.call", { seed, replies }, { ground: page.ground, units });

// A call with what was answered of it; where the rig changed since, so that an answer fits no step, from its first step.
async function take(seed, replies) {
  let made = null;
  try {
    made = await ask(seed, replies);
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    if (refusal.field === "beds" && page.rig) {
      await stand(null);
      return take(seed, []);
    }
    if (!replies.length) throw refusal;
    return take(seed, []);
  }
  Object.assign(page, { seed, replies: replies.slice(0, made.steps.length), made, at: Math.min(replies.length, made.steps.length), typed: "", refusal: null });
}

async function answer(reply) {
  const replies = [...page.replies, reply];
  try {
    page.made = await ask(page.seed, replies);
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    page.refusal = refusalOf(words, refusal);
    return draw();
  }
  Object.assign(page, { replies, refusal: null });
  keep(draft(), { shift: page.shift, seed: page.seed, replies });
  draw("drill-verdict");
}

function check(event) {
  event.preventDefault();
  answer(tagged(event.target.elements["drill-answer"].value, system));
}

function put(typed) {
  page.typed = typed;
  /** @type {HTMLInputElement} */ (document.getElementById("drill-answer")).value = typed;
  draw();
}

function next() {
  Object.assign(page, { at: page.at + 1, typed: "" });
  draw(page.at < page.made.steps.length ? "drill-asked" : "call-debrief");
}

async function again() {
  await take(Math.floor(Math.random() * MOST_SEED), []);
  keep(draft(), { shift: page.shift, seed: page.seed, replies: [] });
  draw("drill-asked");
}

const leadOf = ({ kind, answer }) => data.leads[kind === "proof" ? `proof_${answer.right}` : kind];

function missedView(question, at) {
  const { habit } = page.made.judged[at];
  const { address, name } = leadOf(question);
  return html`
    <p>${fill(words.call.missed, { answer: answerText(question, words, u), yours: replyText(question, page.replies[at], words, u) })}</p>
    ${habit ? html`<p class="drill-habit">${words.habit[habit]}</p>` : nothing}
    ${question.working.map((row) => html`<p>${workingText(row, words, u)}</p>`)}
    <a class="key key-wide" href=${new URL(address, home).href}><small>${words.call.led}</small> ${name}</a>`;
}

const debriefView = () => html`
  <h2 id="call-debrief" tabindex="-1">${words.call.debrief}</h2>
  <ol class="call-steps">${page.made.steps.map(({ question }, at) => html`
    <li><b>${words.kind[question.kind]}</b>
      ${page.made.judged[at].is_right ? html`<p>${words.call.right}</p>` : missedView(question, at)}</li>`)}</ol>
  <p class="smallprint">${words.call.shift} ${words.drill.not_live}</p>
  <div class="dock"><button type="button" class="key key-act" @click=${again}>${words.call.again}</button></div>`;

function stepView() {
  const { made, at, typed, refusal, rig } = page;
  const step = made.steps[at];
  return questionView({
    question: step.question, place: at, count: made.steps.length, isLast: at + 1 === made.steps.length, judged: made.judged[at], reply: page.replies[at], refusal, words, u,
    about: at === 0 ? `${rig ? fill(words.call.of_rig, rig) : words.call.of_example} ${words.call.shift}` : null,
    scene: sceneView(step, { typed, words, u }), slide: slideView(step, { typed, words, put }), typing: ({ target }) => put(target.value), check, choose: answer, next,
  });
}

function draw(focused) {
  render(page.at < page.made.steps.length ? stepView() : debriefView(), place);
  if (focused) {
    document.getElementById(focused)?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }
}

await starting;
await stand(chosen);
page.shift = await calc.ask("call.shift_seed", { on_ms: Date.now(), offset_min: -new Date().getTimezoneOffset() });
const before = await kept(draft());
const isOn = before?.shift === page.shift;
await take(isOn ? before.seed : page.shift, isOn ? before.replies : []);
place.replaceChildren(); // what stood there while it was made
draw();
terms.then(() => draw());
