// The clock of a test that runs, as every other page's strip shows it.
import { runs } from "../shared/running.js";
import { clockOf, countedS, runningIn } from "./record.js";
import { runState } from "./run_state.js";

const TELL_MS = 1500; // smaller changes of a time are the coarseness of timers
const KIND = "test";
let said = null;

export const addressOf = (id, part = "") => `test/run/#${id}${part && `/${part}`}`;

// answer: of calc, of the record as it is, or null; now: of the steady clock
export function tell({ record, answer, words, now }) {
  const what = whatRuns({ record, answer, words, now });
  if (what === undefined || (said !== null && same(what, said.what))) return;
  said = { what };
  runs(KIND, what);
}

// A test that is no longer on this phone, or that another took over, runs no more here.
export function runsNoMore(id, running) {
  if (running[KIND]?.address.startsWith(addressOf(id))) runs(KIND, null);
}

const near = (one, other) => one === other || (Number.isFinite(one) && Number.isFinite(other) && Math.abs(one - other) < TELL_MS);
const same = (one, other) => one === other || Boolean(one && other && one.title === other.title && one.address === other.address
  && near(one.began_at, other.began_at) && near(one.due_at, other.due_at));

function whatRuns({ record, answer, words, now }) {
  if (record.finished_ms !== null) return null;
  const [name] = runningIn(record);
  if (!name) return null;
  if (!answer?.plan) return undefined; // not known yet: what was said stands
  const test = answer.plan.tests.find(({ id }) => id === name);
  if (!test) return null;
  const counted = countedS(clockOf(record, name), now);
  const due = test.kind === "run" ? runState(record, test, answer.verdict.tests.find(({ id }) => id === name), now).due : test.hold_s;
  const wall = Date.now();
  return {
    title: words.test_name[name], said: ["test/", "words", "test_name", name], address: addressOf(record.id, name), began_at: Math.round(wall - 1000 * counted),
    ...(due === null ? {} : { due_at: Math.round(wall + 1000 * (due - counted)) }),
  };
}
