// One service test at the pump: plan, clocks, readings and verdict of one rig. calc.service.page judges; this page keeps time,
// asks, and keeps what is typed.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { stayAwake } from "../shared/awake.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { toHeading, toTitle } from "../shared/focus.js";
import { notices } from "../shared/notice.js";
import { chosenSystem } from "../rig/chosen.js";
import { colon, fill, pageData, unitWords } from "../shared/site.js";
import { keepRecord, keptRecords } from "../shared/store.js";
import { actions } from "../service/act.js";
import { besideMaker } from "../service/beside.js";
import { minutes, runningStrip } from "../service/clock.js";
import { figuresView } from "../service/figures_view.js";
import { missingView } from "../service/missing.js";
import { causeLink, planView, signsView } from "../service/plan_view.js";
import { askedOf, attemptOf, clockOf, countedS, filledFrom, halted, isRunning, runningIn, testOf, withJump } from "../service/record.js";
import { refuser } from "../service/refusal.js";
import { runView } from "../service/run_view.js";
import { siteView } from "../service/site_view.js";
import { shownIn } from "../service/shown.js";
import { verdictView } from "../service/status.js";
import { Steady } from "../service/steady.js";
import { systemChips, unitsOnce } from "../shared/units.js";

const TICK_MS = 250;
const place = document.getElementById("test");
calc.start();
const data = await pageData(new URL("../", document.baseURI));
const { words } = data;
const page = { system: chosenSystem(data.systems), asking: null, jumps: [], awake: null };
const unitsOf = unitsOnce(data.systems);
let record = null;
let answer = null; // of the record as it is, with `shown`; null until it is there
let plan = null; // of the last answer
let besideOf = null;
let steady = null;

// Jumps of the phone's clock that this test has not heard of; those matter to it that met one of its clocks running.
function hear() {
  for (const jump of isRunning(record) ? steady.after(record.heard ?? 0) : []) {
    page.jumps = [jump];
    change(withJump(record, jump));
  }
}

// A clock ends by itself once its time is over and no reading is left to take: what is kept is then what was held.
function endClocks() {
  for (const name of runningIn(record)) {
    const test = answer.plan?.tests.find(({ id }) => id === name);
    const due = answer.verdict?.tests.find(({ id }) => id === name).attempts?.at(-1).missing.some((each) => each.startsWith("due_"));
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
  const [judged, shown] = await Promise.all([calc.ask("service.answer", { record }, { units }), shownIn(units, record, besideOf.earlier, data.accuracy, data.starts)]);
  return { ...judged, shown };
}, (arrived) => {
  answer = arrived;
  plan = answer?.plan ?? plan;
  place.setAttribute("aria-busy", String(answer === null));
  if (answer) drawAnswer();
});
const judge = () => asking.change();
const draw = () => asking.redraw();

const act = actions({ record: () => record, answer: () => answer, plan: () => plan, page, steady: () => steady, change, draw, words });

