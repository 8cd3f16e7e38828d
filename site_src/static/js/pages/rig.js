// The Rig page: one truck's profile, kept as it is typed, checked by calc, carried from phone to phone.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chosen as chosenName } from "../shared/choices.js";
import { engine, Refusal } from "../shared/engine.js";
import { live, notices } from "../shared/notice.js";
import { bedsView } from "../rig/beds.js";
import { atHand, chooseRig, chosenSystem } from "../rig/chosen.js";
import { linksView } from "../rig/faults.js";
import { fieldMaker } from "../rig/fields.js";
import { hosesView, supplyView } from "../rig/hoses.js";
import { Keeper } from "../rig/keeper.js";
import { listView } from "../rig/list.js";
import { measureView, Readings } from "../rig/measure.js";
import { copyOf, freeName, newProfile, plainName, withoutRow } from "../rig/profile.js";
import { contextOf, placeName, sentenceOf } from "../rig/sentences.js";
import { offerView } from "../rig/offer.js";
import { Travel, travelView } from "../rig/travel.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { bare, isAsTyped, systemChips, tagged, unitsFor } from "../shared/units.js";

const place = document.getElementById("rig");
const starting = engine();
const data = await pageData();
const { words } = data;
const page = { system: chosenSystem(data.systems), asked: null, notice: null, undo: null, resized: null };
let call = null;

const keeper = new Keeper((reason, id) => {
  if (reason === "conflict") page.notice = words.rig.conflict;
  if (reason === "elsewhere" && id === chosen()?.id) page.notice = words.rig.changed_elsewhere;
  draw();
});
const units = () => unitsFor(data.systems, page.system);
const chosen = () => keeper.profiles.get(chosenName("rig", "")) ?? null;
const readings = new Readings(draw);

const context = (profile = null) => contextOf({ call, data, u: unitWords(words, page.system), system: page.system, profile });
const travel = new Travel({ words, problemsOf, keeper, redraw: draw, taken: workFor, sentence: (problem, profile) => sentenceOf(problem, context(profile)) });

function problemsOf(profile) {
  try {
    return call("rig.problems", { profile, shelf: data.shelf, units: units() });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return [refusal];
  }
}

// The faults of a kept rig: its profile's, and a name that another rig on this phone has too.
function faultsOf(profile) {
  const hasTwin = keeper.all.some((other) => other.id !== profile.id && plainName(other.name) === plainName(profile.name));
  return [...problemsOf(profile), ...(hasTwin ? [{ field: "name", code: "same_name" }] : [])];
}

function workFor(profile) {
  chooseRig(profile);
  page.system = chosenSystem(data.systems);
}

const act = {
  choose: (profile) => {
    workFor(profile);
    draw();
  },
  make: () => addRig(newProfile(data, page.system, freeName(words.rig.new_name, keeper.all))),
  copy: (profile) => addRig(copyOf(profile, freeName(fill(words.rig.copy_name, profile), keeper.all))),
  ask: (id) => {
    page.asked = id;
    draw();
  },
  remove: async (profile) => {
    chooseRig(null);
    page.asked = null;
    page.notice = (await keeper.remove(profile.id)) ? null : words.rig.unremoved;
    draw();
  },
};

async function addRig(profile) {
  await keeper.put(profile);
  act.choose(profile);
}

const shown = (kind, entry = "") =>
  entry.includes("@") && !isAsTyped(entry, page.system) ? call("entry.shown", { units: units(), kind, text: entry }) : bare(entry);

function draw() {
  if (!call) return;
  const profile = chosen();
  render(html`
    ${notices(page.notice, travel.notice)}
    ${live(page.undo
      ? html`<p class="notice notice-low">${words.rig.taken_out} <button type="button" class="key" @click=${page.undo}>${words.rig.put_back}</button></p>` : nothing)}
    ${live(travel.offered ? offerView(travel, { ...context(), call, units: units(), shown }) : nothing)}
    ${listView({ rigs: keeper.all, chosen: profile, asked: page.asked, words, act })}
    ${profile ? editor(profile) : nothing}
    ${systemChips({ systems: data.systems, system: page.system, words, change: (system) => { page.system = system; draw(); } })}
    <h2>${words.rig.section_carry}</h2>
    ${travelView(travel, profile)}`, place);
}

function editor(profile) {
  const u = unitWords(words, page.system);
  const problems = faultsOf(profile);
  const missing = call("rig.missing", { profile });
  const set = (key, value) => {
    page.notice = null;
    page.undo = null;
    page.resized = null;
    keeper.set(profile.id, key, value);
    if (key === "units") workFor(keeper.profiles.get(profile.id));
    draw();
  };
  const remove = (key, rows, row) => {
    set(key, withoutRow(rows, row));
    page.undo = () => set(key, rows);
    draw();
  };
  const told = context(profile);
  const field = fieldMaker({ ...told, system: page.system, problems, shown, tagged });
  const hasFault = (row) => problems.some((problem) => `${problem.field}.`.startsWith(`${row}.`));
  const { shelf } = atHand(call, profile, data.shelf, units());
  const names = (fields) => [...new Set(fields.map((name) => placeName(name, words)))].join(", ");
  const section = (id, content, open) => html`
    <details class="section" ?open=${open}><summary>${words.rig[`section_${id}`]}</summary>${content}</details>`;
  return html`
    ${problems.length ? html`<section class="notice faults" role="status"><p><b>${words.rig.problems}</b></p>
      ${linksView(problems.map((problem) => ({ place: problem.field, sentence: sentenceOf(problem, told) })))}</section>` : nothing}
    <a class="key key-wide" href=${new URL("rig/card/index.html", home)}>${words.rig.card}</a>
    <a class="key key-wide" href=${new URL("rig/recovery/index.html", home)}>${words.rig.recovery}</a>
    ${section("beds", bedsView({ profile, data, system: page.system, u, field, set, remove, answerOf: (bed, place) => (hasFault(`beds.${place}`) ? null : answerOf(bed, shelf)) }), true)}
    ${section("supply", supplyView({ profile, data, system: page.system, field, set, remove }), false)}
    ${data.sections.map(({ id, fields }) => section(id, fields.map((name) =>
      field({ place: name, name, spec: data.fields[name], value: profile[name], change: (text) => set(name, text) })), id === "basics"))}
    ${section("hoses", hosesView({
      profile, data, system: page.system, field, set, remove,
      figures: call("rig.beside_handbook", { profile, shelf: data.shelf, units: units() }),
      asked: page.resized,
      ask: (question) => {
        page.resized = question;
        draw();
      },
      measureView: (row, use) => measureView({
        readings, key: `${profile.id}:${row.hose}`, row, data, u, system: page.system, units: units(), call, shown, use }),
    }), false)}
    <p class="smallprint">${missing.length ? fill(words.rig.missing, { fields: names(missing) }) : words.rig.missing_none} ${words.rig.kept}</p>`;
}

// The pressure of one bed, or null while an entry of it is refused.
function answerOf(bed, shelf) {
  try {
    return call("layout.answer", { layout: call("rig.layout_of", { bed }), shelf, units: units() });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return null;
  }
}

// A link that brings a rig, or that leads to one of its fields.
async function arrive() {
  const { hash } = location;
  if (hash) history.replaceState(null, "", location.pathname);
  await travel.fromLink(hash);
  const field = hash.startsWith("#field-") && document.getElementById(hash.slice(1));
  if (!field) return;
  const section = field.closest("details");
  if (section) section.open = true;
  field.focus();
}

await keeper.load();
call = await starting;
place.replaceChildren();
draw();
await arrive();
addEventListener("hashchange", arrive);
