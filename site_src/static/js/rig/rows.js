// The lists of a profile: hose beds, and hose figures of the rig's own.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { withUsual } from "../usual.js";
import { changedRow, newBed, newHose, withRow } from "./profile.js";

export function bedsView({ profile, data, system, u, field, answerOf, set, remove }) {
  const { words } = data;
  const beds = profile.beds ?? [];
  const change = (place, changes) => set("beds", changedRow(beds, place, changes));
  return html`
    <p>${words.rig.beds_told}</p>
    ${beds.map((bed, place) => bedView({ bed, place, data, system, u, field, answerOf, change, remove: () => remove("beds", beds, place) }))}
    <button type="button" class="key key-wide" @click=${() => set("beds", withRow(beds, newBed(data, system, fill(words.rig.new_bed, { count: beds.length + 1 }))))}>
      ${words.rig.add_bed}</button>`;
}

function bedView({ bed, place, data, system, u, field, answerOf, change, remove }) {
  const { words } = data;
  const at = (name) => `beds.${place}.${name}`;
  const smooth = bed.end.kind === "smooth";
  const end = (changes) => change(place, { end: { ...bed.end, ...changes } });
  const nozzle = (changes) => end(withUsual(data, data.systems[system].family, bed.end, changes));
  const text = { kind: "text" };
  const quantity = (kind) => ({ kind: "quantity", quantity: kind });
  const answer = answerOf(bed);
  return html`
    <fieldset class="bed">
      <legend>${bed.name || fill(words.rig.new_bed, { count: place + 1 })}</legend>
      ${answer ? html`<p class="bed-answer">${fill(words.rig.set_pressure, { ...u, pressure: answer.pressure })}</p>` : ""}
      ${field({ place: at("name"), name: "name", label: words.rig.bed_name, spec: text, value: bed.name, change: (name) => change(place, { name }) })}
      ${field({ place: at("hose"), name: "hose", spec: text, value: bed.hose, choices: hosesOf(data, system, bed.hose), change: (hose) => change(place, { hose }) })}
      ${field({ place: at("length"), name: "length", spec: quantity("length"), value: bed.length, change: (length) => change(place, { length }) })}
      ${field({ place: at("end.kind"), name: "kind", spec: text, value: bed.end.kind, change: (kind) => nozzle({ kind }),
        choices: [{ id: "fog", label: words.pressure.fog }, { id: "smooth", label: words.pressure.smooth }] })}
      ${smooth
        ? field({ place: at("end.tip"), name: "tip", spec: text, value: bed.end.tip, change: (tip) => nozzle({ tip }), choices: tipsOf(data, system, bed.end.tip) })
        : field({ place: at("end.flow"), name: "flow", spec: quantity("flow"), value: bed.end.flow, change: (flow) => end({ flow }) })}
      ${field({ place: at("end.pressure"), name: "pressure", spec: quantity("pressure"), value: bed.end.pressure, change: (pressure) => end({ pressure }) })}
      ${field({ place: at("crew"), name: "crew", spec: text, value: bed.crew, change: (crew) => change(place, { crew }),
        choices: Object.keys(data.shelf.crews).map((id) => ({ id, label: id })) })}
      <button type="button" class="key" @click=${remove}>${fill(words.rig.remove_bed, { name: bed.name })}</button>
    </fieldset>`;
}

const ofFamily = (choices, data, system, value) =>
  choices.filter((choice) => choice.family === data.systems[system].family || choice.id === value);

const hosesOf = (data, system, value) => ofFamily(data.hoses, data, system, value);
const tipsOf = (data, system, value) => ofFamily(data.tips, data, system, value);

export function hosesView({ profile, data, system, field, set, remove, measureView }) {
  const { words } = data;
  const hoses = profile.hoses ?? [];
  return html`
    <p>${words.rig.hoses_told}</p>
    ${hoses.map((row, place) => {
      const change = (changes) => set("hoses", changedRow(hoses, place, changes));
      const at = (name) => `hoses.${place}.${name}`;
      const label = data.hoses.find((choice) => choice.id === row.hose)?.label ?? row.hose;
      return html`
        <fieldset class="bed">
          <legend>${label}</legend>
          ${field({ place: at("hose"), name: "hose", spec: { kind: "text" }, value: row.hose, choices: hosesOf(data, system, row.hose), change: (hose) => change({ hose }) })}
          ${["coefficient", "origin", "test_pressure"].map((name) =>
            field({ place: at(name), name, spec: data.hose_fields[name], value: row[name], change: (text) => change({ [name]: text }) }))}
          ${measureView(row, (coefficient) => change({ coefficient, origin: "measured" }))}
          <button type="button" class="key" @click=${() => remove("hoses", hoses, place)}>${fill(words.rig.remove_hose, { name: label })}</button>
        </fieldset>`;
    })}
    <button type="button" class="key key-wide" @click=${() => set("hoses", withRow(hoses, newHose(data, system)))}>${words.rig.add_hose}</button>`;
}
