// The figure of an answer. It is always there, so that a screen reader hears when it changes; while there is none, `stale` says
// why, and null is dashes of a figure's size: the calculator is not there yet.
import { html } from "../../vendor/lit-html/lit-html.js";

const DASHES = "– – –";

export const figureView = ({ text = "", unit = "", stale = undefined }) => html`
  <output class="answer-figure" aria-labelledby="answer-label" ?data-long=${text.length > 3} ?data-stale=${typeof stale === "string"}>${
    stale === null ? html`<b aria-hidden="true">${DASHES}</b>` : stale ?? html`<b>${text}</b> <span>${unit}</span>`}</output>`;
