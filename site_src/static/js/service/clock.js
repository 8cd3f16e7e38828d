// The big clock of a test, and the keys that start, pause and stop it.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { minutes } from "../shared/times.js";
import { clockOf, countedS } from "./record.js";

// The clock of a part that is held: its count, and the state it is in.
export function clockView({ clock, hold_s, now, words }) {
  const counted = countedS(clock, now);
  const isRunning = clock?.since != null;
  const isOver = counted >= hold_s;
  const state = !clock ? "idle" : isOver ? "over" : isRunning ? "going" : "paused";
  return html`
    <section class="plate clock clock-${state}" aria-label=${words.run[state]}>
      <div class="clock-face" role="timer"><b ?data-long=${counted >= 3600}>${minutes(counted)}</b></div>
      <p class="clock-side clock-state"><b role="status">${words.run[state]}</b>
        <span>${isRunning && !isOver ? fill(words.run.left, { left: minutes(hold_s - counted) }) : fill(words.run.of, { hold: minutes(hold_s) })}</span></p>
    </section>`;
}

// A clock that runs while another part is looked at: its count, what is due, and the way back to it.
export const runningStrip = ({ record, words, answer, now }, name) => {
  const test = answer.plan.tests.find(({ id }) => id === name);
  const missing = answer.verdict.tests.find(({ id }) => id === name).attempts?.at(-1)?.missing ?? [];
  const due = missing.find((each) => each.startsWith("due_"));
  const counted = countedS(clockOf(record, name), now);
  const left = due ? Math.ceil(Number(due.slice(4)) - counted) : Math.ceil(test.hold_s - counted);
  return html`<a class="running-strip" href="#${record.id}/${name}"><b>${minutes(counted)}</b>
    <span><b>${words.test_name[name]}</b><small>${due ? (left <= 0 ? words.run.due : fill(words.run.due_in, { left: minutes(left) }))
      : left > 0 ? fill(words.run.left, { left: minutes(left) }) : words.run.over}</small></span></a>`;
};
