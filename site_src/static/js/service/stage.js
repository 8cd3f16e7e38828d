// Where a part of a test stands, before it is over and after: to do, begun, now, passed, close, failed, left out with why, open.
import { clockOf, testOf } from "./record.js";
import { isUnderWay } from "./run_state.js";

// Whether the tester left it out, or no source under pressure can show it.
export const isLeftOut = ({ not_done: reason, missing = [] }) => Boolean(reason) || missing.includes("not_from_draft");

// "open": entries are there and it says neither yes nor no; once the test is finished nothing is to do any more.
export function stateOf(record, test, judged) {
  const { values, attempts, draft } = testOf(record, test.id);
  if (clockOf(record, test.id)?.since != null || (test.kind === "run" && isUnderWay(record, test, judged))) return "now";
  if (judged.status === "fail") return "failed";
  if (isLeftOut(judged)) return "left";
  if (judged.status === "pass") return judged.is_close ? "close" : "passed";
  const isBegun = Boolean(attempts?.length || draft || Object.values(values ?? {}).some(Boolean)
    || (test.kind === "conditions" && test.fields.some(({ id }) => record.conditions[id])));
  if (record.finished_ms !== null) return "open";
  return attempts?.length && !isUnderWay(record, test, judged) ? "open" : isBegun ? "begun" : "todo";
}

// The same as a station of the line.
export const STATION = { todo: "todo", begun: "todo", now: "here", passed: "proven", close: "proven", failed: "shut", left: "skipped", open: "skipped" };

// How many parts stand where: each in one of these.
export function countsOf(states) {
  const count = (...names) => states.filter((state) => names.includes(state)).length;
  return { pass: count("passed", "close"), fail: count("failed"), todo: count("todo", "begun", "now"), open: count("open"), left: count("left") };
}

// The parts of the line, each with the tests in it.
export const GROUPS = [
  ["before", ["conditions", "checks_dry", "interlock", "shift", "governed", "gauges_zero"]],
  ["dry", ["hydrostatic", "vacuum", "vacuum_valves"]],
  ["pumping", ["priming", "capacity", "overload", "seventy", "fifty"]],
  ["controls", ["pressure_control", "governor", "relief_valve", "transfer", "intake_relief", "tank", "tank_level"]],
  ["panel", ["gauges", "line_gauges", "compound", "meters", "foam"]],
  ["after", ["leaks"]],
];

// The part to go on with: one that runs, else the first to do, else the first that wants something yet; null where all is done.
export function nextPart(tests, states) {
  for (const wanted of ["now", "todo", "begun"]) {
    const test = tests.find(({ id }) => states[id] === wanted);
    if (test) return test;
  }
  return null;
}

// Its word: one that is under way may stand still.
export const nameOf = (record, test, state) => (state === "now" && clockOf(record, test.id)?.since == null ? "paused" : state);
