// The sheet's results: each test with its verdict, what decided it, and, where it is no pumping run, all that was read.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { dayTime, minutes } from "../shared/times.js";
import { kindOf, labelOf, last, placeOf } from "./entries.js";
import { testOf } from "./record.js";
import { isLeftOut, nameOf } from "./stage.js";
import { cautionsOf, limitText, mark, reasonOf } from "./status.js";

export function resultsView(view, states) {
  const { words, answer, record } = view;
  const tests = answer.verdict.tests.filter(({ id }) => states[id] !== "todo");
  const planned = (test) => answer.plan.tests.find(({ id }) => id === test.id);
  return html`
    <h3>${words.sheet.results}</h3>
    <div class="results">${tests.map((test) => {
      const isHead = planned(test).kind !== "figures" && planned(test).kind !== "checks";
      const head = html`${mark(states[test.id] === "now" ? "not_proven" : test.status)}<b>${words.test_name[test.id]}</b> <span>${words.stage[nameOf(record, test, states[test.id])]}</span><small>${deciding(view, test, states[test.id])}</small>`;
      return isHead ? html`<div class="result"><p class="result-head">${head}</p></div>` : html`<div class="result">
        <button type="button" class="result-head" aria-expanded="false" @click=${unfold}>${head}</button>
        <div class="result-read">${read(view, planned(test), test)}</div></div>`;
    })}</div>
    ${tests.some((test) => test.is_close) ? html`<p>≈ ${words.code.close}</p>` : nothing}`;
}

// The readings of one part, folded on the screen; on paper they always stand.
export function unfold({ currentTarget }) {
  const isOpen = currentTarget.closest(".result, tbody").toggleAttribute("data-open");
  currentTarget.setAttribute("aria-expanded", String(isOpen));
}

// A figure with its band, its unit, and whether it is too close to tell.
const figureText = (figure, { u }) =>
  `${figure.value_text}${figure.band_text ? ` ±${figure.band_text}` : ""} ${u[`u_${figure.kind}`]} (${limitText(figure)})${figure.is_close ? " ≈" : ""}`;

// What decided a test, as text: a figure with its limit, or the check that was answered; "" where neither did.
export function decidedText(view, { decided: figure }) {
  const { words } = view;
  if (!figure) return "";
  if (figure.kind === "check") return `${words.check[figure.id]}${colon} ${words.condition[figure.value]}`;
  return `${labelOf(figure.id, view)} ${figureText(figure, view)}`;
}

function deciding(view, test, state) {
  const { words } = view;
  const figure = test.decided;
  if (state === "now") return nothing;
  if (isLeftOut(test)) return reasonOf(test, words);
  if (!figure || test.status === "not_proven") return words.code[test.code];
  if (figure.kind === "check") return figure.value === "yes" ? words.sheet.all_yes : decidedText(view, test);
  return html`${decidedText(view, test)}
    ${cautionsOf(test, words).map((caution) => html`<br>${caution}`)}`;
}

// All that was read of one test, by the place it was read at, and when the last of it was.
function read(view, test, judged) {
  const { words, record } = view;
  const { values = {}, at = {}, clock_s } = testOf(record, test.id);
  if (Object.values(values).every((value) => !value)) return nothing;
  const places = [...new Set(test.fields.map(({ id }) => placeOf(id)))];
  const times = Object.values(at);
  return html`
    ${checks(view, test, values)}
    ${places.map((place) => {
      const figures = test.fields.filter((field) => field.kind !== "check" && placeOf(field.id) === place).map((field) => entered(view, field, values[field.id]));
      const worked = judged.figures.filter(({ id, kind, value }) => kind !== "check" && value !== null && placeOf(id) === place && !test.fields.some((field) => field.id === id))
        .map((figure) => `${words.field[last(figure.id)]} ${figureText(figure, view)}`);
      return figures.length ? html`<div>${place ? `${labelOf(place, view)}${colon} ` : nothing}${[...figures, ...worked].join(", ")}</div>` : nothing;
    })}
    ${test.hold_s !== null && clock_s !== undefined ? html`<div>${minutes(clock_s)} ${fill(words.run.of, { hold: minutes(test.hold_s) })}</div>` : nothing}
    ${times.length ? html`<div>${fill(words.sheet.read_at, { time: dayTime(Math.max(...times)) })}</div>` : nothing}`;
}

const entered = ({ words, shown, u }, { id }, text) =>
  `${words.field[last(id)]} ${text ? `${shown(kindOf(id), text)} ${u[`u_${kindOf(id)}`]}` : words.sheet.not_read}`;

// Checks by their answer: no first, then what was not answered, then yes.
function checks({ words }, test, values) {
  const asked = test.fields.filter(({ kind }) => kind === "check");
  const answers = [["no", words.condition.no], [undefined, words.sheet.not_read], ["yes", words.condition.yes]];
  return answers.map(([answer, word]) => {
    const names = asked.filter(({ id }) => (values[id] || undefined) === answer).map(({ id }) => words.check[id]);
    return names.length ? html`<div class="answer-${answer ?? "none"}"><b>${word}${colon}</b> ${names.join("; ")}</div>` : nothing;
  });
}
