// Where and with what the rig is tested: source, suction, tips, gauges and who reads them.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { fill } from "../shared/site.js";
import { amountView, textView } from "./entries.js";
import { ABOUT } from "./record.js";
import { sitePicture } from "./site_picture.js";

const PUT_IN = ["air_f", "water_f", "barometer_inhg", "altitude_ft"];
const FROM_DRAFT = ["lift_ft", "depth_ft", "strainer_ft", "suction_length_ft"];
const COUNTS = ["1", "2", "3", "4"];
const MOST_GAUGES = 12; // besides the master, as calc.service.file has it

export function siteView(view) {
  const { words, record, act, data, system, besideOf, page } = view;
  const { conditions } = record;
  const family = data.systems[system].family;
  const amount = (name) => amountView(view, {
    id: name, name, label: words.field[name], text: conditions[name] ?? "", start: data.starts[name] ?? "",
    at: [`conditions.${name}`], change: (text) => act.condition(name, text), beside: besideOf(view, "conditions", name),
  });
  const choice = (name, choices, value = conditions[name] ?? "", change = (id) => act.condition(name, id)) =>
    chips({ name, legend: words.condition[name], value, choices, change });
  page.isPanelOpen ??= ["meters", "gauges", "auxiliary"].some((name) => !record.rig[name]) || record.rig.foam === "proportioner" && !conditions.foam_by; // asked once for a rig
  const isDraft = conditions.source !== "pressurised";
  return html`
    ${sitePicture(view, isDraft)}
    ${choice("source", ["draft", "pressurised"].map((id) => ({ id, label: words.condition[id] })))}
    ${isDraft ? nothing : html`<p class="notice">${words.condition.pressurised_told}</p>`}
    ${isDraft ? html`
      ${choice("suction_size_in", data.suction[family].map(([size, label]) => ({ id: `${size}@US`, label })))}
      ${choice("suction_lines", COUNTS.map((id) => ({ id, label: id })))}
      ${FROM_DRAFT.map(amount)}` : nothing}
    ${PUT_IN.map(amount)}
    ${choice("flow_by", ["pitot", "meter"].map((id) => ({ id, label: words.condition[id] })))}
    ${conditions.flow_by === "meter" ? nothing : tips(view, family)}
    <details class="section" ?open=${page.isPanelOpen}><summary>${words.condition.panel}</summary>
    ${choice("meters", ["0", ...COUNTS].map((id) => ({ id, label: id })), record.rig.meters ?? "", (id) => act.rig("meters", id))}
    ${choice("gauges", Array.from({ length: MOST_GAUGES + 1 }, (_, count) => ({ id: `${count}`, label: `${count}` })), record.rig.gauges ?? "", (id) => act.rig("gauges", id))}
    ${record.rig.foam && record.rig.foam !== "none" ? choice("foam_by", data.standards[record.standard.id][record.standard.kind].foam?.methods.map((id) => ({ id, label: words.condition[id] })) ?? []) : nothing}
    ${choice("auxiliary", ["yes", "no"].map((id) => ({ id, label: words.condition[id] })), record.rig.auxiliary ?? "", (id) => act.rig("auxiliary", id))}
    </details>
    <details class="section"><summary>${words.condition.accuracy}</summary>
    <p>${words.condition.accuracy_told}</p>
    ${Object.entries(data.accuracy).filter(([name]) => name in words.accuracy).map(([name, usual]) => amountView(view, {
      id: `accuracy-${name}`, name: name, label: `${words.accuracy[name]} (±${view.shown(usual.kind, usual.text)})`, kind: usual.kind,
      text: record.accuracy[name] ?? "", start: usual.text, at: [`accuracy.${name}`], change: (text) => act.accuracy(name, text),
    }))}
    </details>
    ${equipment(view)}
    <details class="section"><summary>${words.condition.about}</summary>
    ${ABOUT.map((name) => textView({ id: name, label: words.field[name], value: record.conditions[name] ?? "", change: (text) => act.condition(name, text) }))}
    </details>
    <h2>${words.condition.tester}</h2>
    ${["tester", "witness"].map((name) => textView({ id: name, label: words.condition[name], value: record.people[name], change: (text) => act.person(name, text) }))}
    ${textView({ id: "notes", label: words.condition.notes, value: record.notes, change: act.notes })}`;
}

function tips({ words, record, act, data }, family) {
  const chosen = record.conditions.tips_in ?? [];
  return html`
    <fieldset class="chips"><legend>${words.condition.tips_in}</legend>
      ${data.tips.filter((tip) => tip.family === family || chosen.includes(tip.id)).map((tip) => html`
        <label class="chip"><input type="checkbox" .checked=${chosen.includes(tip.id)} @change=${(event) => act.tipAtHand(tip.id, event.target.checked)}><span>${tip.chip}</span></label>`)}
    </fieldset>`;
}

const equipment = ({ words, record, act }) => html`
  <details class="section"><summary>${words.condition.equipment}</summary>
  <p>${words.condition.equipment_told}</p>
  ${record.equipment.map((row, place) => html`
    <fieldset class="bed"><legend>${row.what || words.condition.what}</legend>
      ${["what", "serial", "calibrated", "due"].map((name) => textView({ id: `${name}-${place}`, label: words.condition[name], value: row[name],
        type: ["calibrated", "due"].includes(name) ? "date" : "text", change: (text) => act.equipment(place, { [name]: text }) }))}
      <button type="button" class="key" @click=${() => act.equipment(place, null)}>${fill(words.condition.remove, { what: row.what || words.condition.what })}</button>
    </fieldset>`)}
  <button type="button" class="key key-wide" @click=${() => act.equipment(record.equipment.length, {})}>${words.condition.add}</button></details>`;
