// The controls of a water or foam page: a stepper for an amount, chips for a choice, in the page's order.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../shared/controls.js";
import { refusalOf } from "../shared/refusal.js";
import { colon, fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { offered } from "./entries.js";

const SIGNED = ["rise", "altitude"];

export const asked = ({ data, entries }) =>
  data.fields.filter(({ when = {} }) => Object.entries(when).every(([name, value]) => [value].flat().includes(entries[name])));

export const labelOf = (field, { words, page }) => words.field[`${page}_${field.name}`] ?? words.field[field.name];

// What was entered, in words, for paper.
export function enteredView({ data, entries, system, u, shown }) {
  const { family } = data.systems[system];
  const told = (field) => {
    if (`${family}_options` in field) return offered(field, family, entries[field.name]).find((option) => option.id === entries[field.name])?.label;
    if (!bare(entries[field.name])) return "\u2013";
    return field.kind === "count" ? bare(entries[field.name]) : `${shown(field.kind, entries[field.name])} ${u[`u_${field.kind}`]}`;
  };
  return html`<ul class="entered">${asked({ data, entries }).map((field) => html`<li>${labelOf(field, data)}${colon} <b>${told(field)}</b></li>`)}</ul>`;
}

const named = (fields, data) => fields.map((field) => labelOf(field, data)).join("; ");

// Which figures are the rig's.
const rigView = ({ data, origins, rig }) => origins.rig.length
  ? html`<p class="smallprint">${fill(data.words.reckon.rig_named, { name: rig.name, fields: named(origins.rig, data) })}</p>` : nothing;

export function fieldsView({ data, entries, origins, rig, system, u, refusal, shown, act }) {
  const { words } = data;
  const { family, steps } = data.systems[system];

  const amount = (field, label, unit, kind) => {
    const typed = shown(kind, entries[field.name]);
    const step = (steps[kind] ?? 1) * (field.taps ?? 1);
    return stepper({
      id: field.name,
      name: field.name,
      label,
      unit,
      value: typed,
      by: { kind, step, least: SIGNED.includes(kind) ? null : 0 },
      type: (text) => act.type(field.name, text),
      refusal: refusal?.field === field.name ? refusalOf(words, refusal) : null,
      words,
    });
  };

  const control = (field) => {
    const label = labelOf(field, data);
    const choice = { retaps: true, name: field.name, legend: label, value: entries[field.name], change: (id) => act.choose(field.name, id) };
    if (field.kind === "choice") return chips({ ...choice, choices: offered(field, family, entries[field.name]) });
    if (field.kind === "hose") {
      return chipsAndList({
        ...choice, legend: `${label}, ${u.u_diameter}`, other: words.pressure.other_size,
        choices: offered(field, family, entries[field.name]),
      });
    }
    return field.kind === "count" ? amount(field, label, nothing, null) : amount(field, label, u[`u_${field.kind}`], field.kind);
  };

  return html`<section class="entries" aria-label=${words.reckon.settings}>
    ${rigView({ data, origins, rig })}
    ${asked({ data, entries }).map((field) => html`
      ${field.group ? html`<h2>${words.group[field.group]}</h2>` : nothing}
      <div class="entry" data-from=${origins.example.includes(field) ? "example" : nothing}>${control(field)}</div>`)}</section>`;
}
