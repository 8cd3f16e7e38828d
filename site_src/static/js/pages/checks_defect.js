// A defect: written where the hand is, or looked at and decided on by an officer. Its class is proposed by the condition that it is, where
// one is chosen. Another page may hand over what was seen, in the fragment: #new= and JSON of { origin, what, seen, scope, class, rule }.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { toHeading } from "../shared/focus.js";
import { handedIn } from "../shared/handed.js";
import { dropRecord } from "../shared/store.js";
import { whatOf } from "../shared/rig_status.js";
import { colon, fill, fragment, home } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";
import { Photos } from "../shared/photos.js";
import { SecondTouch } from "../shared/second_touch.js";
import { conditionKeys, conditionOf, limitOf } from "../bay/conditions.js";
import { proposal, ranked } from "../bay/likely.js";
import { field, lacking, lackingView, rankChips, RANKS, scopeChips, SCOPES } from "../bay/item_forms.js";
import { isName } from "../bay/agreed.js";
import { yourName } from "../bay/log.js";
import { opened, pageOf } from "../bay/opened.js";
import { prints } from "../bay/paper.js";
import { defectSheet } from "../bay/paper_forms.js";
import { closedText, endOf, endText } from "../bay/past.js";
import { ruleOf } from "../bay/rule.js";
import { classOf, toBay } from "../bay/sentences.js";

const place = document.getElementById("bay");
const page = await opened(place);
const photos = page && new Photos({
  of: (defect) => page.log.of("photo").filter((record) => record.defect === defect.id),
  add: (defect, picture) => page.log.add("photo", { defect: defect.id, picture }),
  drop: takeOff,
  redraw: () => draw(),
});
const MOST_LIKE = 3; // conditions offered below what is typed: more push the form off the screen
/** @type {any} */
const state = { form: null, decision: null, withdrawal: null, standing: null, defect: null, end: null, lost: null };
const second = new SecondTouch(() => draw());
// A photo that was just added goes for good: it is on no other phone.
async function takeOff(id) {
  if (!(await dropRecord("bay", id))) return;
  page.log.records = page.log.records.filter((record) => record.id !== id);
  draw();
}

addEventListener("hashchange", () => location.reload());

async function start() {
  state.standing = await page.log.standing();
  const id = fragment();
  state.defect = page.log.of("defect").find((record) => record.id === id) ?? null;
  state.end = state.defect && !here() ? await endOf(state.defect, page.log) : null;
  if (!state.defect) state.form = { what: "", seen: "", class: "", scope: "", origin: "report", rule: "", by: yourName(), ...handed(), ...(await halfWritten()) };
  if (state.form?.what) Object.assign(state.form, proposed(state.form.what));
  draw();
  toHeading(place);
}

const draftName = () => `defect:${page.rig.id}`;

// What was being written of the same, before this page went.
async function halfWritten() {
  const draft = await draftOf(draftName());
  return draft?.from === location.hash ? draft.form : {};
}

// What another page hands over: only choices that there are.
function handed() {
  const content = handedIn(location.hash);
  state.lost = content === "lost" || fragment() === null ? page.words.defect.lost : content || !location.hash ? null : page.words.record.none;
  if (!content || content === "lost") return {};
  const { what, seen, origin, rank, scope, rule } = content;
  return { what, seen, rule, origin: origin || "report", ...(RANKS.includes(rank) && { class: rank, isOwn: true }), ...(SCOPES.includes(scope) && { scope, isOwn: true }) };
}

// What the words of the defect propose, until somebody chose or another page did.
const NOTHING = { rule: "", class: "", scope: "" };
function proposed(what) {
  if (state.form.isOwn) return {};
  const row = proposal(page.data, what);
  return row ? { rule: row.id, class: row.class, scope: row.scope } : NOTHING;
}

// The condition that a defect is said to be: of these rows, or none.
const condition = () => conditionOf(state.form.rule, page.data);
const choose = (row) => typed(row.id === state.form.rule && state.form.isOwn ? { ...NOTHING, isOwn: true } : { isOwn: true, rule: row.id, what: row.what, class: row.class, scope: row.scope });

