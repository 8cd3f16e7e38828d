// The big clock of a test, and the keys that start, pause and stop it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { clockOf, countedS } from "./record.js";

export const minutes = (seconds) => {
  const whole = Math.floor(Math.max(seconds, 0));
  const two = (part) => String(part).padStart(2, "0");
  const hours = Math.floor(whole / 3600);
  return `${hours ? `${hours}:` : ""}${hours ? two(Math.floor(whole / 60) % 60) : Math.floor(whole / 60)}:${two(whole % 60)}`;
};

// What a clock says: its count, and the state it is in.
export function clockView({ clock, stopped = null, hold_s, due = undefined, now, words }) {
  const counted = countedS(clock, now);
  const isRunning = clock?.since != null;
  const isOver = hold_s !== null && counted >= hold_s;
  const state = !clock ? "idle" : isRunning ? (isOver ? "over" : "going") : stopped === "flow_strayed" ? "strayed" : stopped ? "stopped" : isOver ? "over" : "paused";
  const left = due === null || due === undefined ? null : Math.ceil(due - counted);
  return html`
    <section class="clock clock-${state}" aria-label=${words.run[state]}>
      <div class="clock-face" role="timer"><b ?data-long=${counted >= 3600}>${minutes(counted)}</b></div>
      <p class="clock-state"><b role="status">${words.run[state]}</b>${hold_s === null ? nothing
        : html`<span>${isRunning && !isOver ? fill(words.run.left, { left: minutes(hold_s - counted) }) : fill(words.run.of, { hold: minutes(hold_s) })}</span>`}</p>
      ${isRunning && due !== undefined
        ? html`<p class="clock-due" ?data-due=${left !== null && left <= 0}>${left > 0 ? fill(words.run.due_in, { left: minutes(left) }) : nothing}<span role="status">${
          left === null ? words.run.all_read : left <= 0 ? words.run.due : nothing}</span></p>`
        : nothing}
    </section>`;
}

// A clock that runs while another part is looked at: its count, what is due, and the way back to it.
export const runningStrip = ({ record, words, answer, now }, name) => {
  const test = answer.plan.tests.find(({ id }) => id === name);
  const missing = answer.verdict.tests.find(({ id }) => id === name).attempts?.at(-1).missing ?? [];
  const due = missing.find((each) => each.startsWith("due_"));
  const counted = countedS(clockOf(record, name), now);
  const left = due ? Math.ceil(Number(due.slice(4)) - counted) : Math.ceil(test.hold_s - counted);
  return html`<a class="part running-strip" href="#${record.id}/${name}"><b>${minutes(counted)}</b>
    <span><b>${words.test_name[name]}</b><small>${due ? (left <= 0 ? words.run.due : fill(words.run.due_in, { left: minutes(left) }))
      : left > 0 ? fill(words.run.left, { left: minutes(left) }) : words.run.over}</small></span></a>`;
};

// A reason is asked for before a clock halts; `asking` is "pause" or "stop".
export const reasonView = ({ asking, words, act }) => html`
  <section class="notice" role="group" aria-label=${words.run[asking]}>
    <h2>${words.run[asking]}${colon} ${words.run.reason}</h2>
    <div class="rows">
      ${words.run[`reasons_${asking}`].map((reason) => html`<button type="button" class="key key-wide" @click=${() => act.halt(asking, reason)}>${reason}</button>`)}
      <button type="button" class="key key-wide key-act" @click=${() => act.ask(null)}>${words.run.never_mind}</button>
    </div>
  </section>`;
