// The check after a repair: in the bay, from the tank, beside the rig's own baseline. The shift cards hold the shifting.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { enterLink } from "../diagnose/enter.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { live } from "../shared/notice.js";
import { send } from "../shared/send.js";
import { orderLines } from "../shared/order.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { startTerms } from "../help/touched.js";
import { colon, fill, home, pageData, unitWords } from "../shared/site.js";
import { stayAwake } from "../shared/awake.js";
import { baselineFile, baselineRow } from "../service/files.js";
import { textView } from "../service/entries.js";
import {
  closed, isOpenAt, isUnderWay, keepQuick, opened, STEPS, withBaseline, withEarlier, withReading, withRepaired, withSeen, withoutBaseline, withStopped, withUnseen,
} from "../service/quick_record.js";
import { answersView, hereView, rowText, stepsView } from "../service/quick_step.js";
import { refuser } from "../service/refusal.js";
import { shownIn } from "../service/shown.js";
import { day } from "../shared/times.js";
import { unitsOnce } from "../shared/units.js";

const place = document.getElementById("quick");
const terms = startTerms();
calc.start();
const [data, rig] = await Promise.all([pageData(new URL("../", document.baseURI)), chosenRig()]);
const { words } = data;
const count = data.quick.step_psi.length;
const page = { system: chosenSystem(data.systems), asked: false, removed: null };
const unitsOf = unitsOnce(data.systems);
let answer = null; // of the check that is open, with `shown`; null until it is there
let record = rig ? await opened(rig, count) : null;
// A page opened again in mid-check knows nothing of what changed meanwhile: the person looks first.
page.isLooked = !record || !isUnderWay(record);
page.isReopened = !page.isLooked;

function change(next, removed = null) {
  record = next;
  page.removed = removed;
  keepQuick(record);
  asking.change();
}

const takeAway = (next) => change(next, record);

// The page's one question: the open check beside the baseline, and its entries in the page's units.
const asking = answering(async () => {
  const units = unitsOf(page.system);
  const [compared, shown] = await Promise.all([
    calc.ask("quick.answer", {
      baseline: record.baseline?.readings ?? [], readings: record.open.readings, quick: { tolerance_percent: data.quick.tolerance_percent, step_psi: data.quick.step_psi }, accuracy: data.errs,
    }, { units }),
    shownIn(units, record, data.quick.step_psi.map((at) => ({ kind: "pressure", text: `${at}@US` }))),
  ]);
  return { ...compared, shown };
}, (arrived) => {
  answer = arrived;
  place.setAttribute("aria-busy", String(answer === null));
  if (answer) drawAnswer();
});
const draw = () => asking.redraw();

const act = {
  see: (step) => change(withSeen(record, step, Date.now())),
  unsee: (step) => change(withUnseen(record, step)),
  halt: (step) => change(withStopped(record, step, Date.now())),
  again() {
    const { open, ...rest } = withUnseen(record, record.open.stopped);
    const next = { ...rest, open: { ...open, stopped: null } };
    page.isLooked = !isUnderWay(next); // it stood still meanwhile
    page.isReopened = false;
    change(next);
  },
  reading: (at, field, text) => change(withReading(record, at, field, text)),
  close() {
    if (!answer) return; // a touch before the readings were judged is none
    const status = record.open.stopped ? "not_proven" : answer.status;
    page.isLooked = true;
    page.asked = false;
    change(closed(record, { status, wall: Date.now(), count }));
  },
  baseline() {
    page.asked = false;
    change(withBaseline(record, record.earlier[0]));
  },
  remove: (check) => takeAway(withEarlier(record, record.earlier.filter((other) => other !== check))),
  removeBaseline: () => takeAway(withoutBaseline(record)),
  putBack: () => change({ ...page.removed, revision: record.revision + 1 }),
};