// Those that are like what is typed; once somebody chose one, that one.
function likeWhat() {
  const chosen = condition();
  if (chosen && state.form.isOwn) return [chosen];
  return ranked(page.data.conditions, state.form.what, page.data.silent).slice(0, MOST_LIKE).map(({ row }) => row);
}

const typed = (change) => {
  second.lapse();
  Object.assign(state.form ?? state.decision ?? state.withdrawal, change);
  if (state.form) keepDraft(draftName(), { from: location.hash, form: state.form });
  draw();
};

const lacks = ({ what, class: rank, scope }) => lacking(page.words, { what: Boolean(what.trim()), rank, scope });

async function write() {
  const { what, seen, class: rank, scope, origin, by } = state.form;
  if (lacks(state.form).length) return typed({ isAsked: true });
  const is = condition();
  const record = await page.log.add("defect", { origin, item: null, what: what.trim(), seen: [seen.trim(), limitOf(is, rank)].filter(Boolean).join("; "), place: "", state: "", limit: "", class: rank, scope, rule: is?.source[0] ?? "" }, { by: by.trim() });
  await keepDraft(draftName(), null);
  history.replaceState(null, "", `#${record.id}`);
  state.form = null;
  await start();
}

async function decide() {
  const { rank, scope, limits, by } = state.decision;
  await page.log.add("decision", { defect: state.defect.id, class: rank, scope, limits: limits.trim() }, { replaces: here().heads, by: by.trim() });
  state.decision = null;
  await start();
}

async function withdraw() {
  const { reason, by } = state.withdrawal;
  await page.log.add("withdrawn", { reason: reason.trim() }, { replaces: [state.defect.id], by: by.trim() });
  await page.log.standing();
  location.replace(pageOf(""));
}

function show(change) {
  second.lapse();
  Object.assign(state, change);
  draw();
  toHeading(place);
}

const here = () => state.standing.defects.find(({ id }) => id === state.defect.id);

function draw() {
  const { words } = page;
  render(state.form ? writeView(words) : state.decision ? decideView(words) : state.withdrawal ? withdrawView(words) : defectView(words), place);
  photos.paint(place, page.log.of("photo"));
}

const writeView = (words) => html`
  <h2 class="bay-act">${words.defect.new}</h2>
  ${state.lost ? html`<p class="notice" role="alert">${state.lost}</p>` : nothing}
  ${field({ id: "what", label: words.defect.what, value: state.form.what, change: (what) => typed({ what, ...proposed(what) }) })}
  ${conditionKeys({ rows: likeWhat(), chosen: state.form.rule, words, choose })}
  <p><a href=${pageOf("conditions/")}>${words.conditions.find}</a></p>
  ${field({ id: "seen", label: words.defect.seen, value: state.form.seen, change: (seen) => typed({ seen }) })}
  ${rankChips(words, state.form.class, (id) => typed({ class: id, isOwn: true }))}
  ${condition() ? html`<p class="bay-rule">${fill(state.form.isOwn ? words.defect.rule : words.defect.proposes, { what: condition().what, rank: words.rank[condition().class], source: ruleOf(condition(), page) })}</p>` : nothing}
  ${scopeChips(words, state.form.scope, (id) => typed({ scope: id, isOwn: true }))}
  ${field({ id: "by", label: words.bay.name, value: state.form.by, change: (by) => typed({ by }) })}
  <div class="dock">${lackingView(words, state.form.isAsked ? lacks(state.form) : [])}<button type="button" class="key key-act" @click=${write}>${words.defect.write}</button></div>`;

const decideView = (words) => html`
  <h2 class="bay-act">${words.defect.decide}</h2>
  <p>${whatOf(state.defect)}</p>
  ${rankChips(words, state.decision.rank, (id) => typed({ rank: id }))}
  ${scopeChips(words, state.decision.scope, (id) => typed({ scope: id }))}
  ${field({ id: "limits", label: words.defect.limits, value: state.decision.limits, change: (limits) => typed({ limits }) })}
  ${field({ id: "by", label: words.defect.officer, value: state.decision.by, change: (by) => typed({ by }) })}
  <div class="dock bay-dock"><button type="button" class="key" @click=${() => show({ decision: null })}>${words.round.back}</button>
    <button type="button" class="key key-act" ?disabled=${!state.decision.by.trim()} @click=${decide}>${words.defect.decide}</button></div>`;

