// What was left of an earlier diagnosis: a finished one stays finished, and one left for long is not gone on with unasked.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { live } from "../shared/notice.js";
import { dayAndTime, shortTime } from "../shared/times.js";

const LONG_MS = 20 * 60 * 1000; // as long as a shift card's; common practice

const lastAt = (state) => (state.asked.at(-1) ?? { at: state.began_at }).at;

export const isOld = (state, now = Date.now()) => !(now - Date.parse(lastAt(state)) < LONG_MS);

export const leftView = ({ state, words }) => html`
  <section role="alert">
    <h2 class="ask">${fill(words.diagnose.left_title, { time: dayAndTime(lastAt(state)) })}</h2>
    <p>${words.sees[state.complaints[0]]}</p>
    <p>${words.diagnose.left_told}</p>
  </section>`;

// Gone on with unasked: that it was, and the way to begin anew where no other key on the screen has it.
export const resumedView = ({ state, words, again }) => live(html`
  <p class="notice"><span>${fill(words.diagnose.resumed, { time: shortTime(lastAt(state)) })}</span>
    ${again ? html`<button type="button" class="key" @click=${again}>${words.diagnose.again}</button>` : nothing}</p>`);

export const leftActs = ({ words, goOn, again }) => html`
  <button type="button" class="key key-row key-act" @click=${again}>${words.diagnose.again}</button>
  <button type="button" class="key key-row" @click=${goOn}>${words.diagnose.left_go_on}</button>`;
