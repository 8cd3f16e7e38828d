// The Rig page: one truck's profile, kept as it is typed, checked by calc, carried from phone to phone.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { chosen as chosenName } from "./choices.js";
import { engine, Refusal } from "./engine.js";
import { live, notices } from "./notice.js";
import { chooseRig, chosenSystem, shelfOf } from "./rig/chosen.js";
import { fieldMaker } from "./rig/fields.js";
import { Keeper } from "./rig/keeper.js";
import { listView } from "./rig/list.js";
import { measureView, Readings } from "./rig/measure.js";
import { copyOf, newProfile, placeName, withoutRow } from "./rig/profile.js";
import { bedsView, hosesView } from "./rig/rows.js";
import { offerView, Travel, travelView } from "./rig/travel.js";
import { fill, home, pageData, unitWords } from "./site.js";
import { bare, systemChips, tagged, unitsFor } from "./units.js";

const place = document.getElementById("rig");
const starting = engine();
starting.catch(() => {}); // told below
const data = await pageData();
const { words } = data;
const page = { system: chosenSystem(data.systems), asked: null, notice: null, undo: null };
let call = null;

const keeper = new Keeper((reason, id) => {
  if (reason === "unkept") page.notice = words.rig.unkept;
  if (reason === "conflict") page.notice = words.rig.conflict;
  if (reason === "elsewhere" && id === chosen()?.id) page.notice = words.rig.changed_elsewhere;
  draw();
});
const units = () => unitsFor(data.systems, page.system);
const chosen = () => keeper.profiles.get(chosenName("rig", "")) ?? null;
const readings = new Readings(draw);

const travel = new Travel({ words, problemsOf, keeper, redraw: draw, taken: standBeside });

function problemsOf(profile) {
  try {
    return call("rig.problems", { profile, shelf: data.shelf, units: units() });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return [refusal];
  }
}

function standBeside(profile) {
  chooseRig(profile);
  page.system = chosenSystem(data.systems);
}

const act = {
  choose: (profile) => {
    standBeside(profile);
    draw();
  },
  make: () => addRig(newProfile(data, page.system, words.rig.new_name)),
  copy: (profile) => addRig(copyOf(profile, fill(words.rig.copy_name, profile))),
  ask: (id) => {
    page.asked = id;
    draw();
  },
  remove: async (profile) => {
    chooseRig(null);
    page.asked = null;
    await keeper.remove(profile.id);
  },
};

async function addRig(profile) {
  await keeper.put(profile);
  act.choose(profile);
}

const shown = (kind, entry = "") =>
  entry.includes("@") && !entry.endsWith(`@${page.system}`) ? call("entry.shown", { units: units(), kind, text: entry }) : bare(entry);

function draw() {
  if (!call) return;
  const profile = chosen();
  render(html`
    ${notices(page.notice, travel.notice)}
    ${live(page.undo
      ? html`<p class="notice notice-low">${words.rig.taken_out} <button type="button" class="key" @click=${page.undo}>${words.rig.put_back}</button></p>` : nothing)}
    ${live(offerView(travel))}
    ${listView({ rigs: keeper.all, chosen: profile, asked: page.asked, words, act })}
    ${profile ? editor(profile) : nothing}
    ${systemChips({ systems: data.systems, system: page.system, words, change: (system) => { page.system = system; draw(); } })}
    <h2>${words.rig.section_carry}</h2>
    ${travelView(travel, profile)}`, place);
}

function editor(profile) {
  const u = unitWords(words, page.system);
  const problems = problemsOf(profile);
  const missing = call("rig.missing", { profile });
  const set = (key, value) => {
    page.notice = null;
    page.undo = null;
    keeper.set(profile.id, key, value);
    if (key === "units") standBeside(keeper.profiles.get(profile.id));
    draw();
  };
  const remove = (key, rows, row) => {
    set(key, withoutRow(rows, row));
    page.undo = () => set(key, rows);
    draw();
  };
  const field = fieldMaker({ data, u, system: page.system, problems, shown, tagged });
  const shelf = shelfOf(call, profile, data.shelf, units());
  const names = (fields) => [...new Set(fields.map((name) => placeName(name, words)))].join(", ");
  const section = (id, content, open) => html`
    <details class="section" ?open=${open}><summary>${words.rig[`section_${id}`]}</summary>${content}</details>`;
  return html`
    ${problems.length ? html`<p class="notice">${fill(words.rig.problems, { fields: names(problems.map((problem) => problem.field)) })}</p>` : nothing}
    <a class="key key-wide" href=${new URL("rig/card/index.html", home)}>${words.rig.card}</a>
    <a class="key key-wide" href=${new URL("rig/recovery/index.html", home)}>${words.rig.recovery}</a>
    ${section("beds", bedsView({ profile, data, system: page.system, u, field, set, remove, answerOf: (bed) => answerOf(bed, shelf) }), true)}
    ${data.sections.map(({ id, fields }) => section(id, fields.map((name) =>
      field({ place: name, name, spec: data.fields[name], value: profile[name], change: (text) => set(name, text) })), id === "basics"))}
    ${section("hoses", hosesView({
      profile, data, system: page.system, field, set, remove,
      measureView: (row, use) => measureView({
        readings, key: `${profile.id}:${row.hose}`, row, data, u, system: page.system, units: units(), call, shown, use }),
    }), false)}
    <p class="smallprint">${missing.length ? fill(words.rig.missing, { fields: names(missing) }) : words.rig.missing_none} ${words.rig.kept}</p>`;
}

// The pressure of one bed, or null while an entry of it is refused.
function answerOf(bed, shelf) {
  try {
    return call("reading.answer", { lay: call("rig.lay_of", { bed }), shelf, units: units() });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return null;
  }
}

await keeper.load();
try {
  call = await starting;
} catch {
  render(html`<p class="notice" role="alert">${words.engine.failed}</p>`, place);
}
if (call) {
  place.replaceChildren();
  draw();
  await travel.fromLink(location.hash);
  if (location.hash) history.replaceState(null, "", location.pathname);
  addEventListener("hashchange", () => travel.fromLink(location.hash));
}
