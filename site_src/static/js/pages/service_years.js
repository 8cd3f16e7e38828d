// A rig's tests over the years: where it stands, each point against acceptance, the tests themselves, and files in and out.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { chosen } from "../shared/choices.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { live, notices } from "../shared/notice.js";
import { send } from "../shared/send.js";
import { chosenSystem } from "../rig/chosen.js";
import { fill, fragment, pageData, unitWords } from "../shared/site.js";
import { dropRecord, keepRecord, keptRecords } from "../shared/store.js";
import { bring } from "../service/bring.js";
import { bringKey } from "../service/bring_view.js";
import { pointView } from "../service/change_view.js";
import { baselineRow, historyFile } from "../service/files.js";
import { opened } from "../service/quick_record.js";
import { runsNoMore } from "../service/running.js";
import { wordOf } from "../service/failed.js";
import { dropPhotos, photosOf, takePhotos } from "../service/test_photos.js";
import { mark } from "../service/status.js";
import { running } from "../shared/running.js";
import { day } from "../shared/times.js";
import { unitsOnce } from "../shared/units.js";

const MARKS = { failed: "fail", current: "pass", soon: "pass", due: "not_proven", never: "not_proven" };
const place = document.getElementById("years");
calc.start();
const [data, kept] = await Promise.all([
  pageData(new URL("../", document.baseURI)),
  keptRecords("tests"),
]);
const { words } = data;
const page = { tests: kept, rig: null, system: chosenSystem(data.systems), said: [], removed: null, photos: [] };
const unitsOf = unitsOnce(data.systems);

const ended = (test) => test.finished_ms ?? test.begun_ms;
const newestFirst = (one, other) => ended(other) - ended(one);
const rigs = () => {
  const found = new Map([...page.tests].sort((one, other) => newestFirst(other, one)).map((test) => [test.rig_id, test.rig_name]));
  return [...found].map(([id, label]) => ({ id, label }));
};
const ofRig = () => page.tests.filter((test) => test.rig_id === page.rig).sort(newestFirst);
const isDone = (test) => test.finished_ms !== null && test.result;
const resultOf = ({ id, finished_ms, result }) =>
  ({ id, at_ms: finished_ms, kind: result.kind, standard: result.standard, rated_gpm: result.rated_gpm, status: result.status, points: result.points });

function settle() {
  const there = rigs();
  if (there.some(({ id }) => id === page.rig)) return;
  const asked = [fragment(), chosen("rig", null)];
  page.rig = asked.find((id) => there.some((rig) => rig.id === id)) ?? there.at(-1)?.id ?? null;
}

async function remove(test) {
  page.said = [];
  if (!(await dropRecord("tests", test.id))) {
    page.said = [words.years.unremoved];
    return draw();
  }
  page.photos = await dropPhotos(test.id);
  page.tests = page.tests.filter((other) => other !== test);
  runsNoMore(test.id, running());
  page.removed = test;
  draw();
}

async function putBack() {
  const test = page.removed;
  page.removed = null;
  if ((await keepRecord("tests", test)) === "unkept") page.removed = test; // still in hand
  else {
    page.tests = [...page.tests, test];
    page.rig = test.rig_id;
    await takePhotos(test, page.photos);
  }
  draw();
}

async function leave(tests) {
  const { baseline } = await opened({ id: page.rig }, 0);
  const photos = await photosOf(...tests.map(({ id }) => id));
  const { file, count } = historyFile(tests, baseline ? [baselineRow({ id: page.rig, name: tests[0].rig_name }, baseline)] : [], photos, data.bounds.largest_bytes);
  page.said = count < photos.length ? [fill(words.photo.left_behind, { count: photos.length - count })] : [];
  draw();
  send(file);
}

async function take(files) {
  const { taken, tests, said } = await bring({ files, tests: page.tests, units: unitsOf("US"), data });
  page.tests = tests;
  page.said = said;
  page.removed = null;
  if (taken.length) page.rig = taken.at(-1).rig_id;
  draw();
}

