// Shapes that go with a warning, so that no meaning hangs on colour alone.
import { html, svg } from "../../vendor/lit-html/lit-html.js";

const shapes = {
  stop: svg`<path d="M8.5 1h11L27 8.500v11L19.500 27h-11L1 19.500v-11z"/>`,
  hold: svg`<path fill-rule="evenodd" d="M1 1h26v26H1zM8 7v14h4V7zM16 7v14h4V7z"/>`,
  note: svg`<path fill-rule="evenodd" d="M14 1a13 13 0 1 0 .01 0zM12.300 6h3.400v3.400h-3.400zM12.300 11.500h3.400V22h-3.400z"/>`,
  caution: svg`<path d="M14 2 27 26H1z"/>`,
};

export const shape = (level) => html`<svg viewBox="0 0 28 28" aria-hidden="true">${shapes[level]}</svg>`;

export const warning = (level, word, told) => html`
  <div class="warning warning-${level}">${shape(level)}<p><b>${word}</b> ${told}</p></div>`;
