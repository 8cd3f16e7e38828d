// Every figure of a lay, each opening on its working and its source.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";

function rows(line, typed, data, u, wyeRule, origin) {
  const { words, formulas, sources } = data;
  const told = (sentence, facts) => fill(words.pressure[sentence], { ...u, ...facts });
  const { friction, elevation, inlet, nozzle } = line.workings;
  const hose = data.hoses.find((choice) => choice.id === typed.hose);
  const formula = (id) => told("formula_source", { ...formulas[id], basis: words.basis[formulas[id].basis] });
  const coefficient = origin ? told("rig_source", { ...friction, origin: words.pressure[`origin_${origin}`] }) : told("hose_source", { ...friction, source: hose.source, basis: words.basis[hose.basis] });
  const wye = line.end === "wye";
  return [
    ["inlet", line.inlet, "pressure", told("working_inlet", inlet), [formula("discharge")]],
    ["friction", line.friction, "pressure", told("working_friction", friction), [coefficient, hose.family === "metric" ? words.pressure.metric_set : words.pressure.modern, formula("friction")]],
    ["friction_rate", line.friction_rate, "friction_rate", told("working_friction_rate", friction), [coefficient, formula("friction")]],
    ["elevation", line.elevation, "pressure", told("working_elevation", elevation), [formula("elevation")]],
    wye && ["appliance", line.appliance, "pressure", wyeRule.map((step) => told("working_appliance", step)).join("; "), [told("formula_source", { form: sources.wye.label, source: sources.wye.source, basis: words.basis[sources.wye.basis] })]],
    ["flow", line.flow, "flow", wye ? told("working_wye_flow", line) : told(`working_${line.end}_flow`, nozzle), line.end === "smooth" ? [formula("smooth_flow")] : []],
    !wye && ["reaction", line.reaction, "force", told(`working_${line.end}_reaction`, nozzle), [formula(`${line.end}_reaction`)]],
    ["velocity", line.velocity, "velocity", told("working_velocity", line), [formula("velocity")]],
    ["water", line.water, "volume", words.pressure.working_water, []],
  ].filter(Boolean);
}

export function figuresView({ answer, lines, data, shelf, u, labelOf }) {
  const { words } = data;
  return html`
    <h2>${words.pressure.figures}</h2>
    ${answer.lines.map((line) => {
      const typed = lines.find((each) => each.id === line.id);
      return html`
        ${lines.length > 1 ? html`<h3>${labelOf(line.id)}</h3>` : nothing}
        <div class="figures">${rows(line, typed, data, u, answer.wye_rule, shelf.hoses[typed.hose].origin).map(([name, text, unit, working, told]) => html`
          <details>
            <summary><span>${fill(words.pressure[`field_${name}`], u)}</span><b>${text} ${u[`u_${unit}`]}</b></summary>
            <p class="working">${working}</p>
            ${told.map((sentence) => html`<p>${sentence}</p>`)}
          </details>`)}
        </div>`;
    })}`;
}
