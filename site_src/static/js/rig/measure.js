// Measuring a hose: readings of two gauges to a coefficient, with how far it can be trusted.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fold, isUnfolded } from "../shared/fold.js";
import { refusalOf } from "../shared/refusal.js";
import { fill } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { tagged } from "../shared/units.js";

const NAMES = ["inlet", "outlet", "flow", "length"];
const KINDS = { inlet: "pressure", outlet: "pressure", flow: "flow", length: "length" };
const blank = () => Object.fromEntries(NAMES.map((name) => [name, ""]));

// Readings by rig and hose, kept as they are typed.
export class Readings {
  constructor(redraw) {
    this.redraw = redraw;
    this.kept = {};
    kept("readings").then((value) => {
      this.kept = { ...value, ...this.kept };
      redraw();
    });
  }

  of(key) {
    return this.kept[key] ?? [blank()];
  }

  set(key, readings) {
    this.kept = { ...this.kept, [key]: readings };
    keep("readings", this.kept);
    this.redraw();
  }
}

const keyOf = (profile, row) => `${profile.id}:${row.hose}`;

// Of the hoses whose readings are in sight: the readings by place, and what stands in their inputs.
export function wanted(profile, readings) {
  const open = (profile.hoses ?? []).map((row, place) => [place, keyOf(profile, row)]).filter(([, key]) => isUnfolded(key));
  return {
    measured: Object.fromEntries(open.map(([place, key]) => [place, readings.of(key)])),
    entries: open.flatMap(([, key]) => readings.of(key).flatMap((reading) => NAMES.map((name) => [KINDS[name], reading[name]]))),
  };
}

// `found` is what calc makes of the readings: { result } or { refusal }.
export function measureView({ readings, profile, row, found: { result = null, refusal = null } = {}, data, u, system, shown, use, redraw }) {
  const key = keyOf(profile, row);
  const { words } = data;
  const typed = readings.of(key);
  const change = (count, name, text) => readings.set(key, typed.map((each, place) =>
    place === count ? { ...each, [name]: text.trim() ? tagged(text, system) : "" } : each));
  const refused = (count, name) =>
    refusal && refusal.reading === count && refusal.field === name && typed[count][name]
      ? words.measure[refusal.code] ?? refusalOf(words, refusal) : null;
  return fold({ name: key, summary: words.measure.title, kind: "measure", redraw }, () => html`
      <p>${words.measure.told}</p>
      ${typed.map((reading, count) => html`
        <fieldset class="reading">
          <legend>${fill(words.measure.reading, { count: count + 1 })}</legend>
          ${NAMES.map((name) => html`
            <label>${words.measure[name]}, ${u[`u_${KINDS[name]}`]}
              <input inputmode="decimal" autocomplete="off" .value=${shown(KINDS[name], reading[name])}
                aria-invalid=${refused(count, name) ? "true" : "false"} @input=${(event) => change(count, name, event.target.value)}>
              ${refused(count, name) ? html`<span class="refusal">${refused(count, name)}</span>` : nothing}
            </label>`)}
          ${typed.length > 1
            ? html`<button type="button" class="key" @click=${() => readings.set(key, typed.filter((_, place) => place !== count))}>${fill(words.measure.remove, { count: count + 1 })}</button>`
            : nothing}
        </fieldset>`)}
      ${typed.length < data.bounds.readings ? html`<button type="button" class="key key-wide" @click=${() => readings.set(key, [...typed, blank()])}>${words.measure.add}</button>` : nothing}
      ${result ? resultView(result, typed.length, words, u, use) : nothing}`);
}

const resultView = (result, count, words, u, use) => html`
  <output class="measure-result">
    <b>${fill(words.measure.result, result)}</b>
    <span>${fill(result.is_lower ? words.measure.lower : words.measure.higher, result)}.
      ${fill(words.measure.example, { ...u, ...result.example })} ${count > 1 ? fill(words.measure.spread, result) : nothing}</span>
  </output>
  ${result.cautions.map((code) => html`<p class="notice">${words.measure[code]}</p>`)}
  <button type="button" class="key key-wide" @click=${() => use(result)}>${words.measure.use}</button>`;
