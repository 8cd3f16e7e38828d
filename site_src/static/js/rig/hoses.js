// What a profile knows of its hose: figures of its own beside the handbook's, and the supply hose it carries.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { ofFamily } from "./beds.js";
import { changedRow, newHose, newSupply, withRow } from "./profile.js";

const TEXT = { kind: "text" };
const labelOf = (data, id) => data.hoses.find((choice) => choice.id === id)?.label ?? id;

// How a hose's figure stands to the handbook's, as a sentence; `figure` is of calc.rig.figures.
export function figureText(figure, { words }) {
  const whose = fill(words.rig[figure.readings ? "figure_readings" : `figure_${figure.origin}`], figure);
  if (figure.origin === "handbook" || figure.percent === "0") return whose;
  return `${whose} ${fill(words.rig[figure.is_lower ? "figure_lower" : "figure_higher"], figure)}${figure.is_large ? ` ${words.rig.figure_large}` : ""}`;
}

// `asked` is the question of a figure whose size was changed under it: { place, before }.
export function hosesView({ profile, data, system, field, set, remove, measureView, figures, asked, ask }) {
  const { words } = data;
  const hoses = profile.hoses ?? [];
  return html`
    <p>${words.rig.hoses_told}</p>
    ${hoses.map((row, place) => {
      const change = (changes) => set("hoses", changedRow(hoses, place, changes));
      const at = (name) => `hoses.${place}.${name}`;
      const label = labelOf(data, row.hose);
      const figure = figures.find(({ hose }) => hose === row.hose);
      const entry = (name, changes) => field({ place: at(name), name, spec: data.hose_fields[name], value: row[name], change: changes });
      return html`
        <fieldset class="rig-hose">
          <legend>${label}</legend>
          ${figure ? html`<p class=${figure.is_large ? "notice" : "figure-told"}>${figureText(figure, data)}</p>` : nothing}
          ${figure?.department ? departmentView(figure.department, words, (coefficient) => change({ coefficient, origin: "pooled", ...uncounted(row) })) : nothing}
          ${asked?.place !== place ? nothing : html`
            <div class="notice" role="status">
              <p>${fill(words.rig.size_changed, { coefficient: figure?.coefficient ?? bare(row.coefficient), before: labelOf(data, asked.before), hose: label })}</p>
              <div class="pairs">
                <button type="button" class="key" @click=${() => change({ coefficient: "", origin: "handbook", ...uncounted(row) })}>${words.rig.size_handbook}</button>
                <button type="button" class="key" @click=${() => ask(null)}>${words.rig.size_keep}</button>
              </div>
            </div>`}
          ${field({ place: at("hose"), name: "hose", spec: TEXT, value: row.hose, choices: ofFamily(data.hoses, data, system, row.hose), change: (hose) => {
            change(resized(row, hose));
            if (isOwn(row)) ask({ place, before: row.hose });
          } })}
          ${entry("coefficient", (coefficient) => change({ ...retyped(row, coefficient), ...uncounted(row) }))}
          ${entry("origin", (origin) => change({ origin, ...(origin === "handbook" && { coefficient: "" }), ...uncounted(row) }))}
          ${entry("test_pressure", (text) => change({ test_pressure: text }))}
          ${measureView(row, place, ({ typed, readings }) => change({ coefficient: typed, origin: "measured", readings }))}
          <button type="button" class="key" @click=${() => remove("hoses", hoses, place)}>${fill(words.rig.remove_hose, { name: label })}</button>
        </fieldset>`;
    })}
    ${hoses.length < data.bounds.rows ? html`<button type="button" class="key key-wide" @click=${() => set("hoses", withRow(hoses, newHose(data, system, hoses)))}>${words.rig.add_hose}</button>` : nothing}`;
}

// Whether a row has a figure that is not the handbook's to follow the size.
const isOwn = ({ coefficient, origin }) => Boolean(coefficient) && origin !== "handbook";

// What the department's rigs measured of a hose, to be used here; `typed` is null where it is.
const departmentView = (figure, words, use) => html`
  <p>${fill(words.rig.department, figure)}</p>
  ${figure.typed ? html`<button type="button" class="key key-wide" @click=${() => use(figure.typed)}>${words.rig.department_use}</button>` : nothing}`;

// A row for another size: a handbook figure follows, one that was typed or measured stays.
const resized = (row, hose) => (isOwn(row) ? { hose } : { hose, coefficient: "" });

// A figure that was typed, or is said to be another's, is no longer of the readings that were counted.
const uncounted = ({ readings }) => (readings ? { readings: "" } : {});

// A row with another figure typed: the handbook's own is then no longer meant. Nothing typed is the handbook's again.
function retyped({ origin }, coefficient) {
  if (coefficient.trim()) return { coefficient, origin: !origin || origin === "handbook" ? "typed" : origin };
  return { coefficient: "", origin: origin === "typed" ? "handbook" : origin };
}

export function supplyView({ profile, data, system, field, set, remove }) {
  const { words } = data;
  const rows = profile.supply ?? [];
  return html`
    <p>${words.rig.supply_told}</p>
    ${rows.map((row, place) => {
      const change = (changes) => set("supply", changedRow(rows, place, changes));
      const entry = (name) => field({ place: `supply.${place}.${name}`, name, label: words.rig[`supply_${name}`], spec: data.supply_fields[name], value: row[name],
        change: (text) => change({ [name]: text }) });
      return html`
        <fieldset class="rig-hose">
          <legend>${labelOf(data, row.hose)}</legend>
          ${field({ place: `supply.${place}.hose`, name: "hose", spec: TEXT, value: row.hose, choices: ofFamily(data.hoses, data, system, row.hose), change: (hose) => change({ hose }) })}
          ${entry("length")}${entry("limit")}
          <p class="smallprint">${words.rig.limit_told}</p>
          <button type="button" class="key" @click=${() => remove("supply", rows, place)}>${fill(words.rig.remove_hose, { name: labelOf(data, row.hose) })}</button>
        </fieldset>`;
    })}
    ${rows.length < data.bounds.rows ? html`<button type="button" class="key key-wide" @click=${() => set("supply", withRow(rows, newSupply(data, system, rows)))}>${words.rig.add_supply}</button>` : nothing}`;
}
