// The Rig page: one truck's profile, kept as it is typed, checked by calc, carried from phone to phone.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { chosen as chosenName } from "../shared/choices.js";
import { calc } from "../shared/engine.js";
import { fold, isUnfolded, unfold } from "../shared/fold.js";
import { beside, live, toNotice } from "../shared/notice.js";
import { shownIn } from "../shared/shown.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { isEntry, tagged, unitsOnce } from "../shared/units.js";
import { bedsView, openBed } from "../rig/beds.js";
import { checksFaults, checksView } from "../rig/checks.js";
import { chooseRig, chosenSystem } from "../rig/chosen.js";
import { linksView } from "../rig/faults.js";
import { fieldMaker } from "../rig/fields.js";
import { hosesView, supplyView } from "../rig/hoses.js";
import { Keeper } from "../rig/keeper.js";
import { listView, removeView, standingView } from "../rig/list.js";
import { measureView, Readings, wanted } from "../rig/measure.js";
import { amountsOf, copyOf, freeName, newProfile, plainName, withoutRow } from "../rig/profile.js";
import { sentenceOf } from "../rig/sentences.js";
import { offerView } from "../rig/offer.js";
import { Travel, travelView } from "../rig/travel.js";

const NOTHING = { problems: [], beds: [], figures: [], measured: {} };
const LISTS = ["beds", "supply", "hoses", "checks"];
const place = document.getElementById("rig");
const starting = calc.start();
const data = await pageData();
const { words } = data;
const unitsOf = unitsOnce(data.systems);
const state = { system: chosenSystem(data.systems), asked: null, notice: null, resized: null, isRunning: false };
const page = answering(question, draw);
const inputs = shownIn(state);
const { shown } = inputs;

const keeper = new Keeper((reason, id) => {
  if (reason === "conflict") state.notice = { at: "top", text: words.rig.conflict };
  if (reason === "elsewhere" && id === chosen()?.id) state.notice = { at: "top", text: words.rig.changed_elsewhere };
  page.change();
});
const held = () => ({ shelf: data.shelf, units: unitsOf(state.system) });
const chosen = () => keeper.profiles.get(chosenName("rig", "")) ?? null;
const readings = new Readings(page.change);
const context = (profile = null) => ({ data, u: unitWords(words, state.system), profile });
const travel = new Travel({ words, judge, keeper, redraw: page.change, said: () => toNotice(place), taken: workFor, sentence: (problem, profile) => sentenceOf(problem, context(profile)) });

// What calc says of a profile, with those of its parts that are in sight.
async function judge(profile, parts, entries = []) {
  const { texts, learn } = inputs.unread([...amountsOf(profile, data).filter(([, text]) => isEntry(data.systems, text)), ...entries]);
  const judged = await calc.ask("rig_page.answer", { profile, parts, texts }, held());
  learn(judged.texts);
  const more = await checksFaults(profile, judged.problems, held().units);
  return more.length ? { ...judged, problems: [...judged.problems, ...more] } : judged;
}

// The page's one question.
async function question() {
  const profile = chosen();
  if (!profile) return NOTHING;
  const isHoses = isUnfolded("hoses");
  const typed = isHoses ? wanted(profile, readings) : { measured: {}, entries: [] };
  return judge(profile, { beds: true, figures: isHoses, measured: typed.measured }, typed.entries);
}

// A name that another rig on this phone has too.
const twins = (profile) => keeper.all.some((other) => other.id !== profile.id && plainName(other.name) === plainName(profile.name))
  ? [{ field: "name", code: "same_name" }] : [];

function workFor(profile) {
  chooseRig(profile);
  state.system = chosenSystem(data.systems);
}

const act = {
  choose: (profile) => {
    workFor(profile);
    page.change();
  },
  make: () => {
    openBed(0);
    return addRig(newProfile(data, state.system, freeName(words.rig.new_name, keeper.all), fill(words.rig.new_bed, { count: 1 })));
  },
  copy: (profile) => addRig(copyOf(profile, freeName(fill(words.rig.copy_name, profile), keeper.all))),
  ask: (id) => {
    state.asked = id;
    page.redraw();
  },
  remove: async (profile) => {
    chooseRig(null);
    state.asked = null;
    state.notice = (await keeper.remove(profile.id)) ? null : { at: "list", text: words.rig.unremoved };
    page.change();
  },
};

