// The red door of a page on which something runs: one tap to what is done when it moves, steams or strains.
import { html } from "../../vendor/lit-html/lit-html.js";
import { home } from "./site.js";

export const door = (label) => html`<a class="key key-danger door" href=${new URL("danger/", home).href}>${label}</a>`;
