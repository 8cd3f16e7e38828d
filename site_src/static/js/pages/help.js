// Help: as one types, the questions and pages that are most like it, best first, in place of the list of topics.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { find } from "../help/search.js";
import { fill, home, pageData } from "../shared/site.js";

const MOST = 8; // rows: what is right is nearly always first or second
const form = document.getElementById("search");
const input = document.querySelector("#search input");
const [found, topics, count] = ["found", "topics", "count"].map((id) => document.getElementById(id));
const index = await pageData();
const silent = new Set(index.silent);

const rowView = ({ name, address, of }) => html`
  <li><a class="row" href=${new URL(address, home).href}><span>${name}${of ? html` <small>${of}</small>` : ""}</span></a></li>`;

function show() {
  const text = input.value.trim();
  const rows = text ? find(index, text, silent).slice(0, MOST) : [];
  found.hidden = !rows.length;
  topics.hidden = Boolean(rows.length);
  const { one, nothing } = form.dataset;
  count.textContent = !text ? "" : rows.length ? fill(rows.length === 1 ? one : form.dataset.count, { count: rows.length }) : nothing;
  render(html`<ul>${rows.map(rowView)}</ul>`, found);
}

input.addEventListener("input", show);
form.addEventListener("submit", (event) => {
  event.preventDefault();
  found.querySelector("a")?.focus();
});
show(); // the browser may have put back what was typed
