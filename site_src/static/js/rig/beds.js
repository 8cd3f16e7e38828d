// The hose beds of a profile: preconnected lines, and master streams, which may be piped to the pump.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fold, foldAll, unfold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { withUsual, withUsualTip } from "../shared/usual.js";
import { changedRow, newBed, newGun, withRow } from "./profile.js";

const TEXT = { kind: "text" };

export const ofFamily = (choices, data, system, value) =>
  choices.filter((choice) => choice.family === data.systems[system].family || choice.id === value);

const BEDS = "bed-"; // one is open at a time

// Open a bed, and fold the others.
export function openBed(place) {
  foldAll(BEDS);
  unfold(`${BEDS}${place}`);
}

export function bedsView({ profile, data, system, u, field, shown, answers, set, remove, redraw }) {
  const { words } = data;
  const beds = profile.beds ?? [];
  const change = (place, changes) => set("beds", changedRow(beds, place, changes));
  const add = (label, bed) => html`<button type="button" class="key" @click=${() => {
    openBed(beds.length);
    set("beds", withRow(beds, bed));
  }}>${label}</button>`;
  const name = fill(words.rig.new_bed, { count: beds.length + 1 });
  return html`
    ${beds.map((bed, place) => fold({
      name: `${BEDS}${place}`, kind: "rig-bed", begins: beds.length === 1, alone: BEDS, redraw,
      summary: bedRow({ bed, place, data, system, u, shown, answer: answers[place] }),
    }, () => bedView({
      bed, data, system, u, answer: answers[place], at: (part) => `beds.${place}.${part}`, field,
      change: (changes) => change(place, changes), remove: () => {
        foldAll(BEDS);
        remove("beds", beds, place);
      },
    })))}
    ${beds.length < data.bounds.rows ? html`<div class="pairs">${add(words.rig.add_bed, newBed(data, system, name))}${add(words.rig.add_gun, newGun(data, system, words.rig.new_gun))}</div>` : nothing}`;
}

// What a bed is in its row: its name, its hose, its length, its nozzle; and the pressure to set.
function bedRow({ bed, place, data, system, u, shown, answer }) {
  const { words } = data;
  const hose = bed.hose ? data.hoses.find(({ id }) => id === bed.hose)?.label : words.rig.piped;
  const nozzle = bed.end.kind === "smooth" ? ofFamily(data.tips, data, system, bed.end.tip).find(({ id }) => id === bed.end.tip)?.label : words.pressure.fog;
  const what = [hose, bed.hose && bed.length ? `${shown("length", bed.length)} ${u.u_length}` : null, nozzle].filter(Boolean).join(" \u00b7 ");
  return html`<span>${bed.name || fill(words.rig.new_bed, { count: place + 1 })}<small>${what}</small></span>
    <b class="bed-answer">${answer?.code ? html`<small>${words.card[answer.code]}</small>` : answer ? html`${answer.pressure}${answer.is_over ? "!" : ""} <small>${u.u_pressure}</small>` : "\u2013"}</b>`;
}

