// The tray: what can be changed of the line that was touched, one part of it open at a time.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips, chipsAndList } from "../shared/controls.js";
import { bare } from "../shared/units.js";
import { entryStepper } from "./fields.js";
import { DEVICES, JOINTS, NOZZLES, isInto, isJoint, isSpare } from "./layout.js";
import { ofRig, offered, ownFirst } from "./offered.js";
import { NOW, tabOf, tabsOf } from "./tabs.js";

export function trayView(page) {
  const { line, lines, tab, refusal, layout, words, labelOf, act } = page;
  const wrong = refusal && (refusal.line ?? line.id) === line.id ? tabOf(refusal, layout) : null;
  const key = (name) => html`
    <button type="button" class="tab" aria-pressed=${name === tab ? "true" : "false"} ?data-wrong=${name === wrong} @click=${() => act.open(name)}>
      <b>${words.tab[name]}</b><span>${valueOf(name, page)}</span></button>`;
  const isNow = tab === NOW;
  return html`
    <section class="tray" aria-label=${words.pressure.settings} data-settings>
      ${lines.length > 1 && !isNow ? html`<h2>${labelOf(line.id)}</h2>` : nothing}
      ${isNow ? nothing : html`<div class="tabs" role="group" aria-label=${words.pressure.parts}>${tabsOf(line).map(key)}</div>`}
      <div class="tray-open" data-tab=${tab}>${(isNow ? now : PARTS[tab])(page)}</div>
    </section>`;
}

// What stands in a part that is not open.
function valueOf(name, { line, answer, data, words, u, shown, sizeAlone }) {
  const { end } = line;
  const read = answer?.lines.find(({ id }) => id === line.id);
  if (name === "hose") return sizeAlone(line);
  if (name === "length") return `${shown("length", line.length)} ${u.u_length}`;
  if (name === "height") return read?.height ? `${read.is_below ? "\u2212" : "+"}${read.height} ${u.u_length}` : read ? words.pressure.level : "–";
  if (name === "nozzle") return end.kind === "smooth" ? data.tips.find(({ id }) => id === end.tip)?.chip ?? bare(end.tip) : shown("flow", end.flow);
  return "…";
}

const PARTS = { hose, length, nozzle, height, more };

const number = ({ line, data, system, u, refusal, shown, act }, name, label, blank = "") => entryStepper({
  of: line.id, name, label, blank, data, system, u, refusal, shown,
  entry: line[name] ?? line.end[name], change: (text) => act.type(line.id, name, text),
});

function hose({ line, rig, own, beds, faultyBeds, data, system, words, u, act }) {
  return html`
    ${ofRig({ line, rig, own, beds, faultyBeds, data, words, act })}
    ${chipsAndList({
      name: "hose", legend: `${words.pressure.hose}, ${u.u_diameter}`, other: words.pressure.other_size,
      choices: ownFirst(data.hoses, line.hose, data.systems[system].family, own),
      value: line.hose, change: (chosen) => act.choose(line.id, "hose", chosen),
    })}`;
}

function length(page) {
  const { line, data, system, words, u, shown, act } = page;
  const stands = shown("length", line.length);
  return html`
    <div class="likely" role="group" aria-label=${words.pressure.likely}>${data.systems[system].likely_lengths.map((each) => html`
      <button type="button" class="key" aria-label="${each} ${u.u_length}" aria-pressed=${stands === String(each) ? "true" : "false"} @click=${() => act.type(line.id, "length", String(each))}>${each}</button>`)}
    </div>
    ${number(page, "length", words.pressure.length)}`;
}

function nozzle(page) {
  const { line, data, system, words, u, act } = page;
  const { kind } = line.end;
  return html`
    ${chips({
      name: "kind", legend: words.pressure.nozzle, value: kind, change: (chosen) => act.kind(line.id, chosen),
      choices: NOZZLES.map((id) => ({ id, label: words.pressure[id] })),
    })}
    ${kind === "automatic" ? number(page, "least", words.pressure.least) : nothing}
    ${kind === "smooth"
      ? chipsAndList({
          name: "tip", legend: `${words.pressure.tip}, ${u.u_diameter}`, other: words.pressure.other_tip,
          choices: offered(data.tips, line.end.tip, data.systems[system].family), value: line.end.tip,
          change: (tip) => act.tip(line.id, tip),
        })
      : number(page, "flow", kind === "automatic" ? words.pressure.greatest : words.pressure.flow)}
    ${number(page, "pressure", kind === "inlet" ? words.pressure.inlet_pressure : words.pressure.nozzle_pressure)}`;
}

