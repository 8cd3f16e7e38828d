// Practice: a task on the made-up rig, judged at its end and kept in the log. Never to be taken for the live card.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList } from "../shared/controls.js";
import { calc } from "../shared/engine.js";
import { Bench, benchView, controlsView } from "../practice/bench.js";
import { Ears, seenView } from "../practice/seen.js";
import { recordOf, verdictView } from "../practice/verdict.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { pageData, unitWords } from "../shared/site.js";
import { keepRecord } from "../shared/store.js";
import { unitsFor } from "../shared/units.js";

const place = document.getElementById("practice");
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const system = chosenSystem(data.systems);
const u = unitWords(words, system);
const page = { task: "to_pump", fault: "none", see: "seen", ears: new Ears(), beganAt: null, isKept: null };
const bench = new Bench({ data, units: unitsFor(data.systems, system, []), redraw: draw });

const planted = () => {
  if (page.fault === "none") return [];
  return [page.fault === "any" ? data.faults[Math.floor(Math.random() * data.faults.length)] : page.fault];
};

function start() {
  page.beganAt = new Date();
  page.isKept = null;
  page.ears = new Ears();
  bench.begin(page.task, planted());
  scrollTo(0, 0);
}

async function end(how) {
  await bench.send({ kind: "end", how });
  scrollTo(0, 0);
  page.isKept = (await keepRecord("log", recordOf({ run: bench.run, beganAt: page.beganAt, endedAt: new Date(), words, rig }))) !== "unkept";
  draw();
}

function again() {
  bench.run = null;
  draw();
}

const choose = (name) => (id) => {
  page[name] = id;
  draw();
};

const setting = () => html`
  <p>${words.practice.intro}</p>
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
    name: "see", legend: words.practice.see, value: page.see, change: choose("see"),
    choices: ["seen", "path"].map((id) => ({ id, label: words.practice[`see_${id}`] })),
  })}
  <p>${words.practice[`see_${page.see}_told`]}</p>
  <div class="dock"><button type="button" class="key key-act" @click=${start}>${words.practice.start}</button></div>`;

const running = () => html`
  <section class="bench">
    ${benchView({ bench, words, u, telling: false, seen: page.see === "seen" ? seenView({ run: bench.run, gauges: bench.gauges, words, u, ears: page.ears }) : null })}
    <div class="dock bench-dock">
      ${controlsView({ bench, words })}
      <button type="button" class="key bench-end" @click=${() => end("finished")}>${words.practice.finished}</button>
      <button type="button" class="key key-danger bench-end" @click=${() => end("stopped")}>${words.practice.stop}</button>
    </div>
    <p class="smallprint">${words.practice[`task_${bench.run.task}_told`]}</p>
  </section>`;

function draw() {
  render(!bench.run ? setting() : bench.run.ended ? verdictView({ run: bench.run, isKept: page.isKept, words, again }) : running(), place);
}

await starting;
place.replaceChildren();
draw();
