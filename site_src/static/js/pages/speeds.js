// Speeds in pump gear: what the chosen rig should show, gear by gear, and what a reading says of it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { calc, Refusal } from "../shared/engine.js";
import { notices } from "../shared/notice.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { answerView, workingsView } from "../speeds/answer.js";
import { KINDS, entriesView, readingsView } from "../speeds/entries.js";
import { keep, kept } from "../shared/store.js";
import { unitsOnce } from "../shared/units.js";

const FROM_RIG = ["idle", "pump_ratio", "axle_ratio", "tyre_rev", "pump_gear_ratio", "governed"];
const USUAL_IDLE = "50@US"; // common practice, said so beside it
const GEARS = ["1", "2", "3", "4", "5", "6"];
const place = document.getElementById("speeds");
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const draft = `speeds:${rig?.id ?? ""}`;
const page = { system: chosenSystem(data.systems), typed: (await kept(draft)) ?? {} };
const unitsOf = unitsOnce(data.systems);
const inputs = shownIn(page);
const asking = answering(question, draw);

const state = {
  words, rig, data, page,
  entry: (name) => page.typed[name] ?? opening(name),
  shown: inputs.shown,
  redraw: asking.redraw,
  gears: () => GEARS.filter((gear) => gear !== rig?.pump_gear),
  change(name, text) {
    page.typed = { ...page.typed, [name]: text };
    keep(draft, page.typed);
    asking.change();
  },
};

function opening(name) {
  if (name === "engine") return rig?.idle ?? "";
  if (name === "idle_pressure") return USUAL_IDLE;
  if (name === "wanted") return "150@US";
  return FROM_RIG.includes(name) ? rig?.[name] ?? "" : "";
}

// The page's one question; entries typed in other units are read once.
async function question() {
  const units = unitsOf(page.system);
  await inputs.read(Object.entries(KINDS).map(([name, kind]) => [kind, state.entry(name)]), units);
  const names = ["engine", ...FROM_RIG, "idle_pressure", "wanted", "pressure_shown", "speed_shown"];
  const entries = Object.fromEntries(names.map((name) => [name, state.entry(name)]));
  const gears = state.gears().map((gear) => ({ gear, ratio: page.typed[`ratio_${gear}`] ?? "" }));
  try {
    return { answer: await calc.ask("gear_table.answer", { entries, gears }, { units }) };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refusal };
  }
}

function draw(answered) {
  const { answer, refusal } = answered ?? {};
  const u = unitWords(words, page.system);
  const given = { ...state, u, answer, refusal };
  render(html`
    ${answer ? answerView(given) : nothing}
    ${notices(refusal ? fill(words.pressure.waiting, { entry: fill(words.speeds[refusal.field], refusal) }) : null)}
    ${readingsView(given)}
    <h2>${words.speeds.entries}</h2>
    <p>${rig ? fill(words.speeds.with_rig, rig) : words.speeds.without_rig}</p>
    ${entriesView(given)}
    ${answer ? workingsView(given) : nothing}`, place);
}

await starting;
await asking.change();
