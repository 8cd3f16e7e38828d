// What is behind the lights as they are now: the truth table read backwards by calc.diagnosis.interlock.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { chosenRig } from "../rig/chosen.js";
import { fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { shape } from "../shared/warning.js";

const DRAFT = "lights";
const DOUBT = "pump_fails"; // what answers lights that contradict each other
const STATES = ["lit", "dark", "unknown"];
const MARKS = { true: "✓", false: "✕", open: "?" };
const place = document.getElementById("lights");
const starting = calc.start();
const { tables, orders, words } = await pageData();
const rig = await chosenRig();
const fits = tables.filter((table) => !rig?.drive || table.drives.includes(rig.drive));
let state = { table: fits[0].id, lights: {} };

function put(next) {
  state = next;
  keep(DRAFT, state);
  change();
}

const inputs = (names) => names.map((name) => words.input[name]).join(", ");

const tableNow = () => tables.find(({ id }) => id === state.table);

const { change } = answering(() => calc.ask("interlock.behind", { lights: state.lights }, { table: tableNow() }), (answer) => {
  render(html`
    ${fits.length > 1 ? chips({ name: "table", legend: words.lights.drive, value: state.table,
      choices: fits.map(({ id }) => ({ id, label: words.lights_table[id] })), change: (id) => put({ table: id, lights: {} }) }) : nothing}
    <h2>${words.lights.now}</h2>
    ${tableNow().lights.map(({ id }) => chips({ name: id, legend: words.lamp[id], value: state.lights[id] ?? "unknown",
      choices: STATES.map((each) => ({ id: each, label: words.lamp_state[each] })),
      change: (is) => put({ ...state, lights: { ...state.lights, [id]: is } }) }))}
    <div role="status">${!answer ? nothing : answer.possible ? behind(answer) : impossible()}</div>`, place);
  for (const section of document.querySelectorAll("[data-table]")) section.hidden = !fits.some(({ id }) => id === section.dataset.table);
});

const behind = ({ dark, inputs: rows }) => html`
  <h2>${words.lights.behind}</h2>
  ${dark.map(({ id, missing, perhaps }) => html`
    <p><b>${missing.length ? fill(words.lights.dark_missing, { light: words.lamp[id], inputs: inputs(missing) }) : nothing}
    ${perhaps.length ? fill(words.lights.dark_perhaps, { light: words.lamp[id], inputs: inputs(perhaps) }) : nothing}</b></p>`)}
  <ul class="inputs">${rows.map(({ id, is }) => html`
    <li><b aria-hidden="true">${MARKS[is]}</b><span>${words.input[id]}</span><span>${words.lights[`is_${is}`]}</span></li>`)}
  </ul>`;

const impossible = () => html`
  <section class="plate hatched shout" role="alert">
    <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
    <h2>${words.lights.impossible}</h2><p>${words.lights.impossible_do}</p><p>${orders[DOUBT].short}</p>
  </section>`;

const [left] = await Promise.all([kept(DRAFT), starting]);
if (fits.some(({ id }) => id === left?.table)) state = left;
place.replaceChildren();
change();
