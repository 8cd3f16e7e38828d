// What is on the ground: hose, length, height and end of one line of the layout.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../shared/controls.js";
import { fold } from "../shared/fold.js";
import { refusalOf } from "../shared/refusal.js";
import { fieldAddress } from "../rig/faults.js";
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { DEVICES, JOINTS, NOZZLES, PIPED, isJoint } from "./layout.js";

// The kind of quantity of each entry; a height steps by its own step.
export const KINDS = {
  flow: "flow", least: "flow", pressure: "pressure", length: "length", height: "rise", loss: "pressure",
  gauge: "pressure", intake: "pressure", lift: "lift", suction: "lift",
  reach_pump: "pressure", reach_end: "pressure", reach_flow: "flow", reach_length: "length",
};
const LEAST = { height: null, length: 0, loss: 0, gauge: 0, intake: null, lift: 0, suction: 0, reach_end: 0, reach_length: 0 };

let emptied = null; // the input that was just emptied by hand: what is usual stands there again once the finger has left it

// A stepper for one entry. `of` names what it belongs to (a line), `entry` is the text with its system, `blank` what is usual.
export function entryStepper({ of, name, label, entry, blank = "", data, system, u, refusal, shown, change }) {
  const { words } = data;
  const kind = KINDS[name];
  const id = `${of}-${name}`;
  const value = entry !== "" ? shown(kind, entry) : emptied === id ? "" : blank;
  const step = data.systems[system].steps[kind];
  const wrong = refusal?.field === name && (refusal.line ?? of) === of;
  return stepper({
    id,
    name,
    label,
    unit: u[`u_${kind}`],
    value,
    usual: blank,
    by: { kind, step, least: name in LEAST ? LEAST[name] : step },
    type: (text) => {
      emptied = text === "" ? id : null;
      change(text);
    },
    left: (input) => {
      if (emptied !== id) return;
      emptied = null;
      input.value = blank;
    },
    refusal: wrong ? refusalOf(words, refusal) : null,
    words,
  });
}

export function settingsView({ layout, line, lines, answer, data, rig, own, beds, faultyBeds, system, u, refusal, shown, labelOf, act, redraw }) {
  const { words } = data;
  const joint = isJoint(line);
  const usualLoss = answer?.lines.find(({ id }) => id === line.id)?.appliance ?? "";
  const number = (name, label, blank) => entryStepper({
    of: line.id, name, label, blank, data, system, u, refusal, shown,
    entry: line[name] ?? line.end[name], change: (text) => act.type(line.id, name, text),
  });
  return html`
    <section aria-label=${words.pressure.settings}>
      ${lines.length > 1 ? html`<h2>${labelOf(line.id)}</h2>` : nothing}
      ${ofRig({ line, rig, own, beds, faultyBeds, data, words, act })}
      ${chipsAndList({
        name: "hose", legend: `${words.pressure.hose}, ${u.u_diameter}`, other: words.pressure.other_size,
        choices: ownFirst(data.hoses, line.hose, data.systems[system].family, own),
        value: line.hose, change: (hose) => act.choose(line.id, "hose", hose),
      })}
      ${line.hose === PIPED ? nothing : number("length", words.pressure.length)}
      ${joint ? nothing : nozzle(line, number, { data, system, u, act })}
      ${number("height", words.pressure.height)}
      ${floors(line, words, act)}
      ${joint || line.end.kind === "inlet" || line.device !== "none" ? nothing : chips({
        name: "crew", legend: words.pressure.crew, value: layout.crew, change: act.crew,
        choices: Object.keys(data.shelf.crews).map((id) => ({ id, label: id })),
      })}
      ${fold({ name: "more", summary: words.pressure.more_of_it, kind: "section", begins: joint || line.runs !== "1" || line.device !== "none", redraw }, () => html`
        ${chipsAndList({
          name: "runs", legend: words.pressure.runs, other: words.pressure.other_runs, choices: data.runs,
          value: line.runs, change: (runs) => act.choose(line.id, "runs", runs),
        })}
        ${line.end.kind === "inlet" ? nothing : chips({
          name: "device", legend: words.pressure.device, value: line.device, change: (device) => act.choose(line.id, "device", device),
          choices: (joint ? JOINTS : DEVICES).map((id) => ({ id, label: words.device[id] })),
        })}
        ${line.device === "none" ? nothing : number("loss", words.pressure.loss, usualLoss)}
        ${["master", "aerial"].includes(line.device) && !line.loss ? html`<p>${words.pressure[`loss_${line.device}`]}</p>` : nothing}`)}
    </section>`;
}