// The page's one question: where the rig stands, and how its points went over the years; null where no test is finished.
const asking = answering(async () => {
  settle();
  const done = ofRig().filter(isDone);
  if (!done.length) return {};
  const [standing, history] = await Promise.all([
    calc.ask("service.standing", {
      results: done.map((test) => ({ at_ms: test.finished_ms, status: test.result.status })), on_ms: Date.now(), interval_days: data.interval_days,
    }),
    calc.ask("service.history", { results: done.map(resultOf), speed_accuracy_rpm: data.errs.speed_rpm }, { units: unitsOf(page.system) }),
  ]);
  return { standing, history };
}, drawAnswer);
const draw = () => asking.change();

function drawAnswer(answer) {
  const all = rigs();
  const tests = ofRig();
  const done = tests.filter(isDone);
  render(html`
    ${notices(...page.said)}
    ${all.length > 1 ? chips({ name: "rig", legend: words.years.rig, value: page.rig, choices: all, change: (id) => { page.rig = id; draw(); } }) : nothing}
    ${done.length ? (answer?.standing ? standingView(done, answer.standing) : nothing) : html`<p>${tests.some(wordOf) ? words.years.reopened : words.years.none}</p>`}
    ${answer?.history ? historyView(done, answer.history) : nothing}
    ${tests.length ? html`<h2>${words.years.tests}</h2>${tests.map(row)}` : nothing}
    <h2>${words.years.carry}</h2>
    <div class="rows">
      ${tests.length ? html`<button type="button" class="key key-wide" @click=${() => leave(tests)}>${words.years.file}</button>` : nothing}
      ${bringKey(words, take)}
    </div>
    ${live(page.removed ? html`<p class="notice notice-low">${fill(words.years.removed, { name: `${page.removed.rig_name}, ${day(ended(page.removed))}` })}
      <button type="button" class="key" @click=${putBack}>${words.years.put_back}</button></p>` : nothing)}`, place);
}

function standingView(done, told) {
  return html`
    <section class="stands">
      <p class="standing"><span>${fill(words.years.as_of, { date: day(Date.now()) })}</span><b>${done[0].rig_name}</b></p>
      <p class="overall"><span class="verdict">${mark(MARKS[told.status])}<b>${words.due[told.status]}</b></span></p>
      <p>${told.passed_ms === null ? words.years.not_proved : fill(words.years.proved, { date: day(told.passed_ms) })}
        ${told.last_ms === null || told.last_ms === told.passed_ms ? nothing : html`<br>${fill(words.years.last, { date: day(told.last_ms) })}`}
        ${told.due_ms === null ? nothing : html`<br>${fill(told.due_ms < Date.now() ? words.years.was_due : words.years.due_on, { date: day(told.due_ms) })}`}</p>
    </section>`;
}

function historyView(done, told) {
  const dates = Object.fromEntries(done.map((test) => [test.id, test.finished_ms]));
  const others = done.length - told.compared.length;
  return html`
    <h2>${told.points[0]?.is_acceptance ? words.years.against : words.years.against_first}</h2>
    <p>${words.years.told_estimate}</p>
    ${others ? html`<p>${others === 1 ? words.years.other_one : fill(words.years.others, { count: others })}</p>` : nothing}
    ${told.points.map((point) => pointView(point, { words, u: unitWords(words, page.system), dates }))}
    ${told.points.some(({ picture }) => picture) ? html`<p class="smallprint">${words.years.picture_told}</p>` : nothing}`;
}

// A test that is opened again says what it came to before.
function saysOf(test) {
  const said = words.status[wordOf(test)?.status];
  return test.result ? said : said ? fill(words.years.before, { status: said }) : words.sheet.open;
}

// A year is one row: its sheet behind it, and the key that takes it off beside it.
const row = (test) => html`
  <article class="year-row">
    <a href="../sheet/#${test.id}">${mark(wordOf(test)?.status ?? "not_proven")}<span><b>${day(ended(test))}</b>
      <small>${words.kind[test.standard.kind] ?? test.standard.kind} · ${saysOf(test)}</small></span><i aria-hidden="true">›</i></a>
    <button type="button" class="key" aria-label=${words.years.remove} title=${words.years.remove} @click=${() => remove(test)}>✕</button>
  </article>`;

place.replaceChildren();
draw();
