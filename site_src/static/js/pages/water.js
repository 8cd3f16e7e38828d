// The Water page: each row shows its page's answer once every figure that it rests on was entered or is the rig's; dashes until then.
import { render } from "../../vendor/lit-html/lit-html.js";
import { draftOf } from "../shared/draft.js";
import { calc } from "../shared/engine.js";
import { sumOf } from "../reckon/answer.js";
import { opened } from "../reckon/entries.js";
import { asked as askedOf } from "../reckon/fields.js";
import { enteredOf, examplesIn, knownOf, originsOf } from "../reckon/origin.js";
import { linkTables } from "../reckon/tables.js";
import { atHand } from "../rig/at_hand.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { faultsOf } from "../rig/faults.js";
import { rigNamed } from "../rig/named.js";
import { pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";

const [data, rig] = await Promise.all([pageData(), chosenRig(), calc.start()]);
const { words, systems } = data;
const system = chosenSystem(systems);
const u = unitWords(words, system);
linkTables(system);
const units = unitsOnce(systems)(system);
const { shelf } = await atHand(rig, data.pages.hydrant.shelf, units); // every page of hose has the same
render(rigNamed(rig, await faultsOf(shelf, rig, { system }), words), document.getElementById("rig"));

for (const [page, asked] of Object.entries(data.pages)) {
  const draft = await draftOf(`reckon-${page}`);
  const entries = opened(draft, { ...asked, systems }, systems[system].family, rig);
  const entered = enteredOf(entries, knownOf(draft, asked, rig), asked, rig);
  if (examplesIn(originsOf(askedOf({ data: asked, entries }), entries, entered, rig)).length) continue;
  const { answer } = await calc.ask("water_page.answer", { page, entries, texts: [] }, { shelf: asked.shelf.hoses ? shelf : asked.shelf, units });
  if (!answer) continue;
  const row = document.querySelector(`[data-page="${page}"]`);
  const text = (name, value) => { row.querySelector(`[data-${name}]`).textContent = value; };
  text("told", sumOf(answer, words, u));
  if (answer.figure.text === null) continue;
  text("figure", answer.figure.text);
  text("unit", u[`u_${answer.figure.kind}`]);
  row.querySelector(".page-figure").removeAttribute("data-none");
}
