// What the rig should show: the speedometer's figure, every gear side by side, and how each is worked.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { figureView } from "../shared/figure.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";

export function answerView({ words, rig, answer, u, entry }) {
  const told = words.speeds;
  const [own] = answer.rows;
  const readsWheels = rig?.speedometer === "wheels";
  return html`
    <section class="answer answer-still">
      <p class="answer-label" id="answer-label">${told.shows}</p>
      ${figureView(own ? { text: readsWheels ? "0" : own.speed, unit: u.u_road_speed } : { stale: waits(answer.missing.speed, words) })}
      ${own
        ? html`<p class="answer-sum">${fill(told.at, { engine: entry("engine") })}</p>
            ${readsWheels ? html`<p class="answer-sum">${told.shows_wheels}</p>` : rig?.speedometer ? nothing : html`<p class="answer-sum">${told.shows_unknown}</p>`}`
        : nothing}
    </section>
    ${own ? table({ words, rig, answer, u, entry, readsWheels }) : nothing}`;
}

const waits = (missing, words) => fill(words.speeds.waits, { what: missing.map((name) => words.speeds[name]).join(", ") });

const table = ({ words, rig, answer, u, entry, readsWheels }) => html`
  <table>
    <caption>${fill(words.speeds.caption, { engine: entry("engine") })}</caption>
    <thead><tr>
      <th>${words.speeds.gear}</th>
      ${readsWheels ? nothing : html`<th>${fill(words.speeds.speed, u)}</th>`}
      <th>${words.speeds.pump_speed}</th><th>${fill(words.speeds.pressure, u)}</th>
    </tr></thead>
    <tbody>${inOrder(answer.rows, rig).map((row) => html`
      <tr class=${row.gear ? "" : "boxed"}>
        <th scope="row">${gearName(row.gear, words, rig)}</th>
        ${readsWheels ? nothing : html`<td class="strong">${row.speed}</td>`}
        <td>${row.pump_rpm ?? "?"}</td><td>${row.pressure ?? "?"}</td>
      </tr>`)}</tbody>
  </table>
  <p class="formula">${words.speeds.table_note}</p>`;

// First to last; the pump gear first of all where nobody has said which it is.
const inOrder = (rows, rig) => [...rows].sort((one, other) => Number(one.gear ?? rig?.pump_gear ?? 0) - Number(other.gear ?? rig?.pump_gear ?? 0) || 0);

const gearName = (gear, words, rig) =>
  gear ?? (rig?.pump_gear ? fill(words.speeds.gear_pump_named, { gear: rig.pump_gear }) : words.speeds.gear_pump);

// What the readings typed beside the figures say; pressure first, since it outweighs.
export function readingsTold({ words, answer }) {
  const told = words.speeds;
  const pressure = answer.pressure_band;
  const speed = answer.speed_match;
  const level = (fine) => (fine ? "caution" : "stop");
  return html`
    ${pressure ? warning(level(pressure === "as_expected" || pressure === "above" || pressure === "below"), told.pressure_shown, told[`told_${pressure}`]) : nothing}
    ${speed ? warning(level(speed.code === "pump_gear" || speed.code === "no_gear"), told.speed_shown, fill(told[`told_${speed.code}`], speed)) : nothing}`;
}

export function workingsView({ words, answer, u, redraw }) {
  const told = words.speeds;
  const [own] = answer.rows;
  const facts = { ...u, ...answer.terms, pump_rpm: answer.pump_rpm, speed: own?.speed, pressure: answer.pressure, wanted_rpm: answer.wanted_rpm };
  const parts = [["pump", answer.pump_rpm], ["speed", own?.speed], ["pressure", answer.pressure], ["wanted", answer.wanted_rpm]];
  return html`
    <h2>${told.workings}</h2>
    <div class="figures">${parts.map(([part, figure]) => html`
      ${fold({ name: part, kind: "", summary: html`<span>${told[`work_${part}`]}</span><b>${figure ?? "?"}</b>`, redraw }, () => html`
        <p class="working">${figure ? fill(told[`working_${part}`], facts) : waits(answer.missing[part], words)}</p>`)}`)}</div>`;
}
