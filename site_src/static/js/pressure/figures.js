// Every figure of a layout, each opening on its working and its source.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { cited } from "../shared/cited.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { PIPED } from "./layout.js";
import { hasThreePanes } from "./room.js";

function rows(line, typed, data, u, lossSteps, origin, isShared) {
  const { words, formulas } = data;
  const told = (sentence, facts) => fill(words.pressure[sentence], { ...u, ...facts });
  const { friction, elevation, inlet, parts, nozzle, department } = line.workings;
  const hose = data.hoses.find((choice) => choice.id === typed.hose);
  const source = (sentence, facts) => cited(words.pressure[sentence], { ...u, ...facts });
  const formula = (id) => source("formula_source", { ...formulas[id], basis: words.basis[formulas[id].basis] });
  const coefficient = origin ? told("rig_source", { ...friction, origin: words.pressure[`origin_${origin}`] }) : source("hose_source", { ...friction, source: hose.source, basis: words.basis[hose.basis] });
  const joint = line.end === "joint";
  const isPiped = typed.hose === PIPED;
  const device = line.device !== "none" && data.sources[line.device];
  return [
    ["inlet", parts.inlet, "pressure", told("working_inlet", inlet), [formula("discharge")]],
    !isPiped && ["friction", parts.friction, "pressure", told("working_friction", friction), [coefficient, ...(department ? [told("department_measured", department)] : []), hose.family === "metric" ? words.pressure.metric_set : words.pressure.modern, ...(hose.modern_source ? [source("modern_measured", { source: hose.modern_source })] : []), formula("friction")]],
    !isPiped && ["friction_rate", line.friction_rate, "friction_rate", told("working_friction_rate", friction), [coefficient, formula("friction")]],
    ["elevation", parts.elevation, "pressure", told("working_elevation", elevation), [formula("elevation")]],
    device && ["appliance", parts.appliance, "pressure", typed.loss ? words.pressure[typed.loss_at ? "working_own_loss_at" : "working_own_loss"] : lossSteps[line.device].map((step) => told("working_appliance", step)).join("; "),
      typed.loss ? [] : [source("loss_source", { device: device.label, source: device.source, basis: words.basis[device.basis] })]],
    line.end !== "into" && ["flow", line.end_flow, "flow", joint ? told("working_joint_flow", { flow: line.end_flow }) : told(`working_${line.end}_flow`, nozzle), line.end === "smooth" ? [formula("smooth_flow")] : []],
    (line.end === "into" || isShared) && ["hose_flow", line.flow, "flow", told("working_shared", line), [formula("parallel")]],
    line.reaction !== null && ["reaction", line.reaction, "force", told(`working_${line.end}_reaction`, nozzle), [formula(line.end === "smooth" ? "smooth_reaction" : "fog_reaction")]],
    !isPiped && ["velocity", line.velocity, "velocity", told("working_velocity", line), [formula("velocity")]],
    !isPiped && ["water", line.water, "volume", words.pressure.working_water, []],
  ].filter(Boolean);
}

export function figuresView({ answer, lines, data, shelf, u, labelOf, work }) {
  const { words } = data;
  return fold({ name: "workings", begins: hasThreePanes, summary: words.pressure.figures, kind: "section", redraw: work },
    () => answer?.lines.filter(({ workings }) => workings).map((line) => {
      const typed = lines.find((each) => each.id === line.id);
      return html`
        ${lines.length > 1 ? html`<h3>${labelOf(line.id)}</h3>` : nothing}
        <div class="figures">${rows(line, typed, data, u, answer.loss_steps, shelf.hoses[typed.hose].origin, answer.lines.some(({ into }) => into === line.id)).map(([name, text, unit, working, told]) => html`
          <details>
            <summary><span>${fill(words.pressure[`field_${name}`], u)}</span><b>${text} ${u[`u_${unit}`]}</b></summary>
            <p class="working">${working}</p>
            ${told.map((sentence) => html`<p>${termed(sentence)}</p>`)}
          </details>`)}
        </div>`;
    }));
}
