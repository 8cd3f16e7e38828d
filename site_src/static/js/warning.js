// Shapes that go with a warning, so that no meaning hangs on colour alone.
import { html, svg } from "../vendor/lit-html/lit-html.js";

const shapes = {
  stop: svg`<path d="M8.5 1h11L27 8.500v11L19.500 27h-11L1 19.500v-11z"/>`,
  caution: svg`<path d="M14 2 27 26H1z"/>`,
};

export const shape = (level) => html`<svg viewBox="0 0 28 28" aria-hidden="true">${shapes[level]}</svg>`;

export const warning = (level, word, told) => html`
  <div class="warning warning-${level}">${shape(level)}<p><b>${word}</b>${told}</p></div>`;
