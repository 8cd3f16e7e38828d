// The Water page: each tile shows its page's answer as it was last entered, or as this rig would open it.
import { render } from "../../vendor/lit-html/lit-html.js";
import { draftOf } from "../shared/draft.js";
import { engine, Refusal } from "../shared/engine.js";
import { opened } from "../reckon/entries.js";
import { asked as askedOf } from "../reckon/fields.js";
import { enteredOf, examplesIn, knownOf, originsOf } from "../reckon/origin.js";
import { linkTables } from "../reckon/tables.js";
import { atHand, chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { unitsFor } from "../shared/units.js";

const [data, rig, call] = await Promise.all([pageData(), chosenRig(), engine()]);
const { words, systems } = data;
const system = chosenSystem(systems);
const u = unitWords(words, system);
linkTables(system);
const units = unitsFor(systems, system);
const { shelf } = atHand(call, rig, data.pages.hydrant.shelf, units); // every page of hose has the same
const told = document.createElement("div");
document.querySelector("h1").after(told);
render(rigNamed(rig, await faultsOf(call, shelf, rig, { system }), words), told);

for (const [page, asked] of Object.entries(data.pages)) {
  const draft = await draftOf(`reckon-${page}`);
  const entries = opened(draft, { ...asked, systems }, systems[system].family, rig);
  const tile = document.querySelector(`[data-page="${page}"]`);
  const entered = enteredOf(entries, knownOf(draft, asked, rig), asked, rig);
  tile.querySelector("[data-example]").hidden = !examplesIn(originsOf(askedOf({ data: asked, entries }), entries, entered, rig)).length;
  try {
    const own = asked.shelf.hoses ? shelf : asked.shelf;
    const answer = call(`${page}.answer`, { entries, shelf: own, units: unitsFor(systems, system, entries) });
    tile.querySelector("[data-figure]").textContent = answer.figure.text ?? "";
    tile.querySelector("[data-unit]").textContent = answer.figure.text === null ? "" : u[`u_${answer.figure.kind}`];
    tile.querySelector("[data-told]").textContent = fill(words.told[answer.sum], { ...u, ...answer.facts });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    tile.querySelector("[data-figure]").textContent = "";
    tile.querySelector("[data-unit]").textContent = "";
    tile.querySelector("[data-told]").textContent = words.reckon.waiting;
  }
}
