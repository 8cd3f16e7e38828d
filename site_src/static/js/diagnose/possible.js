// How many causes are still possible: they shrink with each answer. Their names are folded away, so that no witness is led by them.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";

const MOST = 100; // of a bar: the likeliest has it all

export const possibleView = ({ possible: { left, of, likeliest }, words, redraw }) => html`
  <section class="possible">
    ${fold({ name: "possible", summary: html`${words.diagnose.likely} <b>${fill(words.diagnose.left_of, { left, of })}</b>`, redraw }, () => html`<ul>${likeliest.map(({ id, share }) => html`
      <li><svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true"><rect width=${(MOST * share) / likeliest[0].share} height="12"/></svg>
        <span>${words.name[id]}</span></li>`)}
    </ul>`)}
  </section>`;
