// The picture of a water or foam page, drawn from calc's shares and texts; its room stays while there is no answer.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { connection, foam, hoselay, hydrant, joint, relay } from "./pictures/lines.js";
import { WIDE } from "./pictures/parts.js";
import { draft, fireflow, shuttle, tank } from "./pictures/sources.js";

const DRAWN = { hydrant: [hydrant, 176], tank: [tank, 176], draft: [draft, 196], relay: [relay, 136], joint: [joint, 122], connection: [connection, 172], shuttle: [shuttle, 142], fireflow: [fireflow, 122], hoselay: [hoselay, 166], foam: [foam, 138] };

// hose: the chosen hose as it is said; shelf: what calc has of it.
export function pictureView({ data, answer, origins, entries, shelf, u, hose }) {
  const { words, page } = data;
  const [drawn, high] = DRAWN[page];
  const isExample = origins.example.length > 0; // a figure in it may be one that nobody entered
  return html`
    <div class="pictured" data-from=${isExample ? "example" : nothing}><svg class="picture" viewBox="0 0 ${WIDE} ${high}" role="img" aria-label="${words.picture[page]}${isExample ? `, ${words.reckon.example}` : ""}">
      ${answer ? drawn({ picture: answer.picture, words, u, hose, bore: shelf.hoses?.[entries.hose]?.bore_in ?? null }) : null}
    </svg></div>`;
}
