// What the speeds page is told: the rig's gearing, from its profile or typed, and what was read at the panel.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { stepper } from "../shared/controls.js";
import { fold } from "../shared/fold.js";
import { fieldView } from "../rig/fields.js";
import { refusalOf } from "../shared/refusal.js";
import { fill } from "../shared/site.js";
import { tagged } from "../shared/units.js";
import { readingsTold } from "./answer.js";

const RPM_STEP = 50;
export const KINDS = { idle_pressure: "pressure", wanted: "pressure", pressure_shown: "pressure", speed_shown: "road_speed" };
const NUMBERS = ["idle", "pump_ratio", "axle_ratio", "tyre_rev", "pump_gear_ratio", "governed"];

const refused = (given, name, gear) => {
  const { refusal, words } = given;
  return refusal?.field === name && refusal.gear === gear ? refusalOf(words, refusal) : null;
};

function amount(given, name) {
  const kind = KINDS[name];
  const { words, u, entry, shown, change, page, data } = given;
  const value = kind ? shown(kind, entry(name)) : entry(name);
  const put = (text) => change(name, kind && text.trim() ? tagged(text, page.system) : text);
  const size = kind ? data.systems[page.system].steps[kind] : RPM_STEP;
  return stepper({
    id: `speeds-${name}`, name, label: words.speeds[name], unit: kind ? u[`u_${kind}`] : words.speeds.rpm, value, words,
    by: { kind: kind ?? "speed", step: size, least: 0 },
    type: put,
    refusal: refused(given, name),
  });
}

const number = (given, name, label, gear) => fieldView({
  id: `speeds-${name}`, label, spec: { kind: "number" }, value: given.entry(name), refusal: refused(given, gear ? "ratio" : name, gear),
  shown: null, change: (text) => given.change(name, text),
});

export function readingsView(given) {
  const { words, answer, u, change, page } = given;
  const told = words.speeds;
  return html`
    ${amount(given, "engine")}
    <h2>${told.reads}</h2>
    ${answer ? readingsTold(given) : nothing}
    ${given.rig?.speedometer === "wheels" ? nothing : amount(given, "speed_shown")}
    ${amount(given, "pressure_shown")}
    ${page.typed.speed_shown || page.typed.pressure_shown
      ? html`<button type="button" class="key" @click=${() => { change("speed_shown", ""); change("pressure_shown", ""); }}>${told.clear}</button>` : nothing}
    <p><b>${told.no_throttle}</b></p>
    ${amount(given, "wanted")}
    ${answer?.wanted_rpm
      ? html`<p class="notice">${fill(told.wanted_told, { ...u, pressure: answer.terms.wanted, rpm: answer.wanted_rpm })} ${answer.above_governed ? told.wanted_above : ""}</p>` : nothing}`;
}

export function entriesView(given) {
  const { words, page } = given;
  const told = words.speeds;
  return html`
    ${amount(given, "idle_pressure")}
    <p class="formula">${page.typed.idle_pressure ? told.idle_own : told.idle_usual}</p>
    ${NUMBERS.map((name) => number(given, name, told[name]))}
    ${fold({ name: "ratios", kind: "measure", summary: told.ratios, redraw: given.redraw }, () => html`
      <p>${told.ratios_told}</p>
      ${given.gears().map((gear) => number(given, `ratio_${gear}`, fill(told.ratio, { gear }), gear))}`)}`;
}
