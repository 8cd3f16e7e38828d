// The Water page: each tile shows its page's answer as it was last entered, or as this rig would open it.
import { render } from "../../vendor/lit-html/lit-html.js";
import { draftOf } from "../shared/draft.js";
import { calc } from "../shared/engine.js";
import { opened } from "../reckon/entries.js";
import { asked as askedOf } from "../reckon/fields.js";
import { enteredOf, examplesIn, knownOf, originsOf } from "../reckon/origin.js";
import { linkTables } from "../reckon/tables.js";
import { atHand, chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";

const [data, rig] = await Promise.all([pageData(), chosenRig(), calc.start()]);
const { words, systems } = data;
const system = chosenSystem(systems);
const u = unitWords(words, system);
linkTables(system);
const units = unitsOnce(systems)(system);
const { shelf } = await atHand(rig, data.pages.hydrant.shelf, units); // every page of hose has the same
const told = document.createElement("div");
document.getElementById("page").prepend(told);
render(rigNamed(rig, await faultsOf(shelf, rig, { system }), words), told);

for (const [page, asked] of Object.entries(data.pages)) {
  const draft = await draftOf(`reckon-${page}`);
  const entries = opened(draft, { ...asked, systems }, systems[system].family, rig);
  const tile = document.querySelector(`[data-page="${page}"]`);
  const entered = enteredOf(entries, knownOf(draft, asked, rig), asked, rig);
  tile.querySelector("[data-example]").hidden = !examplesIn(originsOf(askedOf({ data: asked, entries }), entries, entered, rig)).length;
  const { answer } = await calc.ask("water_page.answer", { page, entries, texts: [] }, { shelf: asked.shelf.hoses ? shelf : asked.shelf, units });
  const text = (name, value) => { tile.querySelector(`[data-${name}]`).textContent = value; };
  text("figure", answer?.figure.text ?? "");
  text("unit", answer?.figure.text ? u[`u_${answer.figure.kind}`] : "");
  text("told", answer ? fill(words.told[answer.sum], { ...u, ...answer.facts }) : words.reckon.waiting);
}
