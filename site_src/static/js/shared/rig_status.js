// The status of the chosen rig in one sentence above every page, as long as there is something it may not do. The bay works
// it out (calc.bay.standing) and jots it down here, where the next page reads it at once.
import { chosen, jot } from "./choices.js";
import { day } from "./times.js";

const nameOf = (id) => `bay:${id}`;

// { state, since_ms, stops_pump, is_waiting, what, limits, count } or null where nothing was ever written of the rig.
export function statusOf(id) {
  try {
    return JSON.parse(chosen(nameOf(id), "null"));
  } catch {
    return null; // nothing of ours
  }
}

export function jotStatus(id, { state, since_ms, stops_pump, is_waiting, defects: [worst], defects }) {
  const seen = worst?.seen ? `${worst.what}: ${worst.seen}` : worst?.what ?? "";
  jot(nameOf(id), JSON.stringify({ state, since_ms, stops_pump, is_waiting, what: seen, limits: worst?.limits ?? "", count: defects.length }));
  showStatus();
}

// The sentence in `words`, which has one for each state, one for what waits for release, and the colon's place.
export function sentenceOf(status, words) {
  const parts = [status.limits && status.state === "restricted" ? `${words.restricted} ${status.limits}.` : words[status.state]];
  if (status.is_waiting) parts.push(words.is_waiting);
  if (status.what) parts.push(`${status.what}, ${day(status.since_ms)}.`);
  return parts.join(" ");
}

const LIMITS = new Set(["out_of_service", "pump_out", "restricted"]);

export function showStatus() {
  const place = document.getElementById("rig-status");
  const id = chosen("rig", null);
  const status = id ? statusOf(id) : null;
  place.hidden = !status || !LIMITS.has(status.state);
  if (place.hidden) return;
  place.dataset.state = status.state;
  place.querySelector("a").textContent = sentenceOf(status, place.dataset);
}
