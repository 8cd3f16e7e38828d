// What a gear display shows: the gear that was asked for and the gear that is reached, as on the keypad.
import { html } from "../../vendor/lit-html/lit-html.js";

// asked, reached: what stands there ("N"), or "" where it is dark. words: { asked, reached }. name: what the picture says.
export const display = ({ asked, reached, words, name }) => html`
  <svg class="display" viewBox="0 0 132 112" role="img" aria-label=${name}>
    <text class="display-name" x="33" y="15">${words.asked}</text>
    <text class="display-name" x="99" y="15">${words.reached}</text>
    <rect class="display-glass" x="2" y="24" width="128" height="78" rx="9"/>
    <text class="display-gear" x="33" y="81" ?data-dark=${!asked}>${asked || "–"}</text>
    <path class="display-rule" d="M66 34V92"/>
    <text class="display-gear" x="99" y="81" ?data-dark=${!reached}>${reached || "–"}</text>
  </svg>`;
