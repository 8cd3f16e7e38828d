// What a page says by the way. The region is always there, so that a screen reader hears what comes into it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

export const live = (content) => html`<div role="status">${content}</div>`;

export const notices = (...told) => live(told.filter(Boolean).map((text) => html`<p class="notice">${text}</p>`));

// What is said beside the key that was pressed, `at` its name: text, and a key back where there is a way, or one with a label of its own.
export const beside = (notice, at, { put_back = "" } = {}) => live(notice?.at !== at ? nothing : html`
  <p class="notice beside">${notice.text}${notice.undo ? html` <button type="button" class="key" @click=${notice.undo}>${notice.label ?? put_back}</button>` : nothing}</p>`);

// Into sight with what was said, where the key stands at the edge of the screen.
export const toNotice = (place) => place.querySelector(".beside, .offer")?.scrollIntoView({ block: "nearest" });