function drawAnswer() {
  const u = unitWords(words, page.system);
  const { shown } = answer;
  const view = {
    data, words, record, act, answer, u, shown, system: page.system, isLooked: page.isLooked,
    refusal: refuser(answer.problems, { words, u }),
  };
  const here = record.open.stopped ? undefined : STEPS.find((step) => isOpenAt(record, step));
  const isFirst = !Object.keys(record.open.seen).length;
  render(html`
    <p class="quick-rig"><b>${rig.name}</b></p>
    ${page.isLooked ? nothing : html`<section class="notice" role="alert"><p>${page.isReopened ? `${words.quick.opened_again} ` : nothing}${words.quick.look_again}</p>
      <button type="button" class="key key-wide key-act" @click=${() => { page.isLooked = true; draw(); }}>${words.quick.looked}</button></section>`}
    ${isFirst ? html`<section class="quick-beware" aria-label=${words.test.beware}>${orderLines(data.orders, words)}</section>` : nothing}
    ${here ? hereView(view, here) : nothing}
    ${record.open.stopped ? stoppedView() : nothing}
    ${endView(answer)}
    ${isFirst ? nothing : html`<details class="beware hatched"><summary>${words.test.beware}</summary>${orderLines(data.orders, words)}</details>`}
    ${record.open.stopped ? nothing : stepsView(view)}
    ${textView({ id: "repaired", label: words.quick.repaired, value: record.open.repaired, change: (text) => change(withRepaired(record, text)) })}
    ${record.baseline ? html`<details class="section"><summary>${fill(words.quick.baseline_of, { date: day(record.baseline.at_ms) })}</summary>
      <ul class="listed">${record.baseline.readings.map((reading) => html`<li>${rowText({ reading, words, u, shown })}</li>`)}</ul>
      <div class="rows"><button type="button" class="key key-wide" @click=${() => send(baselineFile(baselineRow(rig, record.baseline)))}>${words.quick.baseline_file}</button>
        <button type="button" class="key key-wide" @click=${act.removeBaseline}>${words.quick.remove_baseline}</button></div></details>`
      : html`<p>${words.quick.no_baseline} ${words.quick.bring_baseline} <a class="key" href=${new URL("test/years/", home).href}>${words.years.title}</a></p>`}
    ${live(page.removed ? html`<p class="notice">${words.quick.taken_off} <button type="button" class="key" @click=${act.putBack}>${words.quick.put_back}</button></p>` : nothing)}
    ${earlierView({ u, shown })}
    ${here ? answersView(view, here) : nothing}`, place);
}

const stoppedView = () => html`
  <section class="alarm" role="alert"><h2>${fill(words.quick.stopped, { step: words.quick_step[record.open.stopped].title })}</h2><p>${words.quick.stopped_told}</p></section>
  <div class="rows"><a class="key key-wide key-act" href=${new URL("diagnose/", home).href}>${words.quick.to_diagnosis}</a>
    <button type="button" class="key key-wide" @click=${act.again}>${words.quick.again}</button>
    <button type="button" class="key key-wide" @click=${act.close}>${words.quick.finish}</button></div>`;

const endView = (answer) => record.open.seen.road === undefined || record.open.stopped ? nothing : html`
  <section class="outcome"><p class="quick-status quick-${answer.status}"><b>${words.quick_status[answer.status]}</b></p>
    <p>${fill(words.quick_said[answer.has_baseline ? answer.status : "no_baseline"], { tolerance: data.quick.tolerance_percent })} ${words.quick.no_test} ${words.quick.whole_test}</p></section>
  <div class="rows">${answer.enter ? html`<a class="key key-wide key-act" href=${enterLink({ signs: { [answer.enter]: "seen" } })}>${words.quick.to_diagnosis}</a>` : nothing}
    <button type="button" class="key key-wide key-act" @click=${act.close}>${words.quick.finish}</button></div>`;

const earlierView = (told) => !record.earlier.length ? nothing : html`
  <h2>${words.quick.earlier}</h2>
  ${record.earlier.map((check, number) => html`
    <article class="row"><p><span><b>${day(check.at_ms)}${colon} ${check.stopped ? fill(words.quick.stopped, { step: words.quick_step[check.stopped].title }) : words.quick_status[check.status]}</b>
      <small>${check.repaired}</small></span></p>
      <ul class="listed">${check.readings.filter((reading) => reading.engine_rpm || reading.discharge_psi).map((reading) => html`<li>${rowText({ reading, words, ...told })}</li>`)}</ul>
      ${number === 0 && !check.stopped && check.readings.some((reading) => reading.engine_rpm && reading.discharge_psi) ? baselineView() : nothing}
      <button type="button" class="key" @click=${() => act.remove(check)}>${words.quick.remove}</button></article>`)}`;

const baselineView = () => page.asked
  ? html`<section class="notice"><p>${words.quick.keep_told}</p><button type="button" class="key key-wide" @click=${act.baseline}>${words.quick.keep_yes}</button>
      <button type="button" class="key key-wide key-act" @click=${() => { page.asked = false; draw(); }}>${words.quick.keep_no}</button></section>`
  : html`<p><button type="button" class="key key-wide" @click=${() => { page.asked = true; draw(); }}>${words.quick.keep_baseline}</button></p>`;

place.replaceChildren();
if (!rig) render(html`<p class="notice">${words.quick.no_rig}</p><div class="dock"><a class="key key-act" href=${new URL("rig/", home).href}>${words.test.to_rig}</a></div>`, place);
else {
  await asking.change();
  place.addEventListener("focusout", () => queueMicrotask(draw)); // it is typed out now
  stayAwake(() => {});
  terms.then(draw);
}
