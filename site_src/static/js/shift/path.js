// "What turns now" under a step: the drawing comes only once somebody opens it, so that the card stays light.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { Missing } from "../shared/site.js";

let drawing = null;

// The drawing, or what is said in its place where it did not arrive: the card goes on without it.
async function drawn({ shift }) {
  try {
    return await import("../power/in_step.js");
  } catch (fault) {
    if (!(fault instanceof TypeError || fault instanceof Missing)) throw fault;
    return { view: () => html`<p>${shift.no_path}</p>` };
  }
}

export const pathView = ({ state, step, words, redraw }) => html`
  <details class="record" @toggle=${async (event) => {
    if (!event.target.open || drawing) return;
    drawing = await drawn(words);
    redraw();
  }}>
    <summary>${words.shift.path}</summary>
    ${drawing ? drawing.view(state, step) : nothing}
  </details>`;
