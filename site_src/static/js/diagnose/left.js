// What was left of an earlier diagnosis: a finished one stays finished, and one left for long is not gone on with unasked.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";

const LONG_MS = 20 * 60 * 1000; // as long as a shift card's; common practice

const lastAt = (state) => (state.asked.at(-1) ?? { at: state.began_at }).at;

export const isOld = (state, now = Date.now()) => !(now - Date.parse(lastAt(state)) < LONG_MS);

export const leftView = ({ state, words }) => html`
  <section role="alert">
    <h2 class="ask">${fill(words.diagnose.left_title, { time: dayAndTime(lastAt(state)) })}</h2>
    <p>${words.sees[state.complaints[0]]}</p>
    <p>${words.diagnose.left_told}</p>
  </section>`;

export const leftActs = ({ words, goOn, again }) => html`
  <button type="button" class="key key-row key-act" @click=${again}>${words.diagnose.again}</button>
  <button type="button" class="key key-row" @click=${goOn}>${words.diagnose.left_go_on}</button>`;
