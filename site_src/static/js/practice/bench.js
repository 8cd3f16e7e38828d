// The made-up rig under one's hands: its drawing, its controls, and time that passes while the page is looked at.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { calc } from "../shared/engine.js";
import { notices } from "../shared/notice.js";
import { pathOf } from "../power/of_run.js";
import { drawingView, sayings } from "../power/picture.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";

const TICK_MS = 100;
const LONGEST_TICK_S = 0.5; // calc takes no longer one; a page that slept sleeps on

export class Bench {
  run = null;
  gauges = null;
  #turn = Promise.resolve();

  constructor({ data, units, redraw }) {
    this.data = data;
    this.units = units;
    this.redraw = redraw;
    setInterval(() => this.tick(), TICK_MS);
  }

  // One act after another, each on what the last one left.
  #put(act) {
    this.#turn = this.#turn.then(async () => {
      Object.assign(this, await act());
      this.redraw();
    });
    return this.#turn;
  }

  begin(task, faults) {
    const { parameters, lights } = this.data;
    this.last = performance.now();
    return this.#put(() => calc.ask("bench.begin", { task, faults }, { parameters, lights, units: this.units }));
  }

  tick() {
    if (!this.run || this.run.ended || document.visibilityState !== "visible") return;
    const now = performance.now();
    const passed_s = Math.min((now - this.last) / 1000, LONGEST_TICK_S);
    this.last = now;
    if (passed_s > 0) this.send({ kind: "tick", passed_s });
  }

  send(event) {
    return this.#put(() => this.run && !this.run.ended && calc.ask("bench.advance", { run: this.run, event }, { units: this.units }));
  }
}

// `telling` says what the last act did; a run that is judged only at its end leaves it out.
export function benchView({ bench, words, u, telling }) {
  const { run, gauges } = bench;
  const state = pathOf(run, { ...gauges, ...u });
  const { train, shown } = run;
  const told = words.practice;
  const choice = (kind, legend, value, choices) => chips({
    name: kind, legend, value, change: (id) => bench.send({ kind, to: kind === "circulate" ? id === "open" : id }),
    choices: choices.map(([id, label]) => ({ id, label })),
  });
  const last = run.notes.at(-1);
  return html`
    ${drawingView(state, words)}
    <div role="alert">${train.moved ? warning("stop", words.power.move, told.runaway) : nothing}</div>
    ${shown.is_warm ? warning(shown.is_hot ? "stop" : "caution", words.power.pump, fill(shown.is_hot ? told.rise_hot : told.rise_warm, { ...u, ...gauges })) : nothing}
    <div class="bench">
      ${choice("selector", told.selector, train.selector, ["road", "centre", "pump"].map((id) => [id, words.power[`at_${id}`]]))}
      ${choice("gear", told.transmission, train.gear, [["neutral", told.neutral], ["drive", told.drive]])}
      ${choice("throttle", told.throttle, train.throttle, [["idle", told.idle], ["raised", told.raised]])}
      ${choice("circulate", told.fill, train.circulating ? "open" : "shut", [["shut", told.shut], ["open", told.open]])}
    </div>
    ${notices(telling && last ? words.note[last.code] : null)}
    <ul class="path-said">${sayings(state, words).map((line) => html`<li>${line}</li>`)}</ul>`;
}
