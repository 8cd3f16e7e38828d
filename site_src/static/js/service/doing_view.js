// What can be done now in a run, always under the thumb: the figures of the reading that stands, and the keys.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { missingView } from "./missing.js";
import { testOf } from "./record.js";
import { figureMark, limitText } from "./status.js";

export function doingView(view, test, { attempt, clock, isOpen, dues, isMissed }) {
  const { record, page, words, answer, act } = view;
  if (record.finished_ms !== null || page.asking) return nothing;
  const live = answer.live[test.id];
  const waits = answer.waits[test.id];
  const isRunning = isOpen && clock.since !== null;
  const key = (label, touch, more = "") => html`<button type="button" class="key key-wide ${more}" @click=${touch}>${label}</button>`;
  const start = (label, touch) => html`<button type="button" class="key key-wide key-act" ?disabled=${waits.length > 0} @click=${touch}>${label}</button>`;
  const wanting = waits.filter(({ code }) => code === "blank").map(({ id }) => id);
  const isUnready = waits.some(({ code }) => code === "unready");
  return html`
    <div class="doing">
      ${liveView(live, view)}
      ${live?.is_strayed ? html`<p class="doing-told">${isRunning ? words.run.straying : fill(words.run.waits_flow, { ...view.u, least: test.band_texts[0], most: test.band_texts[1] })}</p>` : nothing}
      ${wanting.length ? html`<p class="doing-told">${isRunning ? words.run.blank : words.run.waits} ${missingView(wanting, view, test)}</p>` : nothing}
      ${isUnready && !isRunning ? html`<p class="doing-told">${words.run.waits_before}</p>` : nothing}
      ${isRunning ? html`<button type="button" class="key key-wide ${live?.is_strayed ? "key-danger" : "key-act"}" ?disabled=${wanting.length > 0} @click=${() => act.take(test.id)}>
          ${live?.is_strayed ? words.run.take_stray : testOf(record, test.id).draft?.touched === false ? words.run.again : words.run.take}</button>`
        : isOpen ? start(words.run.resume, () => act.resume(test.id))
        : start(attempt ? words.run.begin_again : words.run.begin, () => act.begin(test.id))}
    </div>
    ${live?.figures.some(({ is_close }) => is_close) ? html`<p class="judged-close">${words.code.close}</p>` : nothing}
    <div class="rows">
      ${isRunning ? html`<div class="pairs">${key(words.run.pause, () => act.ask("pause"))}${key(words.run.stop, () => act.ask("stop"), "key-danger")}</div>` : nothing}
      ${!isRunning && !wanting.length && !isUnready && live?.figures[0].status === "fail" && live.is_strayed ? key(words.run.short, () => act.short(test.id), "key-danger") : nothing}
      ${isRunning && isMissed ? key(words.run.begin_again, () => act.halt("stop", words.run.missed_word, test.id)) : nothing}
      ${isOpen && !isRunning && (dues.length || attempt.clock_s < (test.hold_s ?? 0)) ? key(words.run.begin_again, () => act.halt("stop", words.run.reasons_stop.at(-1), test.id)) : nothing}
      ${isOpen && attempt.sets.length ? key(words.run.take_back, () => act.takeBack(test.id)) : nothing}
    </div>`;
}

// Net pressure and flow of the reading that is being entered. The region is always there, so that a screen reader hears them.
const liveView = (judged, { words, u }) => html`
  <div class="live" role="status">
    ${!judged ? nothing : [judged.figures[1], judged.figures[0]].map((figure) => html`
      <div class="live-figure live-${figure.status}">${figureMark(figure)}<span>${words.run[`${figure.id.split("_")[0]}_short`]} ${limitText(figure)}</span>
        <b>${figure.value_text ?? "—"} <small>${u[`u_${figure.kind}`]}${figure.is_close ? " ▲" : ""}</small></b></div>`)}
  </div>`;
