// The panel card of the chosen rig, made on the phone, in the size of the paper.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { choose, chosen } from "../shared/choices.js";
import { engine } from "../shared/engine.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { contextOf, sentenceOf } from "../rig/sentences.js";
import { sheetView } from "../rig/sheet.js";
import { pageData, unitWords } from "../shared/site.js";
import { systemChips, unitsFor } from "../shared/units.js";

const SIZES = ["pocket", "a4", "letter"];
const place = document.getElementById("sheet");
const starting = engine();
const [data, rig] = await Promise.all([
  pageData(new URL("../", document.baseURI)),
  chosenRig(),
]);
const { words } = data;
const page = { system: chosenSystem(data.systems), size: chosen("paper", "letter") };

function draw(call) {
  const units = unitsFor(data.systems, page.system);
  for (const size of SIZES) document.getElementById(`paper-${size}`).media = size === page.size ? "all" : "not all";
  render(html`
    <div class="no-print">
      ${chips({ name: "size", legend: words.card.size, value: page.size, choices: SIZES.map((id) => ({ id, label: words.card[id] })),
        change: (size) => { page.size = size; choose("paper", size); draw(call); } })}
      ${systemChips({ systems: data.systems, system: page.system, words, change: (system) => { page.system = system; draw(call); } })}
      <button type="button" class="key key-wide" @click=${() => window.print()}>${words.card.print}</button>
    </div>
    ${rig ? sheet(call, units) : html`<p class="notice">${words.card.nobody}</p>`}`, place);
}

function sheet(call, units) {
  const u = unitWords(words, page.system);
  const family = data.systems[page.system].family;
  const card = call("panel_card.card", { profile: rig, shelf: data.shelf, units, section: data.section_length[family], tips: data.tips.filter((tip) => tip.family === family) });
  const faults = card.faults.map((problem) => sentenceOf(problem, contextOf({ call, data, u, system: page.system, profile: rig })));
  return sheetView({ card, rig, faults, words, u });
}

const call = await starting;
place.replaceChildren();
draw(call);
