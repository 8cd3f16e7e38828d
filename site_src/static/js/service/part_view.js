// One part of a test: its own entries, what became of it, and the way on.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { door } from "../shared/door.js";
import { colon, fill } from "../shared/site.js";
import { day } from "../shared/times.js";
import { figuresView, holding } from "./figures_view.js";
import { missingView } from "./missing.js";
import { nextLink, nextName } from "./next.js";
import { causeLink, signsView } from "./plan_view.js";
import { attemptOf, isCompared, testOf } from "./record.js";
import { leavingView, openIn } from "./leaving.js";
import { isUnderWay } from "./run_state.js";
import { runView } from "./run_view.js";
import { stateOf } from "./stage.js";
import { nextState } from "./states.js";
import { cautionsOf, reasonOf, verdictView } from "./status.js";
import { maySay } from "./without.js";

export function partView(view, test) {
  const { answer, record, words, photos } = view;
  const judged = answer.verdict.tests.find(({ id }) => id === test.id);
  const next = nextLink(view, test.id);
  if (test.kind === "run") {
    const isOpen = isUnderWay(record, test, judged);
    return html`${isOpen || !attemptOf(record, test.id) && record.finished_ms === null ? nothing : outcome(view, test, judged)}
      ${runView(view, test, judged, { more: html`${isOpen ? wants(view, test, judged) : nothing}${isOpen ? nothing : notDone(view, test)}${photos.view(test.id, view)}`, next })}`;
  }
  return html`
    <p class="part-told">${termed(words.test_told[test.id])}</p>
    ${test.id === "checks_dry" && isCompared(record) ? html`<p class="compared">${fill(words.test.compared, { date: day(testOf(record, test.id).at.limits_confirmed) })}</p>` : nothing}
    <fieldset class="bare columns" ?disabled=${record.finished_ms !== null}>${figuresView(view, test, judged)}</fieldset>
    ${outcome(view, test, judged)}
    ${stateOf(record, test, judged) === "left" && !judged.not_done ? nothing : notDone(view, test)}
    ${photos.view(test.id, view)}
    ${dock(view, test)}`;
}

// The one next act: the clock of a part that is held, until it is over; then the part that follows. What is not answered is not
// passed over: it is named first, and left open by a touch of its own.
function dock(view, test) {
  const { record, words, page, act } = view;
  const emergency = record.finished_ms === null ? door(words.danger.title) : nothing;
  const isHeldPart = test.hold_s !== null && record.finished_ms === null;
  const { isHeld, isAsking, told, keys } = isHeldPart ? holding(view, test) : { isHeld: true, isAsking: false, told: nothing, keys: nothing };
  const open = openIn(view, test);
  if (open.length && page.asking === "leave") return leavingView(view, test, open, emergency);
  const next = nextState(view, test) ?? (open.length ? html`<button type="button" class="key" @click=${() => act.ask("leave")}>${nextName(view, test.id)}</button>` : nextLink(view, test.id, isHeld));
  return html`<div class="dock doing">${told}<div class="acts">${keys}${isAsking ? nothing : next}${emergency}</div></div>`;
}

// What is missing elsewhere: what is to be entered here is seen to be empty.
function wants(view, test, judged) {
  const worked = test.kind === "run" ? [] : judged.figures.filter(({ id }) => test.limits.some((limit) => limit.id === id && limit.of.length > 1)).map(({ id }) => id);
  const names = judged.missing.filter((name) => view.record.finished_ms !== null || !worked.includes(name) && !test.fields.some(({ id }) => id === name));
  return names.length ? html`<p><b>${view.words.test.missing}${colon}</b> ${missingView(names, view, test)}</p>` : nothing;
}

function outcome(view, test, judged) {
  const { words, record } = view;
  const state = stateOf(record, test, judged);
  return html`
    <section class="outcome"><div role="status">${["todo", "begun", "now"].includes(state) ? nothing
      : html`${state === "left" ? html`<b>${reasonOf(judged, words)}</b>`
        : html`${verdictView(judged.status, words)}<p>${words.code[judged.code]}${stoppedFor(view, test.id)}${judged.is_close ? ` ${words.code.close}` : nothing}</p>`}`}</div>
      ${state === "now" ? nothing : cautionsOf(judged, words).map((caution) => html`<p>${caution}</p>`)}
      ${judged.status === "fail" ? causeLink(view, test.id) : nothing}
      ${judged.status !== "pass" && !["now", "left"].includes(state) ? wants(view, test, judged) : nothing}
      ${signsView(view, test.id)}</section>`;
}

function notDone(view, { id }) {
  const { words, record, page, act, answer } = view;
  if (record.finished_ms !== null || ["pass", "fail"].includes(answer.verdict.tests.find((judged) => judged.id === id).status)) return nothing;
  if (testOf(record, id).not_done) return html`<button type="button" class="key key-wide" @click=${() => act.notDone(id, null)}>${words.test.not_done_undo}</button>`;
  const none = maySay(record, id) ? html`<button type="button" class="key key-wide" @click=${() => act.without(id)}>${words.test.absent}</button>` : nothing;
  if (page.asking !== "not_done") return html`${none}<button type="button" class="key key-wide" @click=${() => act.ask("not_done")}>${words.test.not_done}</button>`;
  return html`<section class="notice" role="group"><h2>${words.test.not_done_reason}</h2><div class="rows">
    ${words.test.reasons_not_done.map((reason) => html`<button type="button" class="key key-wide" @click=${() => act.notDone(id, reason)}>${reason}</button>`)}
    <button type="button" class="key key-wide key-act" @click=${() => act.ask(null)}>${words.run.never_mind}</button></div></section>`;
}

// Why the last attempt at a run was stopped, as it was told then.
function stoppedFor({ record, words: { run } }, name) {
  const reason = attemptOf(record, name)?.stopped;
  if (!run.reasons_stop.includes(reason)) return nothing;
  return ` ${fill(run.stopped_for, { reason })}${reason === run.reasons_stop[0] ? ` ${run.short_told}` : ""}`;
}
