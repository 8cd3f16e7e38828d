// A part of a page that is drawn only while it is unfolded. `name` tells the page's parts apart; `redraw` draws the page.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

const open = new Map(); // by name: whether a person unfolded it or folded it; others are as they begin

export const isUnfolded = (name, begins = false) => open.get(name) ?? begins;

export const unfold = (name, isOpen = true) => open.set(name, isOpen); // to be seen where the page is drawn next

// Of parts that begin with a name all are folded, but for one.
export function foldAll(start, but = null) {
  for (const name of open.keys()) if (name.startsWith(start) && name !== but) open.set(name, false);
}

// `alone`: the start of the names of which one is open at a time, where a person opens it.
export function fold({ name, summary, kind = "record", begins = false, alone = null, redraw }, content) {
  const isOpen = isUnfolded(name, begins);
  return html`
    <details class=${kind} data-part=${name} ?open=${isOpen} @toggle=${({ target }) => {
      if (target.open === isOpen) return;
      open.set(name, target.open);
      redraw();
    }}>
      <summary @click=${alone && !isOpen ? () => foldAll(alone, name) : nothing}>${summary}</summary>
      ${isOpen ? content() : nothing}
    </details>`;
}
