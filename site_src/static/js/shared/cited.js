// A sentence that names its {source}, which keeps its own language.
import { html } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { fill } from "./site.js";

export function cited(sentence, { source, ...facts }) {
  const [before, after] = fill(sentence, facts).split("{source}");
  return html`${termed(before)}<span lang="en">${source}</span>${after}`;
}
