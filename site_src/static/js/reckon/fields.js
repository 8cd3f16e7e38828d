// The controls of a water or foam page: a stepper for an amount, chips for a choice, in the page's order.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../controls.js";
import { stepped } from "../pressure/lay.js";
import { fill } from "../site.js";
import { offered } from "./entries.js";

const SIGNED = ["rise", "altitude"];

export function fieldsView({ data, entries, system, u, refusal, shown, act }) {
  const { words } = data;
  const { family, steps } = data.systems[system];
  const isShown = ({ when = {} }) => Object.entries(when).every(([name, value]) => entries[name] === value);

  const amount = (field, label, unit, kind) => {
    const typed = shown(kind, entries[field.name]);
    const step = (steps[kind] ?? 1) * (field.taps ?? 1);
    return stepper({
      id: field.name,
      name: field.name,
      label,
      unit,
      value: typed,
      step: (direction) => {
        const next = stepped(shown(kind, act.entryOf(field.name)) || "0", step, direction, SIGNED.includes(kind) ? -Infinity : 0);
        if (next !== null) act.type(field.name, next);
      },
      type: (text) => act.type(field.name, text),
      refusal: refusal?.field === field.name ? fill(words.refusal[refusal.code] ?? words.refusal.other, refusal) : null,
      words,
    });
  };

  const control = (field) => {
    const label = words.field[`${data.page}_${field.name}`] ?? words.field[field.name];
    const choice = { name: field.name, legend: label, value: entries[field.name], change: (id) => act.choose(field.name, id) };
    if (field.kind === "choice") return chips({ ...choice, choices: offered(field, family, entries[field.name]) });
    if (field.kind === "hose") {
      return chipsAndList({
        ...choice, legend: `${label}, ${u.u_diameter}`, other: words.pressure.other_size,
        choices: offered(field, family, entries[field.name]),
      });
    }
    return field.kind === "count" ? amount(field, label, nothing, null) : amount(field, label, u[`u_${field.kind}`], field.kind);
  };

  return html`<section aria-label=${words.reckon.settings}>${data.fields.filter(isShown).map((field) => html`
    ${field.group ? html`<h2>${words.group[field.group]}</h2>` : nothing}${control(field)}`)}</section>`;
}
