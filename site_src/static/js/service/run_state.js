// Where a pumping run stands: its clock, what is due and what was missed, and whether it is over, before which there is no verdict.
import { attemptOf, clockOf, countedS } from "./record.js";

// Whether a run has begun and is not over yet: neither stopped, nor finished with its test, nor held to its end with its last reading.
export const isUnderWay = (record, test, judged) => runState(record, test, judged, 0).isUnderWay;

export function runState(record, test, judged, now) {
  const attempt = attemptOf(record, test.id);
  const clock = clockOf(record, test.id);
  const counted = countedS(clock, now);
  const isOpen = attempt !== null && !attempt.stopped;
  const isRunning = isOpen && clock.since !== null;
  const wanted = judged.attempts.at(-1)?.missing ?? test.due_s.map((at) => `due_${at}`);
  const dues = wanted.filter((name) => name.startsWith("due_")).map((name) => Number(name.slice(4)));
  const missed = isOpen ? dues.filter((at) => isPast(test, at, counted)) : [];
  const due = isOpen ? dues.find((at) => !missed.includes(at)) ?? null : null;
  const isOver = test.hold_s !== null && counted >= test.hold_s && !(isOpen && due !== null && !isRunning);
  const state = !clock ? "idle" : isRunning ? (isOver ? "over" : "going") : attempt.stopped === "flow_strayed" ? "strayed" : attempt.stopped ? "stopped" : isOver ? "over" : "paused";
  const isUnderWay = record.finished_ms === null && isOpen && (isRunning || test.hold_s === null || counted < test.hold_s || due !== null);
  return { attempt, clock, counted, dues, missed, due, isOpen, isRunning, state, isUnderWay, at: dueAt(test, dues, counted) };
}

// The reading that one taken now counts as, or null: the nearest of those that are due; the last not before its end.
function dueAt({ due_s, hold_s, end_grace_s }, dues, counted) {
  const nearest = due_s.reduce((best, at) => (Math.abs(at - counted) < Math.abs(best - counted) ? at : best), due_s[0] ?? 0);
  return dues.includes(nearest) && (nearest !== hold_s || counted >= hold_s - end_grace_s) ? nearest : null;
}

// A reading that was due then can no longer be taken: whatever is read now is nearer to the next.
function isPast({ due_s }, due, counted) {
  const next = due_s[due_s.indexOf(due) + 1];
  return next !== undefined && counted > (due + next) / 2;
}
