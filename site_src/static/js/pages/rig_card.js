// The panel card of the chosen rig, made on the phone, in the size of the paper.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { PaperSize } from "../shared/paper_size.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { sentenceOf } from "../rig/sentences.js";
import { sheetView } from "../rig/sheet.js";
import { pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";

const place = document.getElementById("sheet");
const starting = calc.start();
const [data, rig] = await Promise.all([
  pageData(new URL("../", document.baseURI)),
  chosenRig(),
]);
const { words } = data;
const unitsOf = unitsOnce(data.systems);
const state = { system: chosenSystem(data.systems) };
const page = answering(question, draw);
const paperSize = new PaperSize({ kind: "paper", sizes: ["pocket", "a4", "letter"], words: words.card, redraw: page.redraw });
const tips = Object.fromEntries(["customary", "metric"].map((family) => [family, data.tips.filter((tip) => tip.family === family)])); // held, so always the same

// The page's one question.
async function question() {
  const { family } = data.systems[state.system];
  if (!rig) return {};
  return calc.ask("panel_card.card", { section: data.section_length[family] },
    { profile: rig, shelf: data.shelf, units: unitsOf(state.system), tips: tips[family] });
}

function draw(card) {
  render(html`
    ${!rig ? html`<p class="notice">${words.card.nobody}</p>` : card ? sheet(card, html`<div class="no-print">
      ${paperSize.view()}
      <button type="button" class="key key-wide" @click=${() => window.print()}>${words.card.print}</button>
    </div>`) : nothing}`, place);
}

function sheet(card, paper) {
  const u = unitWords(words, state.system);
  const faults = card.faults.map((problem) => sentenceOf(problem, { data, u, profile: rig }));
  return sheetView({ card, rig, faults, paper, words, u });
}

await starting;
place.replaceChildren();
await page.change();
