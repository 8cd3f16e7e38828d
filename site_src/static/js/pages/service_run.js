// One service test at the pump: plan, clocks, readings and verdict of one rig. calc.service.page judges; this page keeps time,
// asks, and keeps what is typed.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { startTerms } from "../help/touched.js";
import { stayAwake } from "../shared/awake.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { door } from "../shared/door.js";
import { toHeading, toTitle } from "../shared/focus.js";
import { notices } from "../shared/notice.js";
import { chosenSystem } from "../rig/chosen.js";
import { decimal, fill, pageData, unitWords } from "../shared/site.js";
import { keepRecord, keptRecords } from "../shared/store.js";
import { actions } from "../service/act.js";
import { besideMaker } from "../service/beside.js";
import { runningStrip } from "../service/clock.js";
import { hold } from "../service/hold.js";
import { nextLink } from "../service/next.js";
import { partView } from "../service/part_view.js";
import { planView } from "../service/plan_view.js";
import { askedOf, clockOf, countedS, filledFrom, halted, isRunning, runningIn, withJump } from "../service/record.js";
import { refuser } from "../service/refusal.js";
import { cellsOf, TRAY, trayQuestion } from "../service/run_cells.js";
import { awayView } from "../service/run_dock.js";
import { tell } from "../service/running.js";
import { siteView } from "../service/site_view.js";
import { shownIn } from "../service/shown.js";
import { testPhotos } from "../service/test_photos.js";
import { Steady } from "../service/steady.js";
import { unitsOnce } from "../shared/units.js";
import { minutes } from "../shared/times.js";

const TICK_MS = 250;
const place = document.getElementById("test");
const terms = startTerms();
calc.start();
const data = await pageData(new URL("../", document.baseURI));
const { words } = data;
// cell: the reading that is touched; near: figures next to what stands in each; said_missed: readings whose loss was said
const page = { system: chosenSystem(data.systems), asking: null, jumps: [], awake: null, cell: null, state: null, near: {}, said_missed: [] };
const unitsOf = unitsOnce(data.systems);
let record = null;
let answer = null; // of the record as it is, with `shown`; null until it is there
let plan = null; // of the last answer
let besideOf = null;
let steady = null;
let photos = null; // of this test, see service/test_photos.js

// Jumps of the phone's clock that this test has not heard of; those matter to it that met one of its clocks running.
function hear() {
  for (const jump of isRunning(record) ? steady.after(record.heard ?? 0) : []) {
    page.jumps = [jump];
    change(withJump(record, jump));
  }
}

// A clock ends by itself once its time is over and no reading is left to take: what is kept is then what was held.
function endClocks() {
  if (answer?.of !== record) return; // an answer to what stood before ends nothing
  for (const name of runningIn(record)) {
    const test = answer.plan?.tests.find(({ id }) => id === name);
    const due = answer.verdict?.tests.find(({ id }) => id === name).attempts?.at(-1)?.missing.some((each) => each.startsWith("due_"));
    if (test && test.hold_s !== null && !due && countedS(clockOf(record, name), steady.now()) >= test.hold_s) {
      change(halted(record, name, { kind: "end", now: steady.now(), wall: Date.now() }));
    }
  }
}

const part = () => location.hash.slice(1).split("/")[1] ?? null;

function change(next) {
  const heard = isRunning(record) ? next.heard : steady.turn; // jumps before a clock ran are none of its business
  record = { ...next, revision: record.revision + 1, steady: steady.mark(), heard };
  keepRecord("tests", record);
  return judge();
}

// The page's one question, and a page that is drawn from what was answered. Until it is, what stands there is of no use.
const asking = answering(async () => {
  const units = unitsOf(page.system);
  const of = record;
  const [judged, shown] = await Promise.all([calc.ask("service.answer", { record }, { units }), shownIn(units, record, besideOf.earlier, data.accuracy, data.starts)]);
  return { ...judged, of, ...(await trayOf(judged, shown, units)) };
}, (arrived) => {
  answer = arrived;
  page.near = answer?.near ?? page.near;
  plan = answer?.plan ?? plan;
  place.setAttribute("aria-busy", String(answer === null));
  if (answer) drawAnswer();
});

// The figures near the readings of the run that is looked at, and everything as it is shown.
async function trayOf(judged, shown, units) {
  const test = judged.plan?.tests.find(({ id, kind }) => id === part() && kind === "run");
  if (!test || record.finished_ms !== null) return { shown };
  const cells = cellsOf({ record, words, u: unitWords(words, page.system), answer: judged }, test);
  const starts = cells.map(({ kind, start }) => ({ kind, text: start }));
  const first = await shownIn(units, starts, record, besideOf.earlier, data.accuracy, data.starts);
  const rows = await calc.ask("entry.near", { rows: trayQuestion(cells, { shown: first, steps: data.systems[page.system].steps }), decimal, ...TRAY });
  const texts = rows.flatMap(({ below, above }, count) => [...below, ...above].map((text) => ({ kind: cells[count].kind, text: `${text}@${page.system}` })));
  return { near: Object.fromEntries(cells.map(({ id }, count) => [id, rows[count]])), shown: await shownIn(units, texts, starts) };
}

