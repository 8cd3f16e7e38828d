// The entries of a water or foam page as rows: name, value, unit. A row opens its tray, one at a time: a stepper for an amount, chips for a choice.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../shared/controls.js";
import { isUnfolded, unfold } from "../shared/fold.js";
import { refusalOf } from "../shared/refusal.js";
import { colon, fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { offered } from "./entries.js";

const SIGNED = ["rise", "altitude"];
const UNSET = "\u2013";

export const asked = ({ data, entries }) =>
  data.fields.filter(({ when = {} }) => Object.entries(when).every(([name, value]) => [value].flat().includes(entries[name])));

export const labelOf = (field, { words, page }) => words.field[`${page}_${field.name}`] ?? words.field[field.name];

// A hose or a choice as it is said beside its name.
const pickedOf = (field, { data, entries, system }) =>
  offered(field, data.systems[system].family, entries[field.name]).find((option) => option.id === entries[field.name])?.label;

// What is entered, as it stands in its row: { text, unit }.
function valueOf(field, page) {
  const { entries, u, shown } = page;
  if (`${page.data.systems[page.system].family}_options` in field) return { text: pickedOf(field, page) };
  if (!bare(entries[field.name])) return { text: UNSET };
  return field.kind === "count" ? { text: bare(entries[field.name]) } : { text: shown(field.kind, entries[field.name]), unit: u[`u_${field.kind}`] };
}

// The hose of the page, or nothing.
export function hoseNamed(page) {
  const field = page.data.fields.find(({ kind }) => kind === "hose");
  return field ? pickedOf(field, page) : "";
}

// Each hose that is chosen.
export const hosesOf = ({ data, entries }) => asked({ data, entries }).filter(({ kind }) => kind === "hose")
  .flatMap((field) => [...field.customary_options, ...field.metric_options].filter(({ id }) => id === entries[field.name]));

// Whose the friction figure of a hose is, where the rig's profile has one of it.
export function ownHose({ id, label }, { data: { words }, shelf }) {
  const origin = shelf.hoses[id]?.origin ?? "handbook";
  return origin !== "handbook" ? fill(words.reckon.rig_hose_source, { hose: label, origin: words.pressure[`origin_${origin}`] }) : undefined;
}

// What was entered, in words, for paper.
export function enteredView(page) {
  return html`<ul class="entered">${asked(page).map((field) => {
    const { text, unit = "" } = valueOf(field, page);
    return html`<li>${labelOf(field, page.data)}${colon} <b>${text} ${unit}</b></li>`;
  })}</ul>`;
}

const named = (fields, data) => fields.map((field) => labelOf(field, data)).join("; ");

// Which figures are the rig's.
const rigView = (page) => html`
  ${page.origins.rig.length ? html`<p class="smallprint">${fill(page.data.words.reckon.rig_named, { name: page.rig.name, fields: named(page.origins.rig, page.data) })}</p>` : nothing}
  ${[...new Set(hosesOf(page).map((hose) => ownHose(hose, page)))].map((sentence) => sentence ? html`<p class="smallprint">${sentence}</p>` : nothing)}`;

// What a row opens.
function tray(field, page) {
  const { data, entries, system, u, refusal, shown, act } = page;
  const { words } = data;
  const { family, steps } = data.systems[system];
  const label = labelOf(field, data);
  const choice = { retaps: true, name: field.name, legend: label, value: entries[field.name], change: (id) => act.choose(field.name, id) };
  if (field.kind === "choice") return chips({ ...choice, choices: offered(field, family, entries[field.name]) });
  if (field.kind === "hose") {
    return chipsAndList({
      ...choice, legend: `${label}, ${u.u_diameter}`, other: words.pressure.other_size,
      choices: offered(field, family, entries[field.name]),
    });
  }
  const kind = field.kind === "count" ? null : field.kind;
  return html`${stepper({
    id: field.name,
    name: field.name,
    label,
    unit: kind ? u[`u_${kind}`] : nothing,
    value: shown(kind, entries[field.name]),
    by: { kind, step: (steps[kind] ?? 1) * (field.taps ?? 1), least: SIGNED.includes(kind) ? null : 0 },
    type: (text) => act.type(field.name, text),
    refusal: refusal?.field === field.name ? refusalOf(words, refusal) : null,
    words,
  })}${field.usual ? chips({
    ...choice, name: `${field.name}-usual`, legend: words.reckon.usual,
    choices: field.usual.map((id) => ({ id, label: `${shown(kind, id)} ${u[`u_${kind}`]}` })),
  }) : nothing}`;
}

function row(field, page) {
  const { data, origins, refusal, open, act } = page;
  const { text, unit } = valueOf(field, page);
  const isOpen = open === field.name;
  const isRefused = refusal?.field === field.name;
  return html`
    <div class="entry" data-from=${origins.example.includes(field) ? "example" : nothing} ?data-open=${isOpen} ?data-refused=${isRefused}>
      <button type="button" class="entry-row" data-entry=${field.name} aria-expanded=${isOpen ? "true" : "false"} @click=${() => act.open(isOpen ? null : field.name)}>
        <span>${labelOf(field, data)}</span> <b>${text}</b> ${unit ? html`<small>${unit}</small>` : nothing}
      </button>
      ${isOpen ? html`<div class="entry-tray">${tray(field, page)}${origins.example.includes(field) && !isRefused
        ? html`<button type="button" class="key key-wide" @click=${() => act.asIs(field.name)}>${data.words.reckon.as_is}</button>` : nothing}</div>`
        : isRefused ? html`<p class="refusal" id="${field.name}-refused" role="alert">${refusalOf(data.words, refusal)}</p>` : nothing}
    </div>`;
}

// Fields in their groups: a group begins at each field that names one.
function groupsOf(page) {
  const groups = [];
  for (const field of asked(page)) {
    if (field.group || !groups.length) groups.push({ name: field.group, fields: [] });
    groups.at(-1).fields.push(field);
  }
  return groups;
}

// A group of nothing but rules, usual values and what was left empty begins folded, its values beside its name.
function groupView({ name, fields }, page) {
  const { data, entered, origins, refusal } = page;
  const rows = fields.map((field) => row(field, page));
  if (!name) return rows;
  const title = data.words.group[name];
  if (fields.some((field) => origins.example.includes(field))) return html`<h2>${title}</h2>${rows}`;
  const begins = fields.some((field) => entered.includes(field.name));
  const values = fields.map((field) => valueOf(field, page)).filter(({ text }) => text !== UNSET).map(({ text, unit = "" }) => `${text} ${unit}`.trim());
  return html`
    <details class="entry-fold" ?open=${isUnfolded(name, begins) || fields.some((field) => field.name === refusal?.field)} @toggle=${({ target }) => unfold(name, target.open)}>
      <summary><span>${title}</span> <b>${values.join(" \u00b7 ")}</b></summary>
      ${rows}
    </details>`;
}

export const fieldsView = (page) => html`
  <section class="entries" aria-label=${page.data.words.reckon.settings}>
    ${rigView(page)}
    ${groupsOf(page).map((group) => groupView(group, page))}
  </section>`;
