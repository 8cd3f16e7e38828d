// Controls for a glove: chips, and steppers that repeat while held.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "./site.js";
import { stepIn } from "./stepped.js";

export { chips, chipsAndList } from "./chips.js";

const HOLD_MS = 500;
const REPEAT_MS = 120;

// A number with a key on either side, under its label and, where there is one, what it should show: `aim`. A key changes it by
// a trade step, `by` its kind, step and least, from `start` where it is empty; `type(text)` takes what is typed or stepped to.
// `usual` is what counts while it is empty, and `left(input)` is told when the finger goes elsewhere.
export function stepper({ id, name, label, aim = null, unit, value, usual = null, by, start = "0", type, left = null, refusal, words }) {
  const step = (direction) => stepIn(/** @type {HTMLInputElement} */ (document.getElementById(id)), { start, by: { ...by, direction }, type });
  const [refused, unitOf] = [`${id}-refused`, `${id}-unit`];
  return html`
    <div class="field">
      <label for=${id} class=${aim ? "aimed" : nothing}>${label}${aim ? html` <span class="aim">${aim}</span>` : nothing}</label>
      <div class="stepper">
        ${key("−", fill(words.pressure.less, { what: label }), () => step(-1))}
        <span class="stepper-value">
          <input id=${id} name=${name} inputmode="decimal" autocomplete="off" .value=${value} placeholder=${usual || nothing}
            aria-invalid=${refusal ? "true" : "false"} aria-describedby=${refusal ? `${unitOf} ${refused}` : unitOf}
            @input=${(event) => type(event.target.value)} @blur=${(event) => left?.(event.target)}>
          <span id=${unitOf} aria-hidden="true">${unit}</span>
        </span>
        ${key("+", fill(words.pressure.more, { what: label }), () => step(1))}
      </div>
      ${refusal ? html`<p class="refusal" id=${refused} role="alert">${refusal}</p>` : nothing}
    </div>`;
}

const key = (sign, label, act) => html`
  <button type="button" class="key" aria-label=${label} @pointerdown=${(event) => holdToRepeat(event, act)}
    @click=${(event) => pressed(event, act)} @contextmenu=${(event) => event.preventDefault()}>${sign}</button>`;

// A held key repeats; the click that ends the hold is not one more.
let repeated = false;

export function pressed(event, act) {
  if (!repeated) act();
  repeated = false;
}

export function holdToRepeat(event, act) {
  repeated = false;
  let isHeld = true;
  let timer = setTimeout(async function again() {
    repeated = true;
    await act(); // on a slow phone it goes no further than is seen
    if (isHeld) timer = setTimeout(again, REPEAT_MS);
  }, HOLD_MS);
  const end = () => {
    isHeld = false;
    clearTimeout(timer);
  };
  for (const kind of ["pointerup", "pointercancel", "pointerleave"]) {
    event.currentTarget.addEventListener(kind, end, { once: true });
  }
}