// The height as a count of floors, for crews that think in floors.
const floors = (line, words, act) => !act.hasFloor() ? nothing : html`
  <div class="chips" role="group" aria-label=${words.pressure.floors}>
    ${[1, -1].map((direction) => html`<button type="button" class="key" @click=${() => act.floor(line.id, direction)}>${words.pressure[direction > 0 ? "floor_up" : "floor_down"]}</button>`)}
  </div>`;

// The rig's preconnects and master streams, and the supply hose it carries: one tap to an answer. A bed with a fault leads to its field.
function ofRig({ line, rig, own, beds, faultyBeds, data, words, act }) {
  const supply = own?.supply ?? [];
  if (isJoint(line) || (!beds.length && !faultyBeds.length && !supply.length)) return nothing;
  const tipOf = ({ tip }) => data.tips.find(({ id }) => id === tip)?.chip ?? bare(tip);
  const hoseOf = ({ hose }) => data.hoses.find(({ id }) => id === hose).label;
  const key = (label, press) => html`<button type="button" class="key" @click=${press}>${label}</button>`;
  const fixKey = ({ name, place }) => html`<a class="key key-faulty" href=${fieldAddress(place)}>${fill(words.pressure.bed_faulty, { name })}</a>`;
  const toFix = (count) => faultyBeds.filter(({ before }) => before === count).map(fixKey);
  return html`
    <div class="chips" role="group" aria-label=${words.pressure.beds}>
      <span class="chips-legend">${rig.name}</span>
      ${beds.map((bed, count) => html`${toFix(count)}${key(bed.tips?.length ? `${bed.name} ${tipOf(bed.end)}` : bed.name, () => act.bed(line.id, bed))}`)}
      ${faultyBeds.filter(({ before }) => before >= beds.length).map(fixKey)}
      ${supply.map((row) => key(fill(words.pressure.rig_supply, { hose: hoseOf(row) }), () => act.supply(line.id, row)))}
    </div>`;
}

// The sizes of the page's family, and the one that is laid, whatever its family; that one carries its unit.
const offered = (choices, value, family) => choices
  .filter((choice) => choice.family === family || choice.id === value)
  .map((choice) => (choice.family === family ? choice : { ...choice, chip: choice.label }));

// The rig's own hoses first, whatever their family: what was measured on them stays one tap away.
function ownFirst(choices, value, family, own) {
  const named = [...(own?.beds ?? []), ...(own?.hoses ?? []), ...(own?.supply ?? [])].map(({ hose }) => hose);
  const [owned, others] = [true, false].map((isOwn) => choices.filter(({ id, family: sizes }) => (sizes !== "none" && named.includes(id)) === isOwn));
  return [
    ...owned.map((choice) => ({ ...choice, common: true, chip: choice.family === family ? choice.chip : choice.label })),
    ...offered(others, value, family),
  ];
}

function nozzle(line, number, { data, system, u, act }) {
  const { words } = data;
  const { kind } = line.end;
  return html`
    ${chips({
      name: "kind", legend: words.pressure.nozzle, value: kind, change: (chosen) => act.kind(line.id, chosen),
      choices: NOZZLES.map((id) => ({ id, label: words.pressure[id] })),
    })}
    ${kind === "automatic" ? number("least", words.pressure.least) : nothing}
    ${kind === "smooth"
      ? chipsAndList({
          name: "tip", legend: `${words.pressure.tip}, ${u.u_diameter}`, other: words.pressure.other_tip,
          choices: offered(data.tips, line.end.tip, data.systems[system].family), value: line.end.tip,
          change: (tip) => act.tip(line.id, tip),
        })
      : number("flow", kind === "automatic" ? words.pressure.greatest : words.pressure.flow)}
    ${number("pressure", kind === "inlet" ? words.pressure.inlet_pressure : words.pressure.nozzle_pressure)}`;
}
