// What a page says by the way. The region is always there, so that a screen reader hears what comes into it.
import { html } from "../vendor/lit-html/lit-html.js";

export const live = (content) => html`<div role="status">${content}</div>`;

export const notices = (...told) => live(told.filter(Boolean).map((text) => html`<p class="notice">${text}</p>`));
