// The sheet's results: each test with its verdict, what decided it, and, where it is no pumping run, all that was read.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { dayTime } from "../shared/times.js";
import { minutes } from "./clock.js";
import { kindOf, labelOf, last, placeOf } from "./entries.js";
import { testOf } from "./record.js";
import { limitText, verdictView } from "./status.js";

export function resultsView(view) {
  const { words, answer } = view;
  const told = (test) => answer.plan.tests.find(({ id }) => id === test.id);
  return html`
    <div class="scroll" tabindex="0" role="region" aria-label=${words.sheet.results}><table class="results">
      <caption>${words.sheet.results}</caption>
      <thead><tr><th scope="col">${words.sheet.part}</th><th scope="col">${words.sheet.result}</th><th scope="col">${words.test.decided}</th><th scope="col">${words.sheet.readings}</th></tr></thead>
      <tbody>${answer.verdict.tests.map((test) => html`<tr><th scope="row">${words.test_name[test.id]}</th><td>${verdictView(test.status, words)}</td>
        <td>${deciding(view, test)}</td><td>${told(test).kind === "run" ? (test.attempts.length ? words.sheet.below : words.sheet.nothing_read) : read(view, told(test), test)}</td></tr>`)}</tbody>
    </table></div>
    ${answer.verdict.tests.some((test) => test.decided?.is_close) ? html`<p>▲ ${words.code.close}</p>` : nothing}`;
}

// A figure with its band, its unit, and whether it is too close to tell.
const figureText = (figure, { u }) =>
  `${figure.value_text}${figure.band_text ? ` ±${figure.band_text}` : ""} ${u[`u_${figure.kind}`]} (${limitText(figure)})${figure.is_close ? " ▲" : ""}`;

function deciding(view, test) {
  const { words } = view;
  const figure = test.decided;
  if (test.not_done) return fill(words.test.not_done_kept, { reason: test.not_done });
  if (!figure || test.status === "not_proven") return words.code[test.code];
  if (figure.kind === "check") return figure.value === "yes" ? words.sheet.all_yes : `${words.check[figure.id]}${colon} ${words.condition[figure.value]}`;
  return html`${labelOf(figure.id, view)} ${figureText(figure, view)}
    ${test.cautions.map((caution) => html`<br>${fill(words.caution[caution.code], { value: caution.value_text, limit: caution.limit_text })}`)}`;
}

// All that was read of one test, by the place it was read at, and when the last of it was.
function read(view, test, judged) {
  const { words, record } = view;
  if (test.kind === "conditions") return words.sheet.above;
  const { values = {}, at = {}, clock_s } = testOf(record, test.id);
  if (Object.values(values).every((value) => !value)) return words.sheet.nothing_read;
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
    return names.length ? html`<div><b>${word}${colon}</b> ${names.join("; ")}</div>` : nothing;
  });
}
