// "What turns now" under a step: the drawing comes only once somebody opens it, so that the card stays light.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fold } from "../shared/fold.js";
import { Missing } from "../shared/site.js";

let drawing = null;

// The drawing, or what is said in its place where it did not arrive: the card goes on without it.
async function load({ shift }, redraw) {
  try {
    drawing = await import("../power/in_step.js");
  } catch (fault) {
    if (!(fault instanceof TypeError || fault instanceof Missing)) throw fault;
    drawing = { view: () => html`<p>${shift.no_path}</p>` };
  }
  redraw();
}

export const pathView = ({ sequence, state, words, redraw }) =>
  fold({ name: "path", summary: words.shift.path, redraw: () => (drawing ? redraw() : load(words, redraw)) }, () => drawing?.view(sequence, state) ?? nothing);
