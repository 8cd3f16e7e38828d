// Chips: one of a few, each as wide as it needs, with a longer list beside them where there are many.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

// What is marked follows from the state and not from the touch: lit-html sets only what differs from what it set last, and
// where a choice comes or goes the mark of a touch would stay on a chip that now stands for another.
function chosen({ currentTarget }, { choices, value, change }, id) {
  const marks = currentTarget.closest("fieldset").querySelectorAll("input");
  for (const [place, mark] of marks.entries()) mark.checked = choices[place].id === value;
  change(id);
}

// With `retaps`, a touch of the chip that is already chosen says so too: whose choice it is may be what is asked.
const chip = (group) => (choice) => html`
  <label class="chip">
    <input type="radio" name=${group.name} .checked=${choice.id === group.value} @change=${(event) => chosen(event, group, choice.id)}
      @click=${group.retaps && choice.id === group.value ? () => group.change(choice.id) : nothing}>
    <span>${choice.chip ?? choice.label}</span>
  </label>`;

// One of a few: radio chips. `choices` are { id, label } and, where the label is long, a shorter `chip`.
export const chips = ({ legend, ...group }) => html`
  <fieldset class="chips">
    <legend>${legend}</legend>
    ${group.choices.map(chip(group))}
  </fieldset>`;

// The common ones as chips, all the rest in a list beside them.
export function chipsAndList({ retaps = false, name, legend, other, choices, value, change }) {
  const common = choices.filter((choice) => choice.common);
  const rest = choices.filter((choice) => !choice.common);
  const listed = rest.some((choice) => choice.id === value);
  const picked = ({ target }) => {
    const id = target.value;
    target.value = listed ? value : "";
    if (id) change(id);
  };
  return html`
    <fieldset class="chips">
      <legend>${legend}</legend>
      ${common.map(chip({ retaps, name, choices: common, value, change }))}
      <select class="choice" aria-label=${other} ?data-picked=${listed} @change=${picked}>
        <option value="" .selected=${!listed}>${other}</option>
        ${rest.map((choice) => html`<option value=${choice.id} .selected=${choice.id === value}>${choice.label}</option>`)}
      </select>
    </fieldset>`;
}
