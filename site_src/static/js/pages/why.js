// The power path to play with: the made-up rig, without a task and without an end.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { calc } from "../shared/engine.js";
import { Bench, benchView, controlsView } from "../practice/bench.js";
import { startTerms } from "../help/touched.js";
import { chosenSystem } from "../rig/chosen.js";
import { pageData, unitWords } from "../shared/site.js";
import { unitsFor } from "../shared/units.js";

startTerms();
const place = document.getElementById("bench");
const starting = calc.start();
const data = await pageData();
const { words } = data;
const system = chosenSystem(data.systems);
const u = unitWords(words, system);
const bench = new Bench({ data, units: unitsFor(data.systems, system, []), redraw: draw });

const startOver = () => bench.begin("to_pump", []);

function draw() {
  render(html`
    <section class="bench">
      ${benchView({ bench, words, u, telling: true })}
      <div class="dock bench-dock">${controlsView({ bench, words })}</div>
    </section>
    <button type="button" class="key" @click=${startOver}>${words.why.afresh}</button>`, place);
}

await starting;
startOver();
