// What is on the ground: hose, nozzle, length and height of one line, and the wye.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList, stepper } from "../controls.js";
import { isWye, stepped } from "./lay.js";

// The kind of quantity of each entry; a rise steps by its own step.
const KINDS = { flow: "flow", pressure: "pressure", length: "length", rise: "rise" };

export function settingsView({ lay, line, lines, tabs, data, rig, system, u, refusal, shown, act }) {
  const { words } = data;
  const number = (name, label) => stepper({
    id: `${line.id}-${name}`,
    name,
    label,
    unit: u[`u_${KINDS[name]}`],
    value: shown(KINDS[name], line[name] ?? line.end[name]),
    step: (direction) => {
      const step = data.systems[system].steps[KINDS[name]];
      const least = { rise: -Infinity, length: 0 }[name] ?? step;
      const next = stepped(shown(KINDS[name], act.entryOf(line.id, name)), step, direction, least);
      if (next !== null) act.type(line.id, name, next);
    },
    type: (text) => act.type(line.id, name, text),
    refusal: refusal?.line === line.id && refusal.field === name ? words.refusal[refusal.code] ?? words.refusal.other : null,
    words,
  });
  return html`
    <section aria-label=${words.pressure.settings}>
      ${tabs.length > 1 ? chips({ name: "edit", legend: words.pressure.edit, choices: tabs, value: line.id, change: act.select }) : nothing}
      ${beds(line, rig, words, act)}
      ${chipsAndList({
        name: `${line.id}-hose`, legend: `${words.pressure.hose}, ${u.u_diameter}`, other: words.pressure.other_size,
        choices: offered(data.hoses, line.hose, data.systems[system].family),
        value: line.hose, change: (hose) => act.choose(line.id, "hose", hose),
      })}
      ${number("length", words.pressure.length)}
      ${isWye(line) ? nothing : nozzle(line, number, { data, system, u, act })}
      ${number("rise", words.pressure.rise)}
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

// The rig's preconnects, one tap to an answer.
const beds = (line, rig, words, act) => !rig?.beds?.length || isWye(line) ? nothing : html`
  <div class="chips" role="group" aria-label=${words.pressure.beds}>
    <span class="chips-legend">${rig.name}</span>
    ${rig.beds.map((bed) => html`<button type="button" class="key" @click=${() => act.bed(line.id, bed)}>${bed.name}</button>`)}
  </div>`;

// The sizes of the page's family, and the one that is laid, whatever its family.
const offered = (choices, value, family) => choices.filter((choice) => choice.family === family || choice.id === value);

function nozzle(line, number, { data, system, u, act }) {
  const { words } = data;
  const smooth = line.end.kind === "smooth";
  return html`
    ${chips({
      name: `${line.id}-kind`, legend: words.pressure.nozzle, value: line.end.kind, change: (kind) => act.kind(line.id, kind),
      choices: [{ id: "fog", label: words.pressure.fog }, { id: "smooth", label: words.pressure.smooth }],
    })}
    ${smooth
      ? chipsAndList({
          name: `${line.id}-tip`, legend: `${words.pressure.tip}, ${u.u_diameter}`, other: words.pressure.other_tip,
          choices: offered(data.tips, line.end.tip, data.systems[system].family), value: line.end.tip,
          change: (tip) => act.tip(line.id, tip),
        })
      : number("flow", words.pressure.flow)}
    ${number("pressure", words.pressure.nozzle_pressure)}`;
}
