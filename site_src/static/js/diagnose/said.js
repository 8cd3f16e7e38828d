// What was said so far: what it began with, then each answer, as a line of stations.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { routeList } from "../line/route.js";
import { fold } from "../shared/fold.js";

// What a look asks, and the noun that answered it.
export const askedOf = ({ sign, question }, words) => (question ? words.question[question] : words.asks[sign][0]);
export const nounOf = ({ sign, question, answer, said }, words) =>
  (said === "unknown" ? words.diagnose.unsure : question ? words.said[question][answer] : words.asks[sign][said === "seen" ? 1 : 2]);

export const stationOf = ({ said }) => (said === "unknown" ? "skipped" : "proven");

export const saidList = ({ state, words }) => routeList([
  ...state.complaints.map((sign) => ({ state: "proven", content: html`<p><b>${words.diagnose.complaint}</b> <span>${words.sees[sign]}</span></p>` })),
  ...state.asked.map((entry) => ({ state: stationOf(entry), content: html`<p>${askedOf(entry, words)} <b>${nounOf(entry, words)}</b></p>` })),
]);

export const soFar = ({ state, words, again = null, redraw }) =>
  fold({ name: `so_far ${state.id}`, summary: words.diagnose.so_far, redraw }, () => html`
    ${saidList({ state, words })}
    ${again ? html`<button type="button" class="key" @click=${again}>${words.diagnose.again}</button>` : nothing}`);

// The words for the radio, before anything that changes a line's pressure.
export const sayFirst = ({ words, radio }) => (radio
  ? html`<div class="say"><b>${words.diagnose.say_first}</b><p>${words.say[radio]}</p><span>${words.diagnose.say_wait}</span></div>`
  : nothing);
