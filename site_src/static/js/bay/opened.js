// What each page of the bay opens with: its data, the chosen rig, and that rig's log.
import { calc } from "../shared/engine.js";
import { home, pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { departments, faultsAbove } from "./department.js";
import { Log } from "./log.js";

const checks = new URL("checks/", home);
export const pageOf = (part) => new URL(part, checks).href;

/** @type {(place: any, words: any, more?: any) => unknown} */
export const withoutRig = (place, words, more = nothing) => render(html`
  <p class="notice">${words.bay.no_rig} <a class="key" href=${new URL("rig/", home).href}>${words.bay.to_rig}</a></p>${more}`, place);

// { data (as the rig's department has it), published, words, rig, log, units, u, rows }, or null where no rig is chosen: the page says so itself.
export async function opened(place) {
  calc.start();
  const [published, rig] = await Promise.all([pageData(checks), chosenRig()]);
  place.replaceChildren();
  const { words } = published;
  if (!rig) {
    withoutRig(place, words);
    return null;
  }
  const system = chosenSystem(published.systems);
  const units = unitsOnce(published.systems)(system);
  const data = await departments(published, rig, units);
  await faultsAbove(place, data, rig, system);
  return {
    data, published, words, rig, system, log: await Log.open(rig, data.text), units, u: unitWords(words, system),
    rows: new Map(data.rows.map((row) => [row.id, row])),
  };
}
