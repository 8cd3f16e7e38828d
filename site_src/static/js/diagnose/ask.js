// One look on the screen: is this so?
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { fold } from "../shared/fold.js";
import { colon, fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { redKeys } from "./order.js";
import { sayFirst } from "./start.js";

const ENGINES = ["pumping", "idle", "off", "secured"];

export function askView({ sign, state, data, most, isSaid, said, answer, back, setEngine, danger, redraw }) {
  const { words } = data;
  const { place, radio } = data.signs[sign];
  const silent = radio && !isSaid;
  const [yes, no] = words.answers[sign] ?? [words.diagnose.yes, words.diagnose.no];
  const mind = words.mind[sign] ?? (place === "under" ? words.diagnose.under : null);
  return html`
    <section class="step">
      <div class="step-head">
        <span class="place">${words.where[place]}</span>
        <span class="step-count">${fill(words.diagnose.question, { number: state.asked.length + 1, most })}</span>
      </div>
      <div class="step-body">
        ${place === "ground" && state.engine === "pumping" ? html`<p class="notice">${words.diagnose.second}</p>` : nothing}
        ${silent ? sayFirst({ words, radio }) : nothing}
        <p class="step-ask">${words.diagnose.ask}</p>
        <h2 class="step-act" aria-describedby="beside">${words.sees[sign]}</h2>
        <div id="beside">
          ${words.look[sign] ? html`<p class="step-see"><b>${words.diagnose.look}</b>${words.look[sign]}</p>` : nothing}
          ${mind ? warning("caution", words.diagnose.mind, mind) : nothing}
        </div>
        ${engineChoice({ words, state, setEngine, redraw })}
      </div>
      <div class="answers">
        ${silent
          ? html`<button type="button" class="key key-seen key-across" @click=${said}>${words.diagnose.said}</button>`
          : html`
            <button type="button" class="key" @click=${() => answer("not_seen")}>${no}</button>
            <button type="button" class="key key-seen" @click=${() => answer("seen")}>${yes}</button>`}
        ${state.asked.length ? html`<button type="button" class="key key-low" @click=${back}>${words.diagnose.back}</button>` : nothing}
        <button type="button" class="key key-low ${state.asked.length ? "" : "key-across"}" @click=${() => answer("unknown")}>${words.diagnose.unsure}</button>
        ${redKeys({ data, danger })}
      </div>
    </section>`;
}

// What the engine does now, in sight, and changed where it is wrong.
const engineChoice = ({ words, state, setEngine, redraw }) =>
  fold({ name: "engine", kind: "record engine-now", summary: html`${words.diagnose.engine}${colon} ${words.engine_state[state.engine]}`, redraw }, () =>
    chips({ name: "engine", legend: words.diagnose.change_engine, value: state.engine, change: setEngine,
      choices: ENGINES.map((id) => ({ id, label: words.engine_state[id] })) }));

// Leaving the engine's work takes pressure from the lines: the crews first.
export const leavingView = ({ words, go, stay }) => html`
  <section class="step" role="alert">
    <div class="step-body">${sayFirst({ words, radio: "lower_line" })}</div>
    <div class="answers">
      <button type="button" class="key" @click=${stay}>${words.diagnose.back}</button>
      <button type="button" class="key key-seen" @click=${go}>${words.diagnose.said}</button>
    </div>
  </section>`;