function view() {
  const u = unitWords(words, page.system);
  return {
    data, words, record, answer, page, act, system: page.system, u, now: steady.now(), besideOf,
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
  const title = name === "site" ? words.test.site : test ? words.test_name[test.id] : words.test.title;
  document.querySelector("h1").textContent = title;
  render(html`
    ${troubles(seen)}
    ${answer.plan ? runningIn(record).filter((each) => each !== name && name).map((each) => runningStrip(seen, each)) : nothing}
    ${name === "site" ? html`<fieldset class="bare" ?disabled=${record.finished_ms !== null}>${siteView(seen)}</fieldset>` : test ? testView(seen, test) : planView(seen)}
    ${name ? html`<nav class="rows" aria-label=${words.test.title}>
      ${nextOf(tests, name) ? html`<a class="key key-wide key-act" href="#${record.id}/${nextOf(tests, name)}">${fill(words.test.next, { title: words.test_name[nextOf(tests, name)] })}</a>` : nothing}
      <a class="key key-wide" href="#${record.id}">${words.test.back}</a></nav>` : nothing}
    ${systemChips({ systems: data.systems, system: page.system, words, change: (system) => { page.system = system; judge(); } })}
    <p class="smallprint">${page.awake === false ? words.test.sleeps : page.awake ? words.test.awake : nothing}</p>`, place);
  if (page.asking !== reasonOf) {
    reasonOf = page.asking;
    const reasons = place.querySelector(".notice[role=group]");
    if (reasons) toHeading(reasons);
  }
}

const nextOf = (tests, name) => (name === "site" ? tests[0] : tests[tests.findIndex(({ id }) => id === name) + 1])?.id;

function testView(seen, test) {
  const judged = answer.verdict.tests.find(({ id }) => id === test.id);
  const given = testOf(record, test.id);
  return html`
    ${test.kind === "run" ? nothing : html`<p>${words.test_told[test.id]}</p>`}
    <fieldset class="bare" ?disabled=${record.finished_ms !== null}>
      ${test.kind === "run" ? runView(seen, test, judged) : figuresView(seen, test, judged)}
    </fieldset>
    <section class="outcome"><div role="status">${verdictView(judged.status, words)}<p>${words.code[judged.code]}${stoppedFor(seen, test.id)}${judged.not_done ? ` ${fill(words.test.not_done_kept, { reason: judged.not_done })}` : nothing}</p></div>
      ${judged.status === "fail" ? causeLink(seen, test.id) : nothing}
      ${judged.missing.length && judged.status !== "pass" ? html`<p><b>${words.test.missing}${colon}</b> ${missingView(judged.missing, seen, test)}</p>` : nothing}
      ${signsView(seen, test.id)}</section>
    ${record.finished_ms !== null ? nothing : given.not_done
      ? html`<button type="button" class="key key-wide" @click=${() => act.notDone(test.id, null)}>${words.test.not_done_undo}</button>`
      : page.asking === "not_done" ? html`<section class="notice" role="group"><h2>${words.test.not_done_reason}</h2><div class="rows">
          ${words.test.reasons_not_done.map((reason) => html`<button type="button" class="key key-wide" @click=${() => act.notDone(test.id, reason)}>${reason}</button>`)}
          <button type="button" class="key key-wide key-act" @click=${() => act.ask(null)}>${words.run.never_mind}</button></div></section>`
        : html`<button type="button" class="key key-wide" @click=${() => act.ask("not_done")}>${words.test.not_done}</button>`}`;
}

// Why the last attempt at a run was stopped, as it was told then.
function stoppedFor({ words: { run } }, name) {
  const reason = attemptOf(record, name)?.stopped;
  if (!run.reasons_stop.includes(reason)) return nothing;
  return ` ${fill(run.stopped_for, { reason })}${reason === run.reasons_stop[0] ? ` ${run.short_told}` : ""}`;
}

function troubles({ words: told }) {
  const asked = record.finished_ms === null ? askedOf(record) : undefined;
  return html`
    ${asked ? html`<section class="notice" role="alert"><p>${fill(told.steady.asked, { s: minutes(asked.s) })}</p>
      <button type="button" class="key key-wide" @click=${() => act.away(true)}>${fill(told.steady.count, { s: minutes(asked.s) })}</button>
      <button type="button" class="key key-wide key-act" @click=${() => act.away(false)}>${told.steady.leave}</button></section>` : nothing}
    ${notices(...page.jumps.filter(({ turn }) => turn !== asked?.turn).map((jump) => fill(told.steady[jump.kind], { s: `${jump.s < 0 ? "−" : ""}${minutes(Math.abs(jump.s))}` })))}
    `;
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
  besideOf = besideMaker({ tests, record });
}

async function hold(id) {
  if (!navigator.locks) return true;
  return new Promise((resolve) => navigator.locks.request(`test:${id}`, { ifAvailable: true }, (lock) => {
    resolve(lock !== null);
    return lock ? new Promise(() => {}) : null; // held until the page is gone
  }));
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
    page.asking = null;
    draw();
    goTo(location.hash.split("/")[2]);
  });
  stayAwake((awake) => { page.awake = awake; draw(); });
  setInterval(look, TICK_MS);
} catch (problem) {
  if (!problem.told) throw problem;
  render(html`<p class="notice" role="alert">${problem.told}</p>`, place);
}
