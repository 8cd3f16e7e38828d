// "What turns now" under a step: the drawing comes only once somebody opens it, so that the card stays light.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

let drawing = null;

export const pathView = ({ state, step, words, redraw }) => html`
  <details class="record" @toggle=${async (event) => {
    if (!event.target.open || drawing) return;
    drawing = await import("../power/in_step.js");
    redraw();
  }}>
    <summary>${words.shift.path}</summary>
    ${drawing ? drawing.view(state, step) : nothing}
  </details>`;
