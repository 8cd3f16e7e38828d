// Practice: a task on the made-up rig, judged at its end and kept in the log. Never to be taken for the live card.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList } from "../shared/controls.js";
import { calc } from "../shared/engine.js";
import { Bench, benchView, controlsView } from "../practice/bench.js";
import { debriefView, handView } from "../practice/debrief.js";
import { Pair } from "../practice/pair.js";
import { Ears, seenView } from "../practice/seen.js";
import { proofText, recordOf, verdictView } from "../practice/verdict.js";
import { startTerms } from "../help/touched.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { pageData, unitWords } from "../shared/site.js";
import { keepRecord } from "../shared/store.js";
import { unitsFor } from "../shared/units.js";

const UNSURE = "unsure";
const place = document.getElementById("practice");
const terms = startTerms();
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const system = chosenSystem(data.systems);
const u = unitWords(words, system);
const page = { task: "to_pump", fault: "none", see: "seen", who: "alone", signs: "seen", reads: false, hasLooked: false, ears: new Ears(), beganAt: null, isKept: null, names: false, asksProof: false, proof: null };
const units = unitsFor(data.systems, system, []);
const bench = new Bench({ data, units, redraw: draw });
const pair = new Pair({ data, units, redraw: draw });

// Whoever is surprised may find a rig with nothing wrong: then no stop is right.
const drawn = () => (Math.random() < data.sound_share ? null : data.faults[Math.floor(Math.random() * data.faults.length)]);
const planted = () => (page.fault === "any" ? drawn() : page.fault === "none" ? null : page.fault);
const isUnknown = () => Boolean(pair.code) || page.fault === "any"; // nobody at this phone knows what is planted

function start() {
  Object.assign(page, { beganAt: new Date(), isKept: null, hasLooked: false, ears: new Ears(), names: false, asksProof: false, proof: null });
  const fault = planted();
  if (pair.code) bench.beginOf(pair.code);
  else bench.begin(page.task, fault ? [fault] : []);
  scrollTo(0, 0);
}

// The phone that hid a fault runs it too, act by act as the other calls them, and reads out what it shows; nothing of that run is judged.
function readOut(reads) {
  Object.assign(page, { reads, hasLooked: false, ears: new Ears() });
  scrollTo(0, 0);
  return reads ? bench.beginOf(pair.hidden.code) : bench.leave();
}

// What was hidden does not stay chosen on the phone that hid it: the other may look.
function hide() {
  const [fault, isDrawn] = [planted(), page.fault === "any"];
  page.fault = "none";
  scrollTo(0, 0);
  return pair.hide(page.task, fault, isDrawn);
}

async function end(how) {
  await bench.send({ kind: "end", how });
  scrollTo(0, 0);
  page.asksProof = how === "stopped";
  return page.asksProof ? draw() : judge(null);
}

// A stop counts once the proof that contradicts was named.
function name(proof) {
  Object.assign(page, { proof, asksProof: false, names: isUnknown() });
  scrollTo(0, 0);
  return page.names ? draw() : judge(null);
}

const model = () => data.models.find(({ task, fault }) => task === bench.run.task && fault === (bench.run.faults[0] ?? null));

// A fault that was stopped at by another proof than its own was stopped at by luck, here as calc.teaching.debrief has it of two phones.
function verdict() {
  const { verdict } = bench.run;
  if (pair.debrief) return pair.debrief.verdict;
  return verdict.outcome === "found" && page.proof !== UNSURE && !model().proofs.includes(page.proof) ? { ...verdict, outcome: "luck" } : verdict;
}

const proofSaid = ({ proof, proofs }) => (proof === null ? null : proofText({ proof, proofs, words }));

// The run is over and, where nobody here knew the fault, it was named.
async function judge(named) {
  page.names = false;
  if (isUnknown()) await pair.end(bench.run, named, page.proof);
  scrollTo(0, 0);
  page.isKept = (await keepRecord("log", recordOf({ run: { ...bench.run, verdict: verdict() }, beganAt: page.beganAt, endedAt: new Date(), words, rig }))) !== "unkept";
  draw();
}

function again() {
  page.signs = "seen";
  pair.leave();
  bench.leave();
}

// A link that is opened while the page stands.
async function followed() {
  if (!(await pair.take())) return;
  page.reads = false;
  bench.leave();
}

const choose = (name) => (id) => {
  page[name] = id;
  draw();
};

const setting = () => html`
  <p>${words.practice.intro}</p>
  ${pair.refused ? html`<p class="notice" role="alert">${pair.refused}</p>` : nothing}
  ${chips({
    name: "task", legend: words.practice.task, value: page.task, change: choose("task"),
    choices: ["to_pump", "to_road"].map((id) => ({ id, label: words.practice[`task_${id}`] })),
  })}
  <p>${words.practice[`task_${page.task}_told`]}</p>
  ${chipsAndList({
    name: "fault", legend: words.practice.fault, other: words.practice.fault_other, value: page.fault, change: choose("fault"),
    choices: ["none", "any", ...data.faults].map((id) => ({ id, label: words.practice[`fault_${id}`], common: !data.faults.includes(id) })),
  })}
  ${chips({
    name: "who", legend: words.debrief.who, value: page.who, change: choose("who"),
    choices: ["alone", "other"].map((id) => ({ id, label: words.debrief[`who_${id}`] })),
  })}
  ${page.who === "other" ? html`<p>${words.debrief.who_other_told}</p>` : html`
    ${chips({
      name: "see", legend: words.practice.see, value: page.see, change: choose("see"),
      choices: ["seen", "path"].map((id) => ({ id, label: words.practice[`see_${id}`] })),
    })}
    <p>${words.practice[`see_${page.see}_told`]}</p>`}
  <div class="dock">
    ${page.who === "other"
      ? html`<button type="button" class="key key-act" @click=${hide}>${words.debrief.hide}</button>`
      : html`<button type="button" class="key key-act" @click=${start}>${words.practice.start}</button>`}
  </div>`;

