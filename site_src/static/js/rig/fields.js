// The fields of a profile as controls: choices as lists, the rest typed, each with its unit and its refusal beside it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { longest } from "../shared/site.js";
import { fieldId, reasonOf } from "./sentences.js";

const DECIMAL = new Set(["number", "quantity"]);

// One field. `change` gets the text as typed or chosen; `shown(kind, entry)` gives what stands in the input.
export function fieldView({ id, label, spec, value, unit = null, options = null, most = longest, refusal, shown, change }) {
  const [refused, unitOf] = [`${id}-refused`, `${id}-unit`];
  const described = [unit && unitOf, refusal && refused].filter(Boolean).join(" ") || nothing;
  const control = options
    ? html`
      <select id=${id} class="choice" .value=${value} aria-invalid=${refusal ? "true" : "false"} aria-describedby=${described}
        @change=${(event) => change(event.target.value)}>
        ${options.map((option) => html`<option value=${option.id} ?selected=${option.id === value}>${option.label}</option>`)}
      </select>`
    : html`
      <span class="typed">
        <input id=${id} autocomplete="off" inputmode=${DECIMAL.has(spec.kind) ? "decimal" : "text"} maxlength=${DECIMAL.has(spec.kind) ? longest : most}
          .value=${spec.kind === "quantity" ? shown(spec.quantity, value) : value}
          aria-invalid=${refusal ? "true" : "false"} aria-describedby=${described}
          @input=${(event) => change(event.target.value)}>
        ${unit ? html`<span id=${unitOf} aria-hidden="true">${unit}</span>` : nothing}
      </span>`;
  return html`
    <div class="field">
      <label for=${id}>${label}</label>
      ${control}
      ${refusal ? html`<p class="refusal" id=${refused} role="alert">${refusal}</p>` : nothing}
    </div>`;
}

// What the fields of a place need in common: words, units, what is refused, and how a typed text becomes an entry.
export function fieldMaker({ data, u, system, problems, shown, tagged }) {
  const { words } = data;
  const refusal = (place) => {
    const found = problems.find((problem) => problem.field === place);
    return found ? reasonOf(found, { data, u }) : null;
  };
  return ({ place, name, label = words.field[name], spec, value = "", change, choices = null }) => fieldView({
    id: fieldId(place),
    label,
    spec,
    value,
    unit: spec.kind === "quantity" ? coefficientUnit(spec, u) : null,
    options: choices ?? (spec.kind === "choice" ? choiceOptions(spec, words, name) : null),
    most: data.bounds.text,
    refusal: refusal(place),
    shown,
    change: (text) => change(spec.kind === "quantity" && text.trim() ? tagged(text, system) : text),
  });
}

const choiceOptions = (spec, words, name) => [
  ...(name === "units" ? [] : [{ id: "", label: words.rig.unset }]),
  ...spec.options.map((id) => ({ id, label: words.option[id] })),
];

const coefficientUnit = (spec, u) => (spec.quantity === "coefficient" ? "C" : u[`u_${spec.quantity}`]);
