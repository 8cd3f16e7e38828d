// An item of a check on the screen; what comes before the first, and after the last.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { areFigures, figuresView, missingFigure } from "./figures.js";
import { defectForm, hereForm, nameField, ownForm } from "./item_forms.js";
import { isWhole } from "./agreed.js";
import { askedView, clockView, isAsked, readingView, unreadKey } from "./reading.js";
import { ruleOf } from "./rule.js";
import { defectRow, toBay } from "./sentences.js";

// The whole list on paper, blank before its first answer.
const printKey = ({ words, act }) => html`<button type="button" class="key" @click=${act.print}>${words.bay.print}</button>`;

// Before the first item: who checks, and what the last crew wrote.
export function firstView({ words, defects, act, items, list, leftOut, state, asksAfter }) {
  return html`
    <h2 class="bay-act">${words.list[list]}, ${items.length}</h2>
    ${defects.length ? html`<p><b>${words.round.read_first}</b></p><ul class="defects">${defects.map((defect) => defectRow(defect, words))}</ul>` : nothing}
    ${asksAfter ? html`<h3>${words.after.was}</h3><div class="ticks">${["water", "foam", "frost"].map((code) => html`
      <button type="button" class="key" aria-pressed=${String(state.after.includes(code))} @click=${() => act.after(code)}>${words.after[code]}</button>`)}</div>` : nothing}
    ${nameField(words)}
    ${leftOut}
    <p class="bay-others">${printKey({ words, act })}</p>
    <div class="dock"><button type="button" class="key key-act" @click=${act.read}>${words.round.begin}</button></div>`;
}

export function itemView(view) {
  const { state, words, data, rows, items, act, defects, list } = view;
  const row = rows.get(state.at);
  const text = data.text[row.id];
  if (state.form) return html`<section class="bay-item">${{ defect: defectForm, here: hereForm, own: ownForm }[state.form.kind](view, row, state.form.isWithout ? html`${missingFigure(view, row)}${askedView(view, row)}` : nothing)}</section>`;
  const standing = defects.filter(({ item }) => item === row.id);
  const pressed = (says) => (view.answers[row.id] ? String(view.answers[row.id].answer === says) : nothing);
  const isRead = row.limit ? state.judged?.is_good === true || row.limit.kind === "target" && state.judged !== null && !state.judged.asked : !row.reads.length || areFigures(state.figures);
  const says = state.isUnread ? "only_unread" : view.isUntimed ? "untimed" : "good";
  return html`
    <section class="bay-item">
      <p class="bay-where"><b class="place">${words.place[row.place]}</b> <span>${words.engine_state[row.state]}</span> <span class="bay-count">${words.list[list]} · ${items.indexOf(row.id) + 1}/${items.length}</span></p>
      <h2 class="bay-act">${text.title}</h2>
      <p class="bay-look">${text.look}</p>
      <div class="plate bay-good"><b>${words.round.good_sign}</b><p>${text.good}</p>
        ${row.limit ? readingView(view, row) : html`${row.clock_s ? clockView(view, row) : nothing}${row.reads.length ? html`${figuresView(view, row)}<div class="bay-asked">${unreadKey(view)}${state.isUnread ? html`<b role="status">${words.round.not_read}</b>` : nothing}</div>` : nothing}`}</div>
      ${standing.length ? html`<p class="hatched bay-known"><b>${words.round.known}${colon}</b> ${standing[0].what}${standing[0].seen ? html`, ${standing[0].seen}` : nothing}</p>` : nothing}
      <p class="bay-rule">${row.who === "technician" ? html`<b>${words.round.technician}</b> · ` : nothing}${ruleOf(row, view)}</p>
      <p class="bay-others">
        <button type="button" class="key" @click=${() => act.form({ kind: "here", reason: "" })}>${words.round.not_here}</button>
        ${row.limit ? html`<button type="button" class="key" @click=${() => act.form({ kind: "own", value: "", to: "", whose: "" })}>${words.round.own}</button>` : nothing}
        <button type="button" class="key" @click=${act.later}>${words.round.later}</button>
        ${Object.keys(view.answers).length ? html`<button type="button" class="key" @click=${act.back}>${words.round.back}</button>` : printKey(view)}
      </p>
      <div class="dock bay-dock">
        <button type="button" class="key key-trouble" aria-pressed=${pressed("not_good")} ?disabled=${isAsked(state)} @click=${act.notGood}>${words.round.not_good}</button>
        <button type="button" class="key key-act" aria-pressed=${pressed("good")} ?disabled=${!isRead && !state.isUnread} @click=${act.good}>${words.round[says]}</button>
      </div>
    </section>`;
}

// Items by name after what is said of them, nothing where there is none.
const namedItems = (says, ids, { data }) => (ids.length ? html`<p><b>${says}${colon}</b> ${ids.map((id) => data.text[id]?.title ?? id).join(", ")}</p>` : nothing);

export function doneView(view) {
  const { state, words, data, answers, act, items, list, round, leftOut, held, left } = view;
  const says = (wanted) => items.filter((id) => answers[id]?.answer === wanted);
  const [good, bad] = [says("good"), says("not_good")];
  const unread = good.filter((id) => answers[id].reading === "not_read");
  const untimed = items.filter((id) => answers[id]?.clock === "not_run" && !unread.includes(id));
  const open = left.length && !state.ended ? html`<p><b>${words.round.open}</b></p><ul class="rows">${left.map((id) => html`
    <li><button type="button" class="key key-wide" @click=${() => act.open(id)}>${data.text[id].title}</button></li>`)}</ul>` : nothing;
  const waits = held.length ? html`<p class="hatched bay-known" role="alert"><b>${fill(words.round.held, { items: held.map((id) => data.text[id].title).join(", ") })}</b></p>` : nothing;
  if (!round) return html`${held.length ? waits : left.length ? html`<h2 class="bay-act">${words.list[list]}</h2>${open}` : html`<p>${words.round.nothing}</p>`}${leftOut}<div class="dock">${toBay(words)}</div>`;
  return html`
    <h2 class="bay-act">${state.ended ? fill(words.round.ended, { list: words.list[list] }) : left.length ? words.list[list] : held.length ? words.round.all_held : words.round.all}</h2>
    ${waits}
    <p>${fill(words.round.summary, { good: good.filter((id) => isWhole(answers[id])).length, bad: bad.length, here: says("not_here").length })}${state.ended?.took_s > 0 ? ` ${fill(words.round.took, { time: minutes(state.ended.took_s) })}` : ""}</p>
    ${bad.length ? html`<ul class="listed">${bad.map((id) => html`<li>${data.text[id]?.title ?? id}</li>`)}</ul>` : nothing}
    ${namedItems(words.round.not_read, unread, view)}${namedItems(words.clock.not_run, untimed, view)}${state.ended ? namedItems(words.round.undone, left, view) : open}
    ${state.ended?.hurried.length ? html`<p class="hatched bay-known" role="alert">${fill(words.round.hurried, { count: state.ended.hurried.length })}</p>` : nothing}
    ${leftOut}
    <div class="dock bay-dock">
      ${state.ended ? html`${printKey({ words, act })}${toBay(words)}`
        : html`<button type="button" class="key" @click=${act.back}>${words.round.back}</button><button type="button" class="key key-act" @click=${act.end}>${left.length ? words.round.end_open : words.round.end}</button>`}
    </div>`;
}
