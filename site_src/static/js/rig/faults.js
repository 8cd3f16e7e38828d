// What is wrong with the chosen rig, in sight on every page that uses its figures, and the way to put it right.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { fieldId, sentenceOf } from "./sentences.js";

const place = new URL("rig/", home);
const page = new URL("index.html", place);

// The address of the field of a fault.
export const fieldAddress = (field) => `${page}#${fieldId(field)}`;

// The faults in sentences; the Rig page's own words are fetched only where there are any.
export async function faultsOf(shelf, rig, { system }) {
  if (!shelf.faults) return null;
  const data = await pageData(place);
  const context = { data, u: unitWords(data.words, system), profile: rig };
  const links = shelf.faults.map((problem) => ({ place: problem.field, sentence: sentenceOf(problem, context) }));
  return { name: rig.name, words: data.words.rig, links };
}

export const faultsView = (faults) => !faults ? nothing : html`
  <section class="notice faults" role="status">
    <p><b>${fill(faults.words.faulty, faults)}</b> ${faults.words.faulty_told}</p>
    ${linksView(faults.links, page)}
  </section>`;

// Each fault in a sentence that leads to its field on the Rig page.
/** @param {URL | ""} [page] */
export const linksView = (links, page = "") => html`
  <ul>${links.map((link) => html`<li><a href=${`${page}#${fieldId(link.place)}`}>${link.sentence}</a></li>`)}</ul>`;
