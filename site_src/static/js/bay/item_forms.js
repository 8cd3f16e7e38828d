// What an item asks besides good and not good: the defect, why it is not on this rig, this rig's own limit.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { choose } from "../shared/choices.js";
import { live } from "../shared/notice.js";
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { conditionKeys, NONE } from "./conditions.js";
import { YOUR_NAME, yourName } from "./log.js";
import { ruleOf } from "./rule.js";
import { limitText, unitOf } from "./sentences.js";

export const RANKS = ["out_of_service", "restricted", "report", "note"];
export const SCOPES = ["apparatus", "pump", "aerial", "foam"];

export const rankChips = (words, value, change) => chips({ name: "rank", legend: words.defect.rank, value, change, choices: RANKS.map((id) => ({ id, label: words.rank[id] })) });
export const scopeChips = (words, value, change) => chips({ name: "scope", legend: words.defect.scope, value, change, choices: SCOPES.map((id) => ({ id, label: words.scope[id] })) });

export const field = ({ id, label, value, change, more = nothing, mode = "text" }) => html`
  <label class="field"><span>${label}</span><input id=${id} inputmode=${mode} autocomplete="off" maxlength="200" .value=${value} @input=${({ target }) => change(target.value)}>${more}</label>`;

// Who works here, chosen once for every page of the bay.
export const nameField = ({ bay }) => html`
  <label class="field"><span>${bay.name}</span><input id="name" autocomplete="name" maxlength="60" .value=${yourName()} @input=${({ target }) => choose(YOUR_NAME, target.value.trim())}></label>`;

// What a defect lacks before it can be written, by the names of its fields; and said where somebody tried.
export const lacking = ({ defect: words }, { what = true, rank, scope }) => [[what, words.what], [rank, words.rank], [scope, words.scope]].flatMap(([is, name]) => (is ? [] : [name]));
export const lackingView = ({ defect: words }, names) => live(names.length ? html`<p class="refusal">${fill(words.lacks, { what: names.join(", ") })}</p>` : nothing);

// The class that an item's defect has at first: where it may be one of several conditions, none until one is chosen.
export const rankOf = (row, { conditions }) => (conditions.filter(({ checks }) => checks.includes(row.id)).length > 1 ? "" : row.class);

export function defectForm(view, row, figure) {
  const { state, words, data, act } = view;
  const { seen, rank, scope, rule, isAsked } = state.form;
  const rows = data.conditions.filter(({ checks }) => checks.includes(row.id));
  const is = rows.find(({ id }) => id === rule);
  const choose = (chosen) => act.form(chosen.id === rule ? { rule: "", rank: rankOf(row, data), scope: row.scope } : { rule: chosen.id, rank: chosen.class, scope: chosen.scope });
  const chooseNone = () => act.form(rule === NONE ? { rule: "", rank: rankOf(row, data) } : { rule: NONE, rank: "report", scope: row.scope });
  const proposes = is ?? (rows.length > 1 || rule === NONE ? null : row); // whose class was proposed
  return html`
    <h2 class="bay-act">${fill(words.defect.of, { what: data.text[row.id].title })}</h2>
    <p class="bay-where"><b class="place">${words.place[row.place]}</b> <span>${words.engine_state[row.state]}</span>
      ${state.entry ? html`<b>${bare(state.entry)} ${unitOf(row, view)}</b>` : nothing} ${row.limit ? html`<span>${limitText(state.limit, row, view)}</span>` : nothing}</p>
    ${rows.length ? html`<p class="bay-look">${words.conditions.which}</p>${conditionKeys({ rows, chosen: rule, words, choose, chooseNone })}` : nothing}
    ${figure}
    ${field({ id: "seen", label: words.defect.seen, value: seen, change: (text) => act.form({ seen: text }) })}
    ${rankChips(words, rank, (id) => act.form({ rank: id }))}
    ${proposes ? html`<p class="bay-rule">${fill(words.defect.rule, { rank: words.rank[proposes.class], source: ruleOf(proposes, view) })}</p>` : nothing}
    ${scopeChips(words, scope, (id) => act.form({ scope: id }))}
    <div class="dock bay-dock">${lackingView(words, isAsked ? lacking(words, { rank, scope }) : [])}
      <button type="button" class="key" @click=${() => act.form(null)}>${words.round.back}</button>
      <button type="button" class="key key-act" @click=${act.writeDefect}>${words.defect.write}</button></div>`;
}

export function hereForm(view, row) {
  const { state, words, act } = view;
  const reason = state.form.reason;
  return html`
    <h2 class="bay-act">${words.round.not_here}</h2>
    <p>${row.equipment ? fill(words.round.here_all, { equipment: words.equipment[row.equipment] }) : words.round.here_one}</p>
    ${chips({ name: "why", legend: words.round.why, value: reason, change: (id) => act.form({ reason: id }), choices: ["none", "removed", "other_drive"].map((id) => ({ id: words.reason[id], label: words.reason[id] })) })}
    ${field({ id: "reason", label: words.round.reason, value: reason, change: (text) => act.form({ reason: text }) })}
    <div class="dock bay-dock"><button type="button" class="key" @click=${() => act.form(null)}>${words.round.back}</button>
      <button type="button" class="key key-act" ?disabled=${!reason.trim()} @click=${act.notHere}>${words.round.leave_out}</button></div>`;
}

export function ownForm(view, row) {
  const { state, words, act } = view;
  const { value, to, whose, refused } = state.form;
  return html`
    <h2 class="bay-act">${words.round.own}</h2>
    <p>${fill(words.round.own_told, { limit: limitText(state.limit, row, view) })}</p>
    ${field({ id: "own", label: `${row.limit.kind === "range" ? words.round.from : words.round.limit} (${unitOf(row, view)})`, value, mode: "decimal", change: (text) => act.form({ value: text }) })}
    ${row.limit.kind === "range" ? field({ id: "own-to", label: `${words.round.to} (${unitOf(row, view)})`, value: to, mode: "decimal", change: (text) => act.form({ to: text }) }) : nothing}
    ${field({ id: "whose", label: words.round.whose, value: whose, change: (text) => act.form({ whose: text }) })}
    ${refused ? html`<p class="refusal" role="alert">${refused}</p>` : nothing}
    <div class="dock bay-dock"><button type="button" class="key" @click=${() => act.form(null)}>${words.round.back}</button>
      <button type="button" class="key key-act" ?disabled=${!value.trim() || !whose.trim() || row.limit.kind === "range" && !to.trim()} @click=${act.ownLimit}>${words.round.set}</button></div>`;
}
