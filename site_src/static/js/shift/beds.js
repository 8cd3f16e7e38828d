// The pressures of the rig's beds, as the start page works them out, beside a step that throttles to one.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chosenSystem } from "../rig/chosen.js";
import { calc } from "../shared/engine.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { unitsOnce } from "../shared/units.js";

// { unit, rows }: those that have a number; null where the card has no such step, or no rig is chosen.
export async function bedsOf(rig, steps) {
  if (!rig?.beds?.length || !Object.values(steps).some(({ shows }) => shows?.kind === "beds")) return null;
  const { shelf, systems, words } = await pageData(home);
  const system = chosenSystem(systems);
  const { rows } = await calc.ask("beds_page.answer", { profile: rig }, { shelf, units: unitsOnce(systems)(system) });
  return { unit: unitWords(words, system).u_pressure, rows: rows.filter(({ pressure }) => pressure !== null) };
}

export const bedsView = (beds, { shift }) => (beds?.rows.length ? html`
  <p class="step-beds"><b>${fill(shift.beds, beds)}</b> ${beds.rows.map(({ name, pressure }, place) => html`${place ? " · " : ""}<span>${name} <b>${pressure}</b></span>`)}</p>` : nothing);