async function addRig(profile) {
  await keeper.put(profile);
  act.choose(profile);
}

// What a link or a file brought, where the finger was.
const offered = (at) => live(travel.offered && travel.at === at ? offerView(travel, { ...context(), shown }) : nothing);

function draw(answer) {
  if (!state.isRunning) return;
  const profile = chosen();
  render(html`
    ${beside(state.notice, "top", words.rig)}
    ${beside(travel.notice, "top", words.rig)}
    ${offered("top")}
    ${profile ? html`${standingView(profile, words)}${editor(profile, answer ?? NOTHING)}` : nothing}
    ${listView({ rigs: keeper.all, chosen: profile, words, act })}
    <h2>${words.rig.section_carry}</h2>
    ${travelView(travel, profile)}
    ${offered("file")}
    ${profile ? removeView({ chosen: profile, asked: state.asked, words, act }) : nothing}
    ${beside(state.notice, "list", words.rig)}`, place);
}

function editor(profile, { problems: found, beds, figures, measured }) {
  const { system } = state;
  const u = unitWords(words, system);
  const problems = [...found, ...twins(profile)];
  const set = (key, value) => {
    Object.assign(state, { notice: null, resized: null });
    keeper.set(profile.id, key, value);
    if (key === "units") workFor(keeper.profiles.get(profile.id));
    page.change();
  };
  const remove = (key, rows, row) => {
    set(key, withoutRow(rows, row));
    state.notice = { at: key, text: words.rig.taken_out, undo: () => set(key, rows) };
  };
  const told = context(profile);
  const field = fieldMaker({ ...told, system, problems, shown, tagged });
  const common = { profile, data, system, u, field, shown, set, remove, redraw: page.change };
  const ofSection = (section) => data.sections.find(({ id }) => id === section).fields.map((name) =>
    field({ place: name, name, spec: data.fields[name], value: profile[name], change: (text) => set(name, text) }));
  const section = (name, content, begins) => {
    if (begins) unfold(name); // and it stays so while it is filled in
    return fold({ name, summary: words.rig[`section_${name}`], kind: "section", begins, redraw: page.change }, () => html`${content()}${beside(state.notice, name, words.rig)}`);
  };
  return html`
    ${problems.length ? html`<section class="notice faults" role="status"><p><b>${words.rig.problems}</b></p>
      ${linksView(problems.map((problem) => ({ place: problem.field, sentence: sentenceOf(problem, told) })))}</section>` : nothing}
    <div class="rig-panes"><div>
    ${section("basics", () => ofSection("basics"), !profile.drive)}
    <div class="beds">${bedsView({ ...common, answers: beds })}</div>
    ${beside(state.notice, "beds", words.rig)}
    <nav class="rig-cards">
      <a class="row" href=${new URL("rig/card/index.html", home)}>${words.rig.card}</a>
      <a class="row" href=${new URL("rig/recovery/index.html", home)}>${words.rig.recovery}</a>
    </nav>
    </div><div>
    ${section("supply", () => supplyView(common), false)}
    ${data.sections.filter(({ id }) => id !== "basics").map(({ id }) => section(id, () => ofSection(id), false))}
    ${section("hoses", () => hosesView({
      ...common,
      figures,
      asked: state.resized,
      ask: (question) => {
        state.resized = question;
        page.redraw();
      },
      measureView: (row, count, use) => measureView({ readings, profile, row, found: measured[count], data, u, system, shown, use, redraw: page.change }),
    }), false)}
    ${profile.checks ? section("checks", () => checksView(common), false) : nothing}
    </div></div>
    <p class="smallprint">${words.rig.kept}</p>`;
}

// A link that brings a rig, or that leads to one of its fields.
async function arrive() {
  const { hash } = location;
  if (hash) history.replaceState(null, "", location.pathname);
  await travel.fromLink(hash);
  const [, id] = hash.match(/^#field-([\w-]+)/) ?? [];
  if (!id) return;
  const [first, count] = id.split("-");
  if (first === "beds") openBed(count);
  unfold(LISTS.includes(first) ? first : data.sections.find(({ fields }) => fields.includes(first))?.id);
  await page.change();
  (document.getElementById(hash.slice(1)) ?? document.getElementById(`field-${first}-${count}`))?.focus();
}

await Promise.all([keeper.load(), starting]);
place.replaceChildren();
state.isRunning = true;
await page.change();
await arrive();
addEventListener("hashchange", arrive);
