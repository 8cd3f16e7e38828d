// The entries of a test as controls: typed or stepped from what stands there, with what was read when new and last beside.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { stepper } from "../shared/controls.js";
import { fill } from "../shared/site.js";
import { tagged } from "../shared/units.js";

// Endings of names, and the kind of quantity they stand for, as calc.service.entries has them.
const KINDS = { f: "temperature", inhg: "vacuum", ft: "length", in: "diameter", psi: "pressure", gpm: "flow", rpm: "speed", s: "seconds" };

export const last = (name) => name.split(".").at(-1);

// Where a reading is taken: "master.at_150" of "master.at_150.panel_psi".
export const placeOf = (name) => name.split(".").slice(0, -1).join(".");

// "master.at_150.panel_psi" as people read it.
export function labelOf(name, { words, answer, u }) {
  return name.split(".").map((part) => {
    const point = answer.points.find(({ id }) => id === part);
    return point ? fill(words.at.point, { ...u, at: point.text }) : words.at[part] ?? words.field[part] ?? words.check[part] ?? part;
  }).join(", ");
}

// An amount: `text` is the entry, `start` what a step begins from where nothing stands yet, `at` where calc tells its problems,
// `aim` what it should show.
export function amountView(view, { id, name, label, kind = kindOf(name), text = "", start = "", at, change, beside = null, aim = null }) {
  const { words, u, shown, data, system, refusal } = view;
  const step = data.systems[system].steps[kind];
  const standing = shown(kind, text);
  return html`
    ${stepper({
      id, name, label, aim, unit: u[`u_${kind}`], value: standing, refusal: refusal(at, id), words,
      by: { kind, step },
      start: shown(kind, start) || "0",
      type: (typed) => change(typed.trim() ? tagged(typed, system) : ""),
    })}
    ${beside ? html`<p class="beside">${beside}</p>` : nothing}`;
}

export const kindOf = (name) => {
  const field = last(name);
  if (field.startsWith("barometer")) return "barometer";
  if (field === "pitot_psi") return "pitot";
  return KINDS[field.split("_").at(-1)] ?? "ratio";
};

// A line to answer: challenge at the left, its yes under the right thumb, no beside it.
export const checkView = ({ words }, { id, label, value, change }) => html`
  <fieldset class="chips check" data-answer=${value ?? nothing}><legend>${label}</legend>
    ${["no", "yes"].map((answer) => html`<label class="chip"><input type="radio" name=${id} .checked=${value === answer} @change=${() => change(answer)}><span>${words.condition[answer]}</span></label>`)}
  </fieldset>`;

export const textView = ({ id, label, value, change, type = "text" }) => html`
  <div class="field">
    <label for=${id}>${label}</label>
    <span class="typed"><input id=${id} type=${type} autocomplete="off" maxlength="200" .value=${value ?? ""} @input=${(event) => change(event.target.value)}></span>
  </div>`;
