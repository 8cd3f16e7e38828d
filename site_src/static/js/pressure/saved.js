// Layouts saved by name on this phone: to open, to rename, to delete.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { beside } from "../shared/notice.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { mark } from "../shared/mark.js";
import { changeRecord, kept } from "../shared/store.js";
import { day } from "../shared/times.js";
import { linesOf } from "./layout.js";

const STORE = "layouts";
const newest = (one, other) => other.saved_ms - one.saved_ms;

export class Saved {
  rows = [];
  renaming = null;
  notice = null;

  // open(layout) puts a saved layout on the page.
  constructor({ words, longest, redraw, open }) {
    this.words = words;
    this.longest = longest;
    this.redraw = redraw;
    this.open = open;
  }

  async load() {
    this.rows = ((await kept(STORE)) ?? []).map(({ lay, ...row }) => ({ layout: lay, ...row })); // `lay` as an older version named it
    this.redraw();
  }

  say(at, text) {
    this.notice = { at, text };
    this.redraw();
  }

  // Change the rows as they are kept now, whichever tab changed them last; `told` is said beside key `at`, with a way back.
  async change(change, { at, text, canUndo = true }) {
    let before = [];
    try {
      this.rows = await changeRecord("drafts", STORE, (rows = []) => change(before = rows));
      this.notice = { at, text, undo: canUndo && (() => this.change(() => before, { at, text: null, canUndo: false })) };
      if (text === null) this.notice = null;
    } catch (refusal) {
      if (!(refusal instanceof DOMException)) throw refusal;
      this.notice = { at, text: this.words.saved.unkept };
    }
    this.renaming = null;
    this.redraw();
  }

  // Under a name that is there already the new layout takes the place of the old.
  save(typed, layout) {
    const name = typed.trim().slice(0, this.longest);
    if (!name) return this.say("save", this.words.saved.unnamed);
    const row = { id: mark(), name, layout, saved_ms: Date.now() };
    const isThere = this.rows.some((each) => each.name === name);
    return this.change((rows) => [...rows.filter((each) => each.name !== name), row], {
      at: "save", text: fill(this.words.saved[isThere ? "replaced" : "saved"], { name }), canUndo: isThere });
  }

  rename(row, typed) {
    const name = typed.trim().slice(0, this.longest) || row.name;
    return this.change((rows) => rows.map((each) => (each.id === row.id ? { ...each, name } : each)), {
      at: row.id, text: fill(this.words.saved.renamed, { name }) });
  }

  remove({ id, name }) {
    return this.change((rows) => rows.filter((each) => each.id !== id), { at: "list", text: fill(this.words.saved.deleted, { name }) });
  }
}

const typedIn = (id) => /** @type {HTMLInputElement} */ (document.getElementById(id)).value;

export function savedView({ saved, layout, words }) {
  const redraw = () => {
    saved.redraw();
    saved.load(); // other tabs save too
  };
  return fold({ name: "saved", summary: words.saved.title, kind: "section", redraw }, () => html`
      ${nameView({ id: "saved-name", value: "", key: words.saved.save, longest: saved.longest, keep: (name) => saved.save(name, layout) }, words)}
      ${beside(saved.notice, "save", words.pressure)}
      <ul class="saved">${[...saved.rows].sort(newest).map((row) => html`
        <li>
          <p><b>${row.name}</b> <small>${fill(words.saved[linesOf(row.layout).length === 1 ? "row_one" : "row"], { count: linesOf(row.layout).length, date: day(row.saved_ms) })}</small></p>
          ${saved.renaming === row.id ? nameView({ id: `rename-${row.id}`, value: row.name, key: words.saved.keep_name, longest: saved.longest, keep: (name) => saved.rename(row, name) }, words) : html`
            <div class="pairs">
              <button type="button" class="key" aria-label=${fill(words.saved.open_it, row)} @click=${() => saved.open(row.layout)}>${words.saved.open}</button>
              <button type="button" class="key" aria-label=${fill(words.saved.rename_it, row)} @click=${() => { saved.renaming = row.id; saved.redraw(); }}>${words.saved.rename}</button>
              <button type="button" class="key" aria-label=${fill(words.saved.delete_it, row)} @click=${() => saved.remove(row)}>${words.saved.delete}</button>
            </div>`}
          ${beside(saved.notice, row.id, words.pressure)}
        </li>`)}
      </ul>
      ${beside(saved.notice, "list", words.pressure)}
      ${saved.rows.length ? nothing : html`<p>${words.saved.none}</p>`}`);
}

// A name to type, and the key that keeps it.
const nameView = ({ id, value, key, longest, keep }, words) => html`
  <div class="field">
    <label for=${id}>${words.saved.name}</label>
    <input id=${id} class="named" type="text" maxlength=${longest} autocomplete="off" .value=${value}>
    <button type="button" class="key key-wide" @click=${() => keep(typedIn(id))}>${key}</button>
  </div>`;
