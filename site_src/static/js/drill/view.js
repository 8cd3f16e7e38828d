// One question on one screen: what is asked, what is drawn with it where a call has a scene, the answer, and after it the working.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { colon, fill } from "../shared/site.js";
import { answerText, asked, optionText, replyText, workingText } from "./sentences.js";

const typedView = ({ question, words, u, refusal, check, about, slide = null, typing = null }) => {
  const { within_text: within, quantity } = question.answer;
  const unit = u[`u_${quantity}`];
  return html`
    <form class="drill-typed" id="drill-typed" @submit=${check}>
      ${slide ?? nothing}
      <label for="drill-answer">${words.drill.typed}</label>
      <span class="drill-entry"><input id="drill-answer" inputmode="decimal" autocomplete="off" @input=${typing} aria-invalid=${refusal ? "true" : "false"}
        aria-describedby=${refusal ? "drill-within drill-refused" : "drill-within"}> <span>${unit}</span></span>
      ${refusal ? html`<p class="refusal" id="drill-refused" role="alert">${refusal}</p>` : nothing}
      <p class="drill-note" id="drill-within">${fill(words.drill.within, { within, unit })}</p>
    </form>
    ${about ? html`<p class="smallprint">${about}</p>` : nothing}
    <div class="dock"><button class="key key-act" form="drill-typed">${words.drill.check}</button></div>`;
};

const chosenView = ({ question, words, choose, about }) => html`
  <div class="rows" role="group" aria-label=${words.drill.chosen}>
    ${question.answer.options.map((option) => html`<button type="button" class="key key-wide" @click=${() => choose(option)}>${optionText(question, option, words)}</button>`)}
  </div>
  ${about ? html`<p class="smallprint">${about}</p>` : nothing}`;

// After the answer: right or not, the habit it looks like, how it is worked out.
const judgedView = ({ question, judged, reply, isLast, words, u, next }) => html`
  <section class="drill-judged" aria-live="polite">
    <h2 tabindex="-1" id="drill-verdict">${fill(words.drill[judged.is_right ? "right" : "wrong"], { answer: answerText(question, words, u) })}</h2>
    ${judged.is_right ? nothing : html`<p>${fill(words.drill.yours, { yours: replyText(question, reply, words, u) })}</p>`}
    ${judged.habit ? html`<p class="drill-habit">${termed(words.habit[judged.habit])}</p>` : nothing}
    <h3>${words.drill.working}</h3>
    <ol class="drill-working">${question.working.map((row) => html`<li>${termed(workingText(row, words, u))}</li>`)}</ol>
  </section>
  <div class="dock"><button type="button" class="key key-act" @click=${next}>${words.drill[isLast ? "end" : "next"]}</button></div>`;

export const questionView = (state) => {
  const { question, place, count, words, u, judged, scene = null } = state;
  const sentences = asked(question, words, u);
  return html`
    <p class="drill-place"><b>${words.kind[question.kind]}</b> ${fill(words.drill.count, { n: place + 1, count })}</p>
    <div class="drill-asked" id="drill-asked" tabindex="-1">${sentences.map((sentence) => html`<p>${termed(sentence)}</p>`)}</div>
    ${scene ?? nothing}
    ${judged ? judgedView(state) : question.answer.way === "typed" ? typedView(state) : chosenView(state)}`;
};

const whenOf = (days, { drill }) => (days > 1 ? fill(drill.in_days, { days }) : drill[days ? "tomorrow" : "due"]);

// What was missed, then all else that was asked before, the least known first, with the day it comes back.
export const endView = ({ missed, standing, words, again }) => html`
  <h2>${words.drill.done}</h2>
  ${missed.length
    ? html`<h3>${words.drill.missed}</h3><ul class="drill-missed">${missed.map((name) => html`<li>${name}</li>`)}</ul>`
    : html`<p>${words.drill.nothing_missed}</p>`}
  ${standing.some(({ box }) => box) ? html`
    <h3>${words.drill.standing}</h3>
    <ul class="drill-standing">${standing.filter(({ box }) => box).map(({ kind, days }) => html`<li>${words.kind[kind]}${colon} ${whenOf(days, words)}</li>`)}</ul>` : nothing}
  <p class="smallprint">${words.drill.private} ${words.drill.not_live}</p>
  <div class="dock"><button type="button" class="key key-act" @click=${again}>${words.drill.again}</button></div>`;