let judging; // the question that was put last
const judge = () => (judging = asking.change());
const draw = () => asking.redraw();

// What calc says of the record as it is now, where the page may still show the one before.
async function judged() {
  while (answer?.of !== record) await judging;
  return answer;
}

const act = actions({ record: () => record, judged, plan: () => plan, page, steady: () => steady, change, draw, words, goTo });

function view() {
  const u = unitWords(words, page.system);
  return {
    data, words, record, answer, page, act, photos, system: page.system, u, now: steady.now(), besideOf,
    shown: answer.shown,
    refusal: refuser(answer.problems, { words, u }),
  };
}

let reasonOf = null; // the act that was stopped or paused last, whose reason is asked for

function drawAnswer() {
  const seen = view();
  const name = part();
  const tests = answer.plan?.tests ?? [];
  const test = tests.find(({ id }) => id === name);
  title(name, test, tests);
  tell({ record, answer, words, now: seen.now });
  render(html`
    ${said(seen, test)}
    ${answer.plan ? runningIn(record).filter((each) => each !== name && name).map((each) => runningStrip(seen, each)) : nothing}
    ${name === "site" ? html`<fieldset class="bare columns" ?disabled=${record.finished_ms !== null}>${siteView(seen)}</fieldset><div class="dock doing"><div class="acts">${nextLink(seen, "site")}${record.finished_ms === null ? door(words.danger.title) : nothing}</div></div>`
      : test ? partView(seen, test) : planView(seen)}`, place);
  photos.paint(place);
  if (page.asking !== reasonOf) {
    reasonOf = page.asking;
    const reasons = place.querySelector("[role=group]:has(> h2)");
    if (reasons) toHeading(reasons);
  }
}

// The bar: what is looked at, which of how many it is, and the way to the page above it.
function title(name, test, tests) {
  document.querySelector("h1").textContent = name === "site" ? words.test.site : test ? words.test_name[test.id] : words.test.title;
  const [number, back] = [document.getElementById("number"), /** @type {HTMLAnchorElement} */ (document.getElementById("back"))];
  number.textContent = test ? fill(words.test.number, { count: tests.indexOf(test) + 1, of: tests.length }) : "";
  back.href = test || name === "site" ? `#${record.id}` : "../";
  back.setAttribute("aria-label", test || name === "site" ? words.test.back : words.test.all);
}

// What happened to the phone's clock; time that nobody saw is asked about, in a run at its keys.
function said(seen, test) {
  const asked = record.finished_ms === null ? askedOf(record) : undefined;
  return html`
    ${asked && test?.kind !== "run" ? awayView(seen, asked) : nothing}
    ${notices(...page.jumps.filter(({ turn }) => turn !== asked?.turn).map((jump) => fill(words.steady[jump.kind], { s: `${jump.s < 0 ? "−" : ""}${minutes(Math.abs(jump.s))}` })))}`;
}

function look() {
  steady.tick();
  if (record.finished_ms !== null || !isRunning(record)) return;
  hear();
  if (answer) endClocks();
  draw();
}

// To a field of the part that is shown, or to its top.
function goTo(name) {
  const field = name && (document.getElementById(name) ?? place.querySelector(`[name="${CSS.escape(name)}"]`));
  if (!field) return toTitle();
  const fold = field.closest("details");
  if (fold && !fold.open) fold.querySelector("summary").click();
  field.focus({ preventScroll: true });
  (field.closest(".field, fieldset") ?? field).scrollIntoView({ block: "center" });
}

async function open() {
  const id = location.hash.slice(1).split("/")[0];
  const tests = await keptRecords("tests"); // as they are now that no other tab holds this one
  record = tests.find((each) => each.id === id) ?? null;
  if (!record) throw { told: words.test.missing_record };
  const profile = (await keptRecords("rigs")).find((rig) => rig.id === record.rig_id);
  if (profile && record.finished_ms === null) record = filledFrom(record, profile);
  steady = new Steady(record.steady);
  photos = await testPhotos(record, draw);
  besideOf = besideMaker({ tests, record });
}

try {
  if (!(await hold(location.hash.slice(1).split("/")[0]))) throw { told: words.test.elsewhere };
  await open();
  place.replaceChildren();
  await judge();
  look();
  place.addEventListener("focusout", () => answer?.problems.some((problem) => problem.is_below) && queueMicrotask(draw)); // it is typed out now
  addEventListener("pageshow", (event) => event.persisted && location.reload()); // what it shows may be old by now
  addEventListener("hashchange", () => {
    if (location.hash.slice(1).split("/")[0] !== record.id) return location.reload();
    page.asking = page.unasked = page.state = null;
    page.cell = location.hash.split("/")[2] ?? null;
    judge().then(() => goTo(location.hash.split("/")[2]));
  });
  stayAwake((awake) => { page.awake = awake; draw(); });
  setInterval(look, TICK_MS);
  terms.then(draw);
} catch (problem) {
  if (!problem.told) throw problem;
  place.replaceChildren();
  render(html`<p class="notice" role="alert">${problem.told}</p><div class="dock"><a class="key key-act" href="../">${words.test.all}</a></div>`, place);
}
