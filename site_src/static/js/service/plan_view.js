// The whole test at a glance: each part with its verdict, and the way to finish.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { enterLink } from "../diagnose/enter.js";
import { colon, fill, home } from "../shared/site.js";
import { orderLines } from "../shared/order.js";
import { warning } from "../shared/warning.js";
import { minutes } from "./clock.js";
import { askView } from "./missing.js";
import { clockOf, countedS } from "./record.js";
import { figureView, mark, verdictView } from "./status.js";
import { labelOf } from "./entries.js";

export function planView(view) {
  const { words, record, answer, act, page } = view;
  const open = record.finished_ms === null;
  return html`
    ${summaryView(view)}
    ${open ? html`${warning("caution", words.test.beware, `${words.test.drill} ${words.test.stop_first}`)}
      ${orderLines(view.data.orders, words)}` : html`<p class="notice">${words.test.finished}</p>`}
    ${open ? askView(view) : nothing}
    <nav class="parts" aria-label=${words.test.title}>
      <a class="part" href="#${record.id}/site"><span><b>${words.test.site}</b><small>${words.test.site_told}</small></span></a>
      ${answer.plan ? answer.plan.tests.map((test) => part(view, test)) : nothing}
    </nav>
    ${signsView(view)}
    <div class="rows">
      <a class="key key-wide" href="../sheet/#${record.id}">${words.test.sheet}</a>
      ${!open || !answer.plan ? nothing : page.asking === "finish" ? finishing(view) : html`
        <button type="button" class="key key-wide key-act" @click=${() => act.ask("finish")}>${words.test.finish}</button>`}
    </div>`;
}

function summaryView({ words, record, answer, u }) {
  const told = answer.verdict;
  return html`
    <section class="standing">
      <p><b>${record.rig_name}</b>${words.standard[record.standard.id]} · ${words.kind[record.standard.kind]}</p>
      ${told ? html`
        <p class="overall">${verdictView(told.status, words)}</p>
        ${told.status === "fail" ? causeLink({ words, answer }) : nothing}
        ${told.decided?.figure && told.status !== "not_proven" && told.decided.figure.kind !== "check" ? html`
          <p class="judged-name">${words.test.decided}${colon} ${words.test_name[told.decided.test]}</p>
          ${figureView(told.decided.figure, labelOf(told.decided.figure.id, { words, answer, u }), u[`u_${told.decided.figure.kind}`], words)}` : nothing}` : nothing}
    </section>`;
}

function part({ words, record, answer, now, u }, test) {
  const judged = answer.verdict.tests.find(({ id }) => id === test.id);
  const clock = clockOf(record, test.id);
  const told = test.kind === "run" ? fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text }) : words.test_told[test.id];
  return html`
    <a class="part" href="#${record.id}/${test.id}">
      ${mark(judged.status)}
      <span><b>${words.test_name[test.id]}</b><small>${told}</small>
        <small class="part-status">${words.status[judged.status]}${clock ? ` · ${minutes(countedS(clock, now))}${clock.since !== null ? `, ${words.test.running}` : ""}` : ""}</small></span>
    </a>`;
}

// The way from a failure, of the whole test or of one part, to its cause: with every sign that the diagnosis knows.
export function causeLink({ words, answer }, part = null) {
  const seen = signsOf(answer, part).filter((sign) => sign.enter).map((sign) => [sign.enter, "seen"]);
  const href = seen.length ? enterLink({ signs: Object.fromEntries(seen) }) : new URL("diagnose/", home).href;
  return html`<a class="key key-wide key-act no-print" href=${href}>${words.sign.go_on}</a>`;
}

const signsOf = (answer, part) => (answer.verdict?.signs ?? []).filter(({ test }) => part === null || test === part);

// What the failures may point to, of the whole test or of one part.
export function signsView({ words, answer }, part = null) {
  const signs = signsOf(answer, part);
  return signs.length === 0 ? nothing : html`
    <h2>${words.sign.title}</h2>
    <p>${words.sign.told}</p>
    <ul class="signs">${signs.map((sign) => html`<li>${part === null ? `${words.test_name[sign.test]}${colon} ` : nothing}${words.sign[sign.id]}</li>`)}</ul>`;
}

const finishing = ({ words, answer, act }) => html`
  <p class="notice">${fill(words.test.finish_ask, { count: answer.verdict.counts.not_proven })}</p>
  <button type="button" class="key key-wide key-danger" @click=${act.finish}>${words.test.finish_yes}</button>
  <button type="button" class="key key-wide key-act" @click=${() => act.ask(null)}>${words.test.finish_no}</button>`;
