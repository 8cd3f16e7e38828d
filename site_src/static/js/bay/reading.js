// An item's figure: its limit and whose it is, what was read before, the clock where it has one, and a tray of figures near the last.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { live } from "../shared/notice.js";
import { fill } from "../shared/site.js";
import { day, minutes } from "../shared/times.js";
import { bare } from "../shared/units.js";
import { whoseOf } from "./department.js";
import { limitText, unitOf } from "./sentences.js";

export function readingView(view, row) {
  const { state, words, act } = view;
  const typed = bare(state.entry);
  const judged = state.judged;
  const middle = typed || state.start;
  const figure = (text, isHere) => html`<button type="button" class="key" aria-pressed=${isHere ? "true" : "false"} @click=${() => act.enter(text)}>${text}</button>`;
  return html`
    <p class="bay-limit"><b>${limitText(state.limit, row, view)}</b> <small>${limitOf(view, row)}</small></p>
    ${row.clock_s || row.tool ? clockView(view, row) : nothing}
    <div class="bay-reading" data-good=${isAsked(state) ? nothing : judged?.is_good ?? nothing}>
      <input id="reading" inputmode="decimal" autocomplete="off" aria-label=${words.round.reading} placeholder="–" .value=${typed} aria-invalid=${state.refused ? "true" : "false"} @input=${({ target }) => act.enter(target.value)}>
      <span>${unitOf(row, view)}</span>
      ${unreadKey(view)}
      <b role="status">${isAsked(state) ? askedText(view, row, typed) : state.refused ?? (judged ? words.side[judged.side ?? (judged.is_good === null ? "aim" : "good")] : state.isUnread ? words.round.not_read : words.round.waits)}</b></div>
    ${askKeys(view, row)}
    <div class="tray" role="group" aria-label=${words.round.tray}>
      ${(state.near?.below ?? []).map((text) => figure(text, false))}${figure(middle, Boolean(typed))}${(state.near?.above ?? []).map((text) => figure(text, false))}</div>
    ${state.earlier.length ? html`<p class="bay-earlier">${words.round.earlier} ${(judged?.earlier ?? [{ at_ms: state.earlier.at(-1).at_ms, text: state.last }]).map(({ at_ms, text }) => html`<span><b>${text}</b> ${day(at_ms)}</span> `)}
      ${judged?.trend && judged.trend !== "level" ? html`<b>${words.trend[judged.trend]}</b>` : nothing}</p>` : nothing}`;
}

// Whether a figure past the plausible waits for its reader: it is neither good nor not good until it is put right or said again.
export const isAsked = ({ judged, entry, said }) => Boolean(judged?.asked) && said !== entry;

const askedText = (view, row, typed) => {
  const { asked } = view.state.judged;
  return fill(view.words.round[asked.meant ? "asked_meant" : "asked"], { ...asked, value: typed, unit: unitOf(row, view) });
};

// The ways on from a figure past the plausible: the one that was meant, or the same said again.
function askKeys(view, row) {
  const { state, words, act } = view;
  if (!isAsked(state)) return nothing;
  const { meant } = state.judged.asked;
  return html`<div class="bay-asked">
    ${meant ? html`<button type="button" class="key" @click=${() => act.enter(meant)}>${meant} ${unitOf(row, view)}</button>` : nothing}
    <button type="button" class="key" @click=${act.sayAgain}>${fill(words.round.asked_so, { value: bare(state.entry) })}</button></div>`;
}

// What is said of a reading where it stands by itself: why it is none, or what is asked of it.
export const askedView = (view, row) => html`${live(isAsked(view.state) ? html`<p>${askedText(view, row, bare(view.state.entry))}</p>` : view.state.refused ? html`<p class="refusal">${view.state.refused}</p>` : nothing)}${askKeys(view, row)}`;

// Whose the limit is: set on this phone, of the rig's profile, its department's, or the list's.
export function limitOf({ own, words }, { limit }) {
  if (own) return fill(words.round.own_limit, { whose: own.whose });
  return limit.whose ? whoseOf(`limit_${limit.whose}`, limit.reason, { words }) : words.round.list_limit;
}

// Where nothing can be read: said, not left out.
export const unreadKey = ({ state, words, act }) => (bare(state.entry) || state.figures.length || state.isUnread ? nothing
  : html`<button type="button" class="key" @click=${act.unread}>${words.round.unread}</button>`);

export function clockView({ words, act, clock }, row) {
  const isOn = clock.began !== null && !clock.isOver;
  const left = clock.whole_s && clock.began !== null ? Math.max(0, clock.whole_s - clock.seconds) : clock.seconds;
  return html`
    <div class="bay-clock">
      <span role="timer" class="bay-time">${clock.began === null ? minutes(row.tool === "up" ? 0 : row.clock_s ?? 60) : minutes(row.tool === "up" ? left : Math.ceil(left))}</span>
      ${isOn && row.tool ? html`<button type="button" class="key key-act" @click=${act.tap}>${row.tool === "taps" ? fill(words.clock.drip, { count: clock.taps }) : words.clock.stop}</button>`
        : html`<button type="button" class="key" @click=${act.clock}>${clock.began === null ? words.clock.start : words.clock.again}</button>`}
      ${clock.isOver && !row.tool ? html`<b role="status">${row.limit ? words.clock.over : words.clock.over_look}</b>` : nothing}
      ${clock.away_s >= 1 ? html`<small>${fill(words.clock.away, { seconds: Math.round(clock.away_s) })}</small>` : nothing}
    </div>`;
}
