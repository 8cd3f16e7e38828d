// What a touch explains where it stands: a term of the trade, baked (site_src/content/touched.py) or drawn (`termed`), and the question that a page is
// about. Its words are those of its place in help, on a sheet; without that place at hand, or on an old phone, the link is followed.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { home } from "../shared/site.js";

const documents = new Map(); // by address, each that arrived fetched once
const sheet = document.createElement("dialog");
const OPEN = "sheet"; // the entry of the browser's history that an open sheet is: Back closes it, and the page stays
let touched = null; // the link whose sheet is open
let terms = null; // {pattern, names: {form: id}} once they have come

// A page of the site as a document, or null where it did not arrive.
function documentAt(address) {
  if (!documents.has(address)) {
    documents.set(address, new Promise((done) => {
      const asked = new XMLHttpRequest();
      asked.open("GET", address);
      asked.responseType = "document";
      asked.onload = () => done(asked.status === 200 ? asked.response : null);
      asked.onerror = () => {
        documents.delete(address);
        done(null);
      };
      asked.send();
    }));
  }
  return documents.get(address);
}

// What stands at a link's place: its name first, and then what it says.
function sheetView(place, of, href) {
  const [name, ...said] = document.importNode(place, true).children;
  for (const part of said) for (const link of part.querySelectorAll("a")) link.href = new URL(link.getAttribute("href"), href).href;
  return html`
    <b id="sheet-name" tabindex="-1" autofocus>${name.textContent}</b>
    ${said.filter((part) => !part.matches(".key"))}
    <a class="key" href=${href}>${of.querySelector("h1").textContent}</a>
    <button type="button" class="key" @click=${() => sheet.close()}>${of.querySelector("[data-close]").dataset.close}</button>`;
}

async function open(link) {
  const { href } = link;
  const url = new URL(href);
  const of = await documentAt(url.origin + url.pathname);
  const place = of?.getElementById(url.hash.slice(1));
  if (!place) return location.assign(href);
  if (!sheet.isConnected) document.body.append(sheet);
  render(sheetView(place, of, href), sheet);
  touched ??= link;
  if (sheet.open) return;
  await leaving;
  history.pushState(OPEN, "");
  sheet.showModal();
}

let leaving = Promise.resolve(); // the entry of a sheet that was closed by touch

function closed() {
  if (history.state !== OPEN) return; // by Back
  leaving = new Promise((done) => { addEventListener("popstate", () => done(), { once: true }); });
  history.back();
}

// Once Back is through, by touch or by key: an entry with a place in its address takes focus from what has it.
function left() {
  sheet.close();
  const link = touched;
  touched = null;
  setTimeout(() => link?.focus({ preventScroll: true }));
}

// Explain what is touched, from now on. Resolves once `termed` marks sentences: a page that draws them draws anew then, and never waits for it.
export async function startTerms() {
  if (!sheet.showModal) return;
  sheet.className = "term-sheet";
  sheet.setAttribute("aria-labelledby", "sheet-name");
  sheet.addEventListener("close", closed);
  addEventListener("popstate", left);
  document.addEventListener("click", (event) => {
    if (event.target === sheet) return sheet.close(); // beside it
    const link = event.target instanceof Element ? event.target.closest("a") : null;
    const isTerm = link?.matches(".term, [data-here]");
    if (!isTerm && !(link && sheet.contains(link) && !event.ctrlKey && !event.metaKey)) return;
    event.preventDefault();
    if (isTerm) return open(link);
    touched = null;
    location.replace(link.href); // in place of the sheet's entry: Back from there is at the page
  });
  const address = new URL("help/terms/index.html", home).href;
  const rows = [...(await documentAt(address))?.querySelectorAll("[data-forms]") ?? []];
  if (!rows.length) return;
  const names = Object.fromEntries(rows.flatMap(({ id, dataset }) => dataset.forms.split("|").map((form) => [form.toLowerCase(), id])));
  const longest = Object.keys(names).sort((one, other) => other.length - one.length);
  terms = { names, address, pattern: new RegExp(`(^|[^\\p{L}\\p{N}_-])(${longest.join("|")})(?![\\p{L}\\p{N}_-])`, "giu") };
}

// A sentence of a drawn view, the first mention of each term a link to it.
export function termed(text) {
  if (!terms || typeof text !== "string") return text; // a view has marked its own
  const [parts, seen] = [[], new Set()];
  let end = 0;
  for (const hit of text.matchAll(terms.pattern)) {
    const [form, name] = [hit[2], terms.names[hit[2].toLowerCase()]];
    if (seen.has(name)) continue;
    seen.add(name);
    const at = hit.index + hit[1].length;
    parts.push(text.slice(end, at), html`<a class="term" href="${terms.address}#${name}">${form}</a>`);
    end = at + form.length;
  }
  return seen.size ? [...parts, text.slice(end)] : text;
}
