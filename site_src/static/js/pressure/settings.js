// What is on the ground: hose, nozzle, length and height of one line, and the wye.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../controls.js";
import { fill } from "../site.js";
import { isWye, stepped } from "./lay.js";

// Trade steps, by entry: step and least value a key goes to.
const STEPS = { flow: [5, 5], pressure: [5, 5], length: [50, 0], rise: [10, -1000] };

export function settingsView({ lay, line, lines, tabs, data, refusal, act }) {
  const { words } = data;
  const number = (name, label, unit) => stepper({
    id: `${line.id}-${name}`,
    name,
    label,
    unit: words.unit[unit],
    value: line[name] ?? line.end[name],
    step: (direction) => {
      const [step, least] = STEPS[name];
      const next = stepped(act.entryOf(line.id, name), step, direction, least);
      if (next !== null) act.change(line.id, name, next);
    },
    type: (text) => act.change(line.id, name, text),
    refusal: refusal?.line === line.id && refusal.field === name ? words.refusal[refusal.code] ?? words.refusal.other : null,
    words,
  });
  return html`
    <section aria-label=${words.pressure.settings}>
      ${tabs.length > 1 ? chips({ name: "edit", legend: words.pressure.edit, choices: tabs, value: line.id, change: act.select }) : nothing}
      ${chipsAndList({
        name: `${line.id}-hose`, legend: `${words.pressure.hose}, ${words.unit.diameter}`, other: words.pressure.other_size, choices: data.hoses,
        value: line.hose, change: (hose) => act.change(line.id, "hose", hose),
      })}
      ${number("length", words.pressure.length, "length")}
      ${isWye(line) ? nothing : nozzle(line, number, data, act)}
      ${number("rise", words.pressure.rise, "length")}
      ${isWye(line) ? nothing : chips({
        name: "crew", legend: words.pressure.crew, value: lay.crew, change: act.crew,
        choices: Object.keys(data.shelf.crews).map((id) => ({ id, label: id })),
      })}
      <div class="rows">
        ${lines.length > 1
          ? html`<button type="button" class="key key-wide" @click=${act.removeWye}>${words.pressure.remove_wye}</button>`
          : html`<button type="button" class="key key-wide" @click=${act.addWye}>${words.pressure.add_wye}</button>`}
      </div>
    </section>`;
}

function nozzle(line, number, data, act) {
  const { words } = data;
  const smooth = line.end.kind === "smooth";
  return html`
    ${chips({
      name: `${line.id}-kind`, legend: words.pressure.nozzle, value: line.end.kind, change: (kind) => act.kind(line.id, kind),
      choices: [{ id: "fog", label: words.pressure.fog }, { id: "smooth", label: words.pressure.smooth }],
    })}
    ${smooth
      ? chipsAndList({
          name: `${line.id}-tip`, legend: `${words.pressure.tip}, ${words.unit.diameter}`, other: words.pressure.other_tip,
          choices: data.tips.map((tip) => ({ ...tip, id: String(tip.tip_in) })), value: line.end.tip,
          change: (tip) => act.tip(line.id, tip),
        })
      : number("flow", words.pressure.flow, "flow")}
    ${number("pressure", words.pressure.nozzle_pressure, "pressure")}`;
}
