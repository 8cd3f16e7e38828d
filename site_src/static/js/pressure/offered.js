// What is offered for a line first: the rig's own beds, its own hose, then the sizes of the page's family.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fieldAddress } from "../rig/faults.js";
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { isInto, isJoint } from "./layout.js";

// The rig's preconnects and master streams, and the supply hose it carries: one tap to an answer. A bed with a fault leads to its field.
export function ofRig({ line, rig, own, beds, faultyBeds, data, words, act }) {
  const supply = own?.supply ?? [];
  if (isJoint(line) || isInto(line) || (!beds.length && !faultyBeds.length && !supply.length)) return nothing;
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
export const offered = (choices, value, family) => choices
  .filter((choice) => choice.family === family || choice.id === value)
  .map((choice) => (choice.family === family ? choice : { ...choice, chip: choice.label }));

// The rig's own hoses first, whatever their family: what was measured on them stays one tap away.
export function ownFirst(choices, value, family, own) {
  const named = [...(own?.beds ?? []), ...(own?.hoses ?? []), ...(own?.supply ?? [])].map(({ hose }) => hose);
  const [owned, others] = [true, false].map((isOwn) => choices.filter(({ id, family: sizes }) => (sizes !== "none" && named.includes(id)) === isOwn));
  return [
    ...owned.map((choice) => ({ ...choice, common: true, chip: choice.family === family ? choice.chip : choice.label })),
    ...offered(others, value, family),
  ];
}