const { hidden: hiddenTitle, hidden_told, hidden_drawn, wait } = words.debrief;

const hidden = () => html`
  ${handView({ link: pair.hidden.link, title: hiddenTitle, told: `${hidden_told} ${pair.hidden.isDrawn ? hidden_drawn : ""}`, notice: pair.notice, send: pair.send, words })}
  <p>${wait}</p>
  <p>${words.debrief.read_out_told}</p>
  <div class="dock">
    <button type="button" class="key key-act" @click=${() => readOut(true)}>${words.debrief.read_out}</button>
    <button type="button" class="key" @click=${again}>${words.debrief.other}</button>
  </div>`;

const taken = () => html`
  <h2>${words.debrief.taken}</h2>
  <p><b>${words.practice[`task_${pair.task}`]}.</b> ${words.practice[`task_${pair.task}_told`]}</p>
  ${chips({
    name: "signs", legend: words.practice.see, value: page.signs, change: choose("signs"),
    choices: [["seen", words.practice.see_seen], ["called", words.debrief.see_called]].map(([id, label]) => ({ id, label })),
  })}
  <p>${page.signs === "called" ? words.debrief.see_called_told : words.practice.see_seen_told}</p>
  <div class="dock"><button type="button" class="key key-act" @click=${start}>${words.debrief.find}</button></div>`;

const proving = () => html`
  <h2>${words.proof.ask}</h2>
  <div class="rows">
    ${[...data.proofs, UNSURE].map((id) => html`<button type="button" class="key key-wide" @click=${() => name(id)}>${words.proof[id]}</button>`)}
  </div>`;

const naming = () => html`
  <h2>${words.debrief.call}</h2>
  <p>${words.debrief.call_told}</p>
  <div class="rows">
    ${data.faults.map((id) => html`<button type="button" class="key key-wide" @click=${() => judge(id)}>${words.practice[`fault_${id}`]}</button>`)}
    <button type="button" class="key key-wide" @click=${() => judge("nothing")}>${words.debrief.sound}</button>
    <button type="button" class="key key-wide" @click=${() => judge("unsure")}>${words.debrief.unsure}</button>
  </div>`;

function turn() {
  pair.showsBack = !pair.showsBack;
  scrollTo(0, 0);
  draw();
}

const debriefed = () => html`
  ${pair.showsBack
    ? handView({ link: pair.back, title: words.debrief.back, told: words.debrief.back_told, notice: pair.notice, send: pair.send, words })
    : debriefView({ debrief: pair.debrief, words, isKept: page.isKept, proof: proofSaid(pair.debrief) })}
  <div class="dock">
    ${pair.back ? html`<button type="button" class="key key-act" @click=${turn}>${words.debrief[pair.showsBack ? "back_read" : "back"]}</button>` : nothing}
    <button type="button" class="key" @click=${again}>${words.practice.again}</button>
  </div>`;

// A valve that stands shut from the start is found by looking at it, as at a panel; the drawing shows it.
const isDrawnOut = () => !pair.code && !page.reads && page.see === "path";
const look = () => (isDrawnOut() || page.hasLooked ? null : () => choose("hasLooked")(true));

// What this phone shows of the rig: through its walls, its lamps and gauges, or nothing where the other phone reads them out.
function shown() {
  if (pair.code && page.signs === "called") return html`<p class="plate bench-called">${words.debrief.see_called_told}</p>`;
  return isDrawnOut() ? null : seenView({ run: bench.run, gauges: bench.gauges, words, u, ears: page.ears });
}

const ending = () => html`
  <button type="button" class="key bench-end" @click=${() => end("finished")}>${words.practice.finished}</button>
  <button type="button" class="key key-danger bench-end" @click=${() => end("stopped")}>${words.practice.stop}</button>`;

const running = () => html`
  <section class="bench">
    ${benchView({ bench, words, u, telling: false, seen: shown() })}
    <div class="dock bench-dock">
      ${controlsView({ bench, words, look: look() })}
      ${page.reads ? html`<button type="button" class="key bench-code" @click=${() => readOut(false)}>${words.debrief.to_code}</button>` : ending()}
    </div>
    <p class="smallprint">${words.practice[`task_${bench.run.task}_told`]}</p>
  </section>`;

function view() {
  if (pair.debrief) return debriefed();
  if (page.asksProof) return proving();
  if (page.names) return naming();
  if (bench.run) return bench.run.ended ? verdictView({ run: { ...bench.run, verdict: verdict() }, proof: proofSaid({ proof: page.proof, proofs: model().proofs }), isKept: page.isKept, words, again }) : running();
  return pair.hidden ? hidden() : pair.code ? taken() : setting();
}

function draw() {
  render(view(), place);
}

await starting;
await pair.take();
addEventListener("hashchange", followed);
place.replaceChildren();
draw();
terms.then(draw);
