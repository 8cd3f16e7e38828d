// What is missing or cannot be used, as people read it: calc's names of readings, times and facts, each a link to its field.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill, home } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { labelOf } from "./entries.js";

const AT_SITE = ["source", "lift_ft", "suction_size_in", "suction_length_ft", "suction_lines", "altitude_ft", "tips_in", "meters", "gauges", "foam_by"];

export function missingWord(name, view) {
  const { words, answer } = view;
  if (name.startsWith("due_")) return fill(words.missing.due, { at: minutes(Number(name.slice(4))) });
  if (name.startsWith("rig.")) return words.missing[name.slice(4)];
  const last = name.split(".").at(-1);
  const isSection = answer.plan.tests.some(({ id }) => id === name);
  if (answer.points.some(({ id }) => id === name.split(".")[0])) return labelOf(name, view); // the same reading is taken at each point
  return words.field[last] ?? words.check[last] ?? words.missing[name] ?? (isSection ? words.missing.section : name);
}

// What one part still wants, in a row; what lies on another page leads there.
export function missingView(names, view, test) {
  return html`<span class="wants">${[...new Set(names)].map((name, place) => html`${place ? ", " : nothing}${linked(name, view, test)}`)}</span>`;
}

function linked(name, view, test) {
  const word = missingWord(name, view);
  if (name.startsWith("rig.")) return html`<a href=${rigPage(name.slice(4))}>${word}</a>`;
  const isHere = test.fields.some(({ id }) => id === name);
  return !isHere && AT_SITE.includes(name) ? html`<a href="#${view.record.id}/site/${name}">${word}</a>` : word;
}

// What keeps a plan from being made, and entries that cannot be used.
export function askView(view) {
  const { words, answer } = view;
  const asked = answer.problems.filter(({ place }) => words.ask[lastOf(place)] && !answer.plan);
  const wrong = answer.problems.filter((problem) => !asked.includes(problem));
  const list = (title, rows) => rows.length === 0 ? nothing : html`
    <section class="notice"><div><h2>${title}</h2><div class="rows">${rows}</div></div></section>`;
  return html`
    ${list(words.test.no_plan, asked.map(({ place }) => html`<a class="key key-wide" href=${hrefOf(place, view)}>${words.ask[lastOf(place)]}</a>`))}
    ${list(words.test.refused, wrong.map(({ place }) => html`<a class="key key-wide" href=${hrefOf(place, view)}>${labelOf(namesOf(place), view)}${colon} ${view.refusal([place])}</a>`))}`;
}

// The Rig page at the field that is wanted, by calc's name for it or the profile's own.
const PROFILE = { governed_rpm: "governed", stages: "pump_stages", tank_gal: "tank", rated_gpm: "pump_rated" };
const rigPage = (name) => new URL(`rig/#field-${PROFILE[name] ?? name}`, home).href;
const lastOf = (place) => place.split(".").at(-1);

// The name of the reading in a place such as "tests.capacity.draft.pitot_psi.0".
const namesOf = (place) => place.split(".").slice(place.startsWith("tests.") ? 2 : 1).filter((part) => part !== "draft" && !/^\d+$/.test(part)).join(".");

function hrefOf(place, { record }) {
  const [kind, part, ...rest] = place.split(".");
  if (kind === "rig" && !["meters", "gauges"].includes(part)) return rigPage(part);
  if (kind !== "tests") return `#${record.id}/site/${part}`;
  return `#${record.id}/${part}/${rest.filter((each) => each !== "draft").join("-").replace(/-(\d+)$/, (_, count) => `-${Number(count) + 1}`)}`;
}