// Without a repair, so by name, with a reason and in two touches.
const withdrawView = (words) => html`
  <h2 class="bay-act">${words.defect.withdraw}</h2>
  <p><b>${state.defect.what}</b>${state.defect.seen ? `: ${state.defect.seen}` : ""}</p>
  <p>${words.defect.withdraw_only}</p>
  ${field({ id: "reason", label: words.defect.withdraw_why, value: state.withdrawal.reason, change: (reason) => typed({ reason }) })}
  ${field({ id: "by", label: words.bay.name, value: state.withdrawal.by, change: (by) => typed({ by }) })}
  <div class="dock bay-dock"><button type="button" class="key" @click=${() => show({ withdrawal: null })}>${words.round.back}</button>
    <button type="button" class="key key-trouble" ?disabled=${!state.withdrawal.reason.trim() || !isName(state.withdrawal.by)} @click=${() => second.touch(withdraw)}>${second.isAsked ? words.defect.withdraw_sure : words.defect.withdraw_do}</button></div>`;

function defectView(words) {
  const defect = state.defect;
  const open = here();
  const isHalt = defect.origin === "halt";
  const row = (label, text) => (text ? html`<p>${label}${colon} <b>${text}</b></p>` : nothing);
  return html`
    <h2 class="bay-act">${defect.what}</h2>
    ${open ? html`<p class="plate bay-standing"><b>${classOf(open, words)}</b> <small>${open.decided_by ? fill(words.defect.decided_at, { by: open.decided_by, time: dayAndTime(open.decided_ms) }) : words.defect.proposed}</small></p>`
      : html`<p class="plate bay-standing"><b>${closedText(state.end, words)}</b></p>`}
    ${row(words.defect.seen, defect.seen)}${row(words.defect.where, [defect.place, defect.state].filter(Boolean).join(", "))}${row(words.defect.limit, defect.limit)}
    ${row(words.defect.may_not, (open ?? state.end?.stood)?.limits)}${row(words.defect.rule_of, page.data.sources[defect.rule] ?? words.department[defect.rule])}${row(words.defect.origin, words.origin[defect.origin])}
    ${state.end ? row(words.kind[state.end.record.kind], endText(state.end)) : nothing}
    <p>${fill(words.defect.written, { by: defect.by || "–", time: dayAndTime(defect.at_ms) })}</p>
    ${photos.view(defect, words.defect)}
    <p class="bay-others">
      <button type="button" class="key" @click=${() => window.print()}>${words.bay.print}</button>
      ${open?.may_withdraw ? html`<button type="button" class="key" @click=${() => show({ withdrawal: { reason: "", by: "" } })}>${words.defect.withdraw}</button>` : nothing}
      ${state.end?.record.kind === "release" ? html`<a class="key" href=${`${pageOf("record/")}#${state.end.record.id}`}>${words.release.title}</a>` : nothing}
      <a class="key" href=${new URL("diagnose/", home).href}>${words.defect.diagnose}</a></p>
    ${open && !open.may_withdraw ? html`<p class="bay-rule">${isHalt ? words.defect.halt_only : words.defect.release_only}</p>` : nothing}
    <div class="dock bay-dock">${open ? html`
      ${isHalt ? nothing : html`<button type="button" class="key" @click=${() => show({ decision: { rank: open.class, scope: open.scope, limits: open.limits, by: "" } })}>${words.defect.decide}</button>`}
      <a class="key key-act" href=${`${pageOf("release/")}#${defect.id}`}>${words.defect.release}</a>` : toBay(words)}</div>`;
}

// One that is still being written is printed as far as it is.
const onPaper = () => state.defect ?? { id: "", item: null, at_ms: Date.now(), place: "", state: "", limit: "", rule: "", ...state.form };
if (page) prints(() => state.standing && defectSheet(page, onPaper(), state.form ?? here(), state.end));
if (page) await start();