// The height as a number, and as a count of floors for crews that think in floors.
function height(page) {
  const { line, words, act } = page;
  return html`
    ${number(page, "height", words.pressure.height)}
    ${!act.hasFloor() ? nothing : html`
      <div class="likely" role="group" aria-label=${words.pressure.floors}>
        ${[1, -1].map((direction) => html`<button type="button" class="key" @click=${() => act.floor(line.id, direction)}>${words.pressure[direction > 0 ? "floor_up" : "floor_down"]}</button>`)}
      </div>`}`;
}

function more(page) {
  const { layout, line, answer, data, words, act, hasRoom } = page;
  const joint = isJoint(line);
  const isDevice = line.device !== "none";
  const usualLoss = answer?.lines.find(({ id }) => id === line.id)?.appliance ?? "";
  const key = (name, press) => html`<button type="button" class="key" @click=${press}>${words.pressure[name]}</button>`;
  return html`
    ${line.end.kind === "inlet" || isInto(line) ? nothing : chips({
      name: "device", legend: words.pressure.device, value: line.device, change: (device) => act.choose(line.id, "device", device),
      choices: (joint ? JOINTS : DEVICES).map((id) => ({ id, label: words.device[id] })),
    })}
    ${isDevice ? number(page, "loss", words.pressure.loss, usualLoss) : nothing}
    ${["master", "aerial"].includes(line.device) && line.loss ? number(page, "loss_at", words.pressure.loss_at, answer?.lines.find(({ id }) => id === line.id)?.end_flow ?? "") : nothing}
    ${["master", "aerial"].includes(line.device) ? number(page, "device_most", words.pressure.device_most) : nothing}
    ${["master", "aerial"].includes(line.device) && !line.loss ? html`<p class="plate-note">${words.pressure[`loss_${line.device}`]}</p>` : nothing}
    ${joint || isInto(line) || line.end.kind === "inlet" || isDevice ? nothing : chips({
      name: "crew", legend: words.pressure.crew, value: layout.crew, change: act.crew,
      choices: Object.keys(data.shelf.crews).map((id) => ({ id, label: id })),
    })}
    ${chipsAndList({
      name: "runs", legend: words.pressure.runs, other: words.pressure.other_runs, choices: data.runs,
      value: line.runs, change: (runs) => act.choose(line.id, "runs", runs),
    })}
    <div class="likely">
      ${hasRoom("second") ? key("add_second", act.addSecond) : nothing}
      ${hasRoom("twin") ? key("add_twin", act.addTwin) : nothing}
      ${joint ? key("unjoin", act.unjoin) : nothing}
      ${isSpare(layout, line.id) ? key("remove", act.remove) : nothing}
    </div>`;
}

// What flows now: the pressure on the pump's gauge, to slide or to type, and whether easier lines are throttled.
function now({ layout, answer, flowing, scale, data, system, u, refusal, shown, act, words }) {
  const gated = answer?.lines.some((line) => line.gate);
  const stands = flowing ? flowing.pressure : "0";
  const step = data.systems[system].steps.pressure;
  return html`
    <p class="plate-note">${words.now.tap}</p>
    <input class="slide" type="range" aria-label=${words.now.gauge} min="0" max=${scale?.end ?? 0} step=${step} .value=${stands.replace(",", ".")}
      aria-valuetext="${stands} ${u.u_pressure}" @input=${(event) => act.now({ pressure: act.tag(event.target.value) })}>
    ${entryStepper({
      of: "now", name: "gauge", label: words.now.gauge, entry: layout.now.pressure, blank: answer?.pressure ?? "",
      data, system, u, refusal, shown, change: (text) => act.now({ pressure: act.tag(text) }),
    })}
    ${gated ? chips({
      name: "gates", legend: words.now.gates, value: layout.now.gates, change: (gates) => act.now({ gates }),
      choices: ["set", "open"].map((id) => ({ id, label: words.now[`gates_${id}`] })),
    }) : nothing}`;
}
