// Every figure of a lay, each opening on its working and its source.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";

function rows(line, typed, data) {
  const { words, formulas, sources } = data;
  const { friction, elevation, inlet, nozzle } = line.workings;
  const hose = data.hoses.find((choice) => choice.id === typed.hose);
  const formula = (id) => fill(words.pressure.formula_source, { ...formulas[id], basis: words.basis[formulas[id].basis] });
  const coefficient = fill(words.pressure.hose_source, { ...friction, source: hose.source, basis: words.basis[hose.basis] });
  const wye = line.end === "wye";
  return [
    ["inlet", line.inlet, "pressure", fill(words.pressure.working_inlet, inlet), [formula("discharge")]],
    ["friction", line.friction, "pressure", fill(words.pressure.working_friction, friction), [coefficient, words.pressure.modern, formula("friction")]],
    ["friction_rate", line.friction_rate, "friction_rate", fill(words.pressure.working_friction_rate, friction), [coefficient, formula("friction")]],
    ["elevation", line.elevation, "pressure", fill(words.pressure.working_elevation, elevation), [formula("elevation")]],
    wye && ["appliance", line.appliance, "pressure", words.pressure.working_appliance, [fill(words.pressure.formula_source, { form: sources.wye.label, source: sources.wye.source, basis: words.basis[sources.wye.basis] })]],
    ["flow", line.flow, "flow", wye ? fill(words.pressure.working_wye_flow, line) : fill(words.pressure[`working_${line.end}_flow`], nozzle), line.end === "smooth" ? [formula("smooth_flow")] : []],
    !wye && ["reaction", line.reaction, "force", fill(words.pressure[`working_${line.end}_reaction`], nozzle), [formula(`${line.end}_reaction`)]],
    ["velocity", line.velocity, "velocity", fill(words.pressure.working_velocity, line), [formula("velocity")]],
    ["water", line.water, "volume", words.pressure.working_water, []],
  ].filter(Boolean);
}

export function figuresView({ answer, lines, data, labelOf }) {
  const { words } = data;
  return html`
    <h2>${words.pressure.figures}</h2>
    ${answer.lines.map((line) => {
      const typed = lines.find((each) => each.id === line.id);
      return html`
        ${lines.length > 1 ? html`<h3>${labelOf(line.id)}</h3>` : nothing}
        <div class="figures">${rows(line, typed, data).map(([name, text, unit, working, told]) => html`
          <details>
            <summary><span>${words.pressure[`field_${name}`]}</span><b>${text} ${words.unit[unit]}</b></summary>
            <p class="working">${working}</p>
            ${told.map((sentence) => html`<p>${sentence}</p>`)}
          </details>`)}
        </div>`;
    })}`;
}
