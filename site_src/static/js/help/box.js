// The search of help, on its list and on each topic: as one types, the questions, pages, terms and faults that are most like it, best first.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { find } from "./search.js";
import { fill, home, pageData } from "../shared/site.js";
import { keepTyped } from "../shared/typed.js";

const MOST = 8; // rows: what is right is nearly always first or second
let index = null; // fetched once something is typed: a topic's page is read without it

const rowView = ({ name, address, of }) => html`
  <li><a class="row" href=${new URL(address, home).href}><span>${name}${of ? html` <small>${of}</small>` : ""}</span></a></li>`;

// The parts of the page that the search is made of.
const parts = () => ({
  form: document.getElementById("search"),
  input: document.querySelector("#search input"),
  found: document.getElementById("found"),
  topics: document.getElementById("topics"),
  count: document.getElementById("count"),
});

async function show() {
  const { form, input, found, topics, count } = parts();
  if (input.value.trim()) index ??= await pageData(new URL("help/", home));
  const text = input.value.trim();
  const rows = text ? find(index, text, new Set(index.silent)).slice(0, MOST) : [];
  found.hidden = !rows.length;
  topics.hidden = Boolean(rows.length);
  const { one, nothing } = form.dataset;
  count.textContent = !text ? "" : rows.length ? fill(rows.length === 1 ? one : form.dataset.count, { count: rows.length }) : nothing;
  render(html`<ul>${rows.map(rowView)}</ul>`, found);
}

export function startSearch() {
  const { form, input, found } = parts();
  keepTyped(input);
  input.addEventListener("input", show);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    await show();
    found.querySelector("a")?.focus();
  });
  return show(); // of what was typed before
}
