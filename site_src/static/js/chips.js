// Chips: one of a few, each as wide as it needs, with a longer list beside them where there are many.
import { html } from "../vendor/lit-html/lit-html.js";

const chip = ({ name, value, change }) => (choice) => html`
  <label class="chip">
    <input type="radio" name=${name} .checked=${choice.id === value} @change=${() => change(choice.id)}>
    <span>${choice.chip ?? choice.label}</span>
  </label>`;

// One of a few: radio chips. `choices` are { id, label } and, where the label is long, a shorter `chip`.
export const chips = ({ legend, choices, ...group }) => html`
  <fieldset class="chips">
    <legend>${legend}</legend>
    ${choices.map(chip(group))}
  </fieldset>`;

// The common ones as chips, all the rest in a list beside them.
export function chipsAndList({ name, legend, other, choices, value, change }) {
  const rest = choices.filter((choice) => !choice.common);
  const listed = rest.some((choice) => choice.id === value);
  return html`
    <fieldset class="chips">
      <legend>${legend}</legend>
      ${choices.filter((choice) => choice.common).map(chip({ name, value, change }))}
      <select class="choice" aria-label=${other} ?data-picked=${listed}
        .value=${listed ? value : ""} @change=${(event) => event.target.value && change(event.target.value)}>
        <option value="" ?selected=${!listed}>${other}</option>
        ${rest.map((choice) => html`<option value=${choice.id} ?selected=${choice.id === value}>${choice.label}</option>`)}
      </select>
    </fieldset>`;
}
