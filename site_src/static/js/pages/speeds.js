// Speeds in pump gear: what the chosen rig should show, gear by gear, and what a reading says of it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { engine, Refusal } from "../shared/engine.js";
import { notices } from "../shared/notice.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { answerView, workingsView } from "../speeds/answer.js";
import { entriesView, readingsView } from "../speeds/entries.js";
import { keep, kept } from "../shared/store.js";
import { bare, isAsTyped, systemChips, unitsFor } from "../shared/units.js";

const FROM_RIG = ["idle", "pump_ratio", "axle_ratio", "tyre_rev", "pump_gear_ratio", "governed"];
const USUAL_IDLE = "50@US"; // common practice, said so beside it
const GEARS = ["1", "2", "3", "4", "5", "6"];
const place = document.getElementById("speeds");
const starting = engine();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const draft = `speeds:${rig?.id ?? ""}`;
const page = { system: chosenSystem(data.systems), typed: (await kept(draft)) ?? {} };
let call = null;

const state = {
  words, rig, data, page,
  entry: (name) => page.typed[name] ?? opening(name),
  shown: (kind, entry) => (entry.includes("@") && !isAsTyped(entry, page.system) ? call("entry.shown", { units: units(), kind, text: entry }) : bare(entry)),
  gears: () => GEARS.filter((gear) => gear !== rig?.pump_gear),
  change(name, text) {
    page.typed = { ...page.typed, [name]: text };
    keep(draft, page.typed);
    draw();
  },
};

function opening(name) {
  if (name === "engine") return rig?.idle ?? "";
  if (name === "idle_pressure") return USUAL_IDLE;
  if (name === "wanted") return "150@US";
  return FROM_RIG.includes(name) ? rig?.[name] ?? "" : "";
}

const units = () => unitsFor(data.systems, page.system, [page.typed, USUAL_IDLE]);

function worked() {
  const names = ["engine", ...FROM_RIG, "idle_pressure", "wanted", "pressure_shown", "speed_shown"];
  const entries = Object.fromEntries(names.map((name) => [name, state.entry(name)]));
  const gears = state.gears().map((gear) => ({ gear, ratio: page.typed[`ratio_${gear}`] ?? "" }));
  try {
    return { answer: call("gear_table.answer", { entries, gears, units: units() }) };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refusal };
  }
}

function draw() {
  const u = unitWords(words, page.system);
  const { answer, refusal } = worked();
  const given = { ...state, u, answer, refusal };
  render(html`
    ${answer ? answerView(given) : nothing}
    ${notices(answer ? null : words.pressure.waiting)}
    ${readingsView(given)}
    <h2>${words.speeds.entries}</h2>
    <p>${rig ? fill(words.speeds.with_rig, rig) : words.speeds.without_rig}</p>
    ${entriesView(given)}
    ${systemChips({
      systems: data.systems, system: page.system, words,
      change: (system) => {
        page.system = system;
        draw();
      },
    })}
    ${answer ? workingsView(given) : nothing}`, place);
}

call = await starting;
draw();
