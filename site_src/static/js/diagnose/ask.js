// One look on the screen: a question and the nouns that answer it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { route } from "../line/route.js";
import { chips } from "../shared/chips.js";
import { fold } from "../shared/fold.js";
import { colon, fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { redKeys } from "./order.js";
import { possibleView } from "./possible.js";
import { askedOf, sayFirst, soFar, stationOf } from "./said.js";

const ENGINES = ["pumping", "idle", "off", "secured"];
const MOST = 8; // calc.diagnosis.fault.MOST_QUESTIONS

const isSilent = ({ sign, data, isSaid }) => data.signs[sign].radio && !isSaid;

export function askView({ look, possible, state, data, isSaid, setEngine, again, back, redraw }) {
  const { words } = data;
  const { sign, question } = look;
  const { place, radio } = data.signs[sign];
  const how = words.look[question] ?? words.look[sign];
  const mind = words.mind[sign] ?? (place === "under" ? words.diagnose.under : null);
  return html`
    <section class="look">
      ${passed({ state, words, back })}
      ${place === "ground" && state.engine === "pumping" ? html`<p class="notice">${words.diagnose.second}</p>` : nothing}
      ${look.again ? html`<p class="notice">${words.diagnose.conflicts}</p>` : nothing}
      ${isSilent({ sign, data, isSaid }) ? sayFirst({ words, radio }) : nothing}
      <h2 class="ask" aria-describedby="beside">${askedOf(look, words)}</h2>
      <div id="beside">
        ${how ? html`<p class="how">${how}</p>` : nothing}
        ${mind ? warning("caution", words.diagnose.mind, mind) : nothing}
      </div>
      ${possibleView({ possible, words, redraw })}
      <div class="look-more">
        ${engineChoice({ words, state, setEngine, redraw })}
        ${soFar({ state, words, again, redraw })}
      </div>
    </section>`;
}

// The looks as stations; the key and the line itself lead back to the one before.
function passed({ state, words, back }) {
  const number = state.asked.length + 1;
  const stations = [{ state: "proven" }, ...state.asked.map((entry) => ({ state: stationOf(entry) })), { state: "here" },
    ...Array.from({ length: Math.max(MOST - number, 0) }, () => ({ state: "todo" })), { state: "end" }];
  const line = route({ stations, name: fill(words.diagnose.question, { number, most: MOST }) });
  return html`<div class="passed">${state.asked.length ? html`
    <button type="button" class="key" @click=${back} aria-label=${words.diagnose.back}>‹</button>
    <div @click=${back}>${line}</div>` : html`<div>${line}</div>`}</div>`;
}

// What may be answered: [id, noun] of each.
const nouns = ({ sign, question, answers }, words) => (question
  ? answers.map((id) => [id, words.said[question][id]])
  : [["seen", words.asks[sign][1]], ["not_seen", words.asks[sign][2]]]);

export function askActs({ look, data, isSaid, said, answer, danger }) {
  const { words } = data;
  const keys = isSilent({ sign: look.sign, data, isSaid })
    ? html`<button type="button" class="key key-act key-row" @click=${said}>${words.diagnose.said}</button>`
    : nouns(look, words).map(([id, noun]) => html`
      <button type="button" class="key key-noun key-half" @click=${() => answer(id)}>${noun}</button>`);
  return html`${keys}
    <button type="button" class="key key-unsure ${keys.length === 3 ? "key-half" : "key-row"}" @click=${() => answer("unknown")}>${words.diagnose.unsure}</button>
    ${redKeys({ data, danger })}`;
}

// What the engine does now, in sight, and changed where it is wrong.
const engineChoice = ({ words, state, setEngine, redraw }) =>
  fold({ name: "engine", kind: "record", summary: html`${words.diagnose.engine}${colon} ${words.engine_state[state.engine]}`, redraw }, () =>
    chips({ name: "engine", legend: words.diagnose.change_engine, value: state.engine, change: setEngine,
      choices: ENGINES.map((id) => ({ id, label: words.engine_state[id] })) }));

// Leaving the engine's work takes pressure from the lines, or all of their water: the crews first.
export const leavingView = ({ words, engine }) => html`<section role="alert">${sayFirst({ words, radio: engine === "idle" ? "lower_line" : "cutting" })}</section>`;

export const leavingActs = ({ words, go, stay }) => html`
  <button type="button" class="key key-half" @click=${stay}>${words.diagnose.back}</button>
  <button type="button" class="key key-half key-act" @click=${go}>${words.diagnose.said}</button>`;
