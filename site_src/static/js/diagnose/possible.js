// How many causes are still possible, and the likeliest of them: they shrink with each answer.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

const MOST = 100; // of a bar: the likeliest has it all

export const possibleView = ({ possible: { left, of, likeliest }, words }) => html`
  <section class="possible">
    <h3>${words.diagnose.likely} <span>${fill(words.diagnose.left_of, { left, of })}</span></h3>
    <ul>${likeliest.map(({ id, share }) => html`
      <li><svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true"><rect width=${(MOST * share) / likeliest[0].share} height="12"/></svg>
        <span>${words.name[id]}</span></li>`)}
    </ul>
  </section>`;
