// The whole test at a glance: its parts as stations of a line, in groups, and the one to go on with.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { enterLink } from "../diagnose/enter.js";
import { termed } from "../help/touched.js";
import { routeList } from "../line/route.js";
import { door } from "../shared/door.js";
import { orderLines } from "../shared/order.js";
import { colon, fill, home } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { labelOf } from "./entries.js";
import { askView } from "./missing.js";
import { clockOf, countedS, runningIn } from "./record.js";
import { absentView } from "./without.js";
import { countsOf, GROUPS, nameOf, nextPart, STATION, stateOf } from "./stage.js";
import { figureView, reasonOf, unproven, verdictView } from "./status.js";

export function planView(view) {
  const { words, record, answer } = view;
  const isOpen = record.finished_ms === null;
  const tests = answer.plan?.tests ?? [];
  const states = Object.fromEntries(tests.map((test) => [test.id, stateOf(record, test, answer.verdict.tests.find(({ id }) => id === test.id))]));
  const next = nextPart(tests, states);
  return html`
    ${isOpen ? standingView(view, states) : verdictOf(view)}
    ${isOpen ? beware(view, Object.values(states).every((state) => state === "todo")) : nothing}
    ${isOpen ? askView(view) : nothing}
    <nav class="stations" aria-label=${words.test.title}>
      ${routeList([siteRow(view, tests.length > 0)])}
      ${GROUPS.map(([group, names]) => [group, tests.filter(({ id }) => names.includes(id))]).filter(([, rows]) => rows.length).map(([group, rows]) => html`
        <h2>${words.group[group]}</h2>
        ${routeList(rows.map((test) => row(view, test, states[test.id])))}`)}
    </nav>
    ${answer.plan ? absentView(view) : nothing}
    ${signsView(view)}
    ${dock(view, isOpen, next)}`;
}

function dock(view, isOpen, next) {
  const { words, record, answer, act, page } = view;
  if (isOpen && page.asking === "finish") return finishing(view);
  const sheet = html`<a class="key" href="../sheet/#${record.id}">${words.test.sheet}</a>`;
  if (!isOpen) return html`<div class="dock"><a class="key key-act" href="../sheet/#${record.id}">${words.test.sheet}</a></div>`;
  const finish = (more) => html`<button type="button" class="key ${more}" @click=${() => act.ask("finish")}>${words.test.finish}</button>`;
  const on = !answer.plan ? html`<a class="key key-act" href="#${record.id}/site">${fill(words.test.next, { title: words.test.site })}</a>`
    : next ? html`<a class="key key-act" href="#${record.id}/${next.id}">${fill(words.test.next, { title: words.test_name[next.id] })}</a>` : null;
  return html`<div class="dock list-dock">${on}${answer.plan ? finish(on ? "" : "key-act") : nothing}${sheet}${runningIn(record).length ? door(words.danger.title) : nothing}</div>`;
}

// While a test goes on it has no verdict: how much of it is done, and what failed.
function standingView({ words, record }, states) {
  const rows = Object.values(states);
  const { pass, fail, left } = countsOf(rows);
  return html`
    <section class="standing">
      <p><b>${record.rig_name}</b> <small>${words.standard[record.standard.id]} · ${words.kind[record.standard.kind]}</small></p>
      ${rows.length ? html`<p class="overall">${fill(words.test.done_of, { done: pass + fail, of: rows.length })}${fail ? html` · <b class="failed">${fill(words.test.failed_of, { count: fail })}</b>` : nothing}${left ? ` · ${fill(words.test.left_of, { count: left })}` : nothing}</p>` : nothing}
    </section>`;
}

function verdictOf({ words, record, answer, u }) {
  const { verdict } = answer;
  const decided = verdict?.decided;
  return html`
    <section class="standing">
      <p><b>${record.rig_name}</b> <small>${words.standard[record.standard.id]} · ${words.kind[record.standard.kind]}</small></p>
      ${verdict ? html`<p class="overall">${verdictView(verdict.status, words)}</p>
        ${verdict.status === "not_proven" ? html`<p>${unproven({ words, answer })}</p>` : nothing}
        ${verdict.status === "fail" ? causeLink({ words, answer }) : nothing}
        ${decided?.figure && verdict.status !== "not_proven" && decided.figure.kind !== "check" ? html`
          <p class="judged-name">${words.test.decided}${colon} ${words.test_name[decided.test]}</p>
          ${figureView(decided.figure, labelOf(decided.figure.id, { words, answer, u }), u[`u_${decided.figure.kind}`], words)}` : nothing}` : nothing}
      <p class="smallprint">${words.test.finished}</p>
    </section>`;
}

// What can hurt people, open until the test has begun; then one line.
const beware = ({ words, data }, isOpen) => html`
  <details class="beware hatched" ?open=${isOpen}><summary>${words.test.beware}</summary>
    <p>${words.test.drill}</p><p>${words.test.stop_first}</p>${orderLines(data.orders, words)}</details>`;

const siteRow = ({ words, record }, isPlanned) => ({
  state: isPlanned ? "proven" : "here",
  content: html`<a class="station" href="#${record.id}/site"><b>${words.test.site}</b><small>${words.test.site_told}</small></a>`,
});

function row({ words, record, answer, now, u }, test, state) {
  const clock = clockOf(record, test.id);
  const judged = answer.verdict.tests.find(({ id }) => id === test.id);
  const note = state === "left" ? reasonOf(judged, words)
    : state === "now" && clock ? `${words.stage[nameOf(record, test, state)]} ${minutes(countedS(clock, now))}` : words.stage[state];
  return {
    state: STATION[state],
    content: html`<a class="station station-${state}" href="#${record.id}/${test.id}"><b>${words.test_name[test.id]}</b>
      <span class="station-state">${note}</span>
      ${test.kind === "run" ? html`<small>${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}</small>` : nothing}</a>`,
  };
}

// The way from a failure, of the whole test or of one part, to its cause: with every sign that the diagnosis knows.
export function causeLink({ words, answer }, part = null) {
  const seen = signsOf(answer, part).filter((sign) => sign.enter).map((sign) => [sign.enter, "seen"]);
  const href = seen.length ? enterLink({ signs: Object.fromEntries(seen) }) : new URL("diagnose/", home).href;
  return html`<a class="key key-wide no-print" href=${href}>${words.sign.go_on}</a>`;
}

const signsOf = (answer, part) => (answer.verdict?.signs ?? []).filter(({ test }) => part === null || test === part);

// What the failures may point to, of the whole test or of one part.
export function signsView({ words, answer }, part = null) {
  const signs = signsOf(answer, part);
  return signs.length === 0 ? nothing : html`
    <h2>${words.sign.title}</h2>
    <p>${words.sign.told}</p>
    <ul class="signs">${signs.map((sign) => html`<li>${part === null ? `${words.test_name[sign.test]}${colon} ` : nothing}${termed(words.sign[sign.id])}</li>`)}</ul>`;
}

const finishing = ({ words, answer, act }) => html`
  <div class="dock doing"><p class="question hatched">${fill(words.test.finish_ask, { count: answer.verdict.counts.not_proven })}</p>
  <div class="acts"><button type="button" class="key key-danger" @click=${act.finish}>${words.test.finish_yes}</button>
  <button type="button" class="key key-act" @click=${() => act.ask(null)}>${words.test.finish_no}</button></div></div>`;