function bedView({ bed, data, system, u, at, field, answer, change, remove }) {
  const { words } = data;
  const spec = data.bed_fields;
  const entry = (name) => field({ place: at(name), name, spec: spec[name], value: bed[name], change: (text) => change({ [name]: text }) });
  return html`
    <div class="bed-fields">
      ${answer?.is_over ? html`<p class="smallprint">${data.words.card.over_test}</p>` : nothing}
      ${field({ place: at("name"), name: "name", label: words.rig.bed_name, spec: TEXT, value: bed.name, change: (name) => change({ name }) })}
      ${field({ place: at("device"), name: "device", label: words.rig.kind_of_line, spec: TEXT, value: bed.device ?? "", change: (device) => change(asDevice(bed, device, data, system)),
        choices: [{ id: "", label: words.rig.hand_line }, ...spec.device.options.map((id) => ({ id, label: words.option[id] }))] })}
      ${field({ place: at("hose"), name: "hose", spec: TEXT, value: bed.hose ?? "", change: (hose) => change(onHose(bed, hose, data)),
        choices: [...(bed.device ? [{ id: "", label: words.rig.piped }] : []), ...ofFamily(data.hoses, data, system, bed.hose)] })}
      ${bed.device && !bed.hose ? nothing : entry("length")}
      ${nozzleView({ bed, data, system, at, field, change })}
      ${bed.device ? html`${entry("loss")}${bed.loss ? entry("loss_at") : nothing}${entry("device_most")}<p class="smallprint">${!bed.loss && answer?.loss ? fill(words.rig.loss_used, { ...u, loss: answer.loss }) : nothing} ${words.rig.loss_told}</p>` : html`
        ${field({ place: at("crew"), name: "crew", spec: TEXT, value: bed.crew, change: (crew) => change({ crew }),
          choices: Object.keys(data.shelf.crews).map((id) => ({ id, label: id })) })}`}
      ${field({ place: at("cap"), name: "cap", spec: TEXT, value: bed.cap ?? "", change: (cap) => change({ cap }),
        choices: [{ id: "", label: words.rig.unset }, ...spec.cap.options.map((id) => ({ id, label: words.option[id] }))] })}
      <button type="button" class="key" @click=${remove}>${fill(words.rig.remove_bed, { name: bed.name })}</button>
    </div>`;
}

// A bed on another hose: a hand line's tip follows; piped, it has no length.
function onHose(bed, hose, data) {
  if (!hose) return { hose, length: "" };
  return bed.device ? { hose } : { hose, end: withUsualTip(data.hoses, bed.end, [bed.hose, hose]) };
}

// A bed as another kind of line: its pressure follows where it was the usual one; only a master stream has a loss and more tips.
function asDevice(bed, device, data, system) {
  const end = withUsual(data, data.systems[system].family, bed.end, {}, [bed.device || "none", device || "none"]);
  return device ? { device, end } : { device, end, loss: "", loss_at: "", device_most: "", tips: [] };
}

function nozzleView({ bed, data, system, at, field, change }) {
  const { words } = data;
  const spec = data.bed_fields;
  const device = bed.device || "none";
  const end = (changes) => change({ end: { ...bed.end, ...changes } });
  const nozzle = (changes) => change({ end: withUsual(data, data.systems[system].family, bed.end, changes, [device, device]) });
  const tips = bed.tips ?? [];
  return html`
    ${field({ place: at("end.kind"), name: "kind", spec: TEXT, value: bed.end.kind, change: (kind) => nozzle(bed.device ? { kind } : withUsualTip(data.hoses, { ...bed.end, kind }, [bed.hose, bed.hose])),
      choices: [{ id: "fog", label: words.pressure.fog }, { id: "smooth", label: words.pressure.smooth }] })}
    ${bed.end.kind !== "smooth" ? field({ place: at("end.flow"), name: "flow", spec: spec.flow, value: bed.end.flow, change: (flow) => end({ flow }) }) : html`
      ${field({ place: at("end.tip"), name: "tip", spec: TEXT, value: bed.end.tip, change: (tip) => nozzle({ tip }), choices: ofFamily(data.tips, data, system, bed.end.tip) })}
      ${!bed.device ? nothing : html`
        ${tips.map((value, count) => field({ place: at(`tips-${count}`), name: "tips", label: fill(words.rig.other_tip, { count: count + 2 }), spec: TEXT, value,
          change: (chosen) => change({ tips: chosen ? tips.map((each, here) => (here === count ? chosen : each)) : tips.filter((_, each) => each !== count) }),
          choices: [{ id: "", label: words.rig.no_tip }, ...ofFamily(data.tips, data, system, value)] }))}
        ${tips.length < data.bounds.tips ? html`<button type="button" class="key" @click=${() => change({ tips: [...tips, bed.end.tip] })}>${words.rig.add_tip}</button>` : nothing}`}`}
    ${field({ place: at("end.pressure"), name: "pressure", spec: spec.pressure, value: bed.end.pressure, change: (pressure) => end({ pressure }) })}`;
}
