// The figure of an answer. It is always there, so that a screen reader hears when it changes; `stale` is said while there is none.
import { html } from "../vendor/lit-html/lit-html.js";

export const figureView = ({ text = "", unit, stale }) => html`
  <output class="answer-figure" aria-labelledby="answer-label" ?data-long=${text.length > 3} ?data-stale=${stale !== undefined}>${stale ?? html`<b>${text}</b> <span>${unit}</span>`}</output>`;
