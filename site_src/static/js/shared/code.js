// A link as a square code, for the camera of another phone to open.
import { generate } from "../../vendor/lean-qr/index.mjs";
import { toSvgPath } from "../../vendor/lean-qr/svg.mjs";
import { html } from "../../vendor/lit-html/lit-html.js";

const MOST_BYTES = 2900; // the largest square code holds 2,953

export const fitsCode = (link) => link.length <= MOST_BYTES;

export function codeView(link, label) {
  const code = generate(link);
  const side = code.size + 8;
  return html`
    <svg class="code" viewBox="-4 -4 ${side} ${side}" role="img" aria-label=${label} shape-rendering="crispEdges">
      <rect x="-4" y="-4" width=${side} height=${side} fill="#fff" stroke="#5c6873" stroke-width="0.25"/><path d=${toSvgPath(code)} fill="#000"/>
    </svg>`;
}
