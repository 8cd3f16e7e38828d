// The made-up rig under one's hands: its drawing, its controls, and time that passes while the page is looked at.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { calc } from "../shared/engine.js";
import { notices } from "../shared/notice.js";
import { pathOf } from "../power/of_run.js";
import { drawingView } from "../power/picture.js";
import { sayings } from "../power/said.js";
import { colon, fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";

const [JOINED, AIR] = [1, 2]; // sentences that the drawing says too: there is no room for all of them
const TICK_MS = 100;
const LONGEST_TICK_S = 0.5; // calc takes no longer one
const LONGEST_GAP_S = 2; // a slow phone catches up; after more than this nobody looked, and the rig stood as it was
const LONGEST_AWAY_S = 86_400;

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
    return this.#from((held) => calc.ask("bench.begin", { task, faults }, held));
  }

  // No run any more, once the acts that wait are done.
  leave() {
    return this.#put(() => ({ run: null }));
  }

  // The run that a code of another phone plants.
  beginOf(code) {
    return this.#from((held) => calc.ask("debrief.begin", { code }, held));
  }

  #from(begun) {
    const { parameters, lights } = this.data;
    this.last = { steady: performance.now(), wall: Date.now() };
    return this.#put(() => begun({ parameters, lights, units: this.units }));
  }

  tick() {
    if (!this.run || this.run.ended || document.visibilityState !== "visible") return;
    let passed_s = this.#passed();
    if (passed_s > LONGEST_GAP_S) {
      this.send({ kind: "away", passed_s: Math.min(passed_s, LONGEST_AWAY_S) });
      return;
    }
    for (; passed_s > 0; passed_s -= LONGEST_TICK_S) this.send({ kind: "tick", passed_s: Math.min(passed_s, LONGEST_TICK_S) });
  }

  // Seconds since the last look: by the clock that runs on while a phone sleeps, and never backwards.
  #passed() {
    const now = { steady: performance.now(), wall: Date.now() };
    const passed_ms = Math.max(now.steady - this.last.steady, now.wall - this.last.wall);
    this.last = now;
    return passed_ms / 1000;
  }

  send(event) {
    return this.#put(() => this.run && !this.run.ended && calc.ask("bench.advance", { run: this.run, event }, { units: this.units }));
  }
}

// The rig as it is seen: through its walls, or only what a person at it sees and hears. `telling` says what the last act did; a run
// that is judged only at its end leaves it out.
export function benchView({ bench, words, u, telling, seen = null }) {
  const { run, gauges } = bench;
  const state = pathOf(run, { ...gauges, ...u });
  const { train, shown } = run;
  const { practice } = words;
  const last = run.notes.at(-1);
  return html`
    ${seen ?? drawingView(state, words)}
    <div role="alert">${train.moved ? warning("stop", words.power.move, practice.runaway) : nothing}</div>
    ${shown.is_warm ? warning(shown.is_hot ? "stop" : "caution", words.power.pump, fill(shown.is_hot ? practice.rise_hot : practice.rise_warm, { ...u, ...gauges })) : nothing}
    ${notices(telling && last ? words.note[last.code] : null)}
    ${seen ? nothing : html`<div class="path-said">${sayings(state, words).filter((_, at) => at !== AIR && (telling || at !== JOINED)).map((line) => html`<p>${line}</p>`)}</div>`}`;
}

// What a person may move, as keys for the dock: where the selector stands, the gear, throttle, tank-to-pump and tank fill.
// `look`, where nobody looked yet how tank-to-pump stands: the first touch of its key does.
export function controlsView({ bench, words, look = null }) {
  const { train } = bench.run;
  const { practice } = words;
  const keys = (kind, legend, value, choices) => html`
    <div class="bench-keys" data-of=${kind} role="group" aria-label=${legend}>
      ${choices.map(([to, label]) => html`<button type="button" class="key" aria-pressed=${value === to ? "true" : "false"} @click=${() => bench.send({ kind, to })}>${label}</button>`)}
    </div>`;
  const turnKey = (kind, legend, is, to, act = () => bench.send({ kind, to })) => html`
    <button type="button" class="key bench-turn" @click=${act}><span>${legend}${colon} <b>${is}</b></span></button>`;
  return html`
    ${keys("selector", practice.selector, train.selector, ["road", "centre", "pump"].map((id) => [id, words.power[`at_${id}`]]))}
    ${keys("gear", practice.transmission, train.gear, [["neutral", practice.neutral], ["drive", practice.drive]])}
    ${turnKey("throttle", practice.throttle, practice[train.throttle], train.throttle === "idle" ? "raised" : "idle")}
    ${look ? turnKey("tank", practice.tank, practice.look, null, look) : turnKey("tank", practice.tank, train.tank_open ? practice.open : practice.shut, !train.tank_open)}
    ${turnKey("circulate", practice.fill, train.circulating ? practice.open : practice.shut, !train.circulating)}`;
}
