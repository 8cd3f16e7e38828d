// The status of the chosen rig in one sentence above every page, as long as there is something it may not do. The bay works
// it out (calc.bay.standing) and jots it down here, where the next page reads it at once.
import { chosen, jot } from "./choices.js";
import { fill } from "./site.js";
import { aheadMin, day } from "./times.js";

const DAY_MS = 86400000;
const nameOf = (id) => `bay:${id}`;

const LIMITS = new Set(["out_of_service", "pump_out", "restricted"]);

// As statusFrom gives it, or null where nothing was ever written of the rig.
export function statusOf(id) {
  try {
    return JSON.parse(chosen(nameOf(id), "null"));
  } catch {
    return null; // nothing of ours
  }
}

// A defect and what was seen of it, in a row.
export const whatOf = ({ what, seen }) => (seen ? `${what}: ${seen}` : what);

// As much of it as the sentence above every page has room for; the defect itself has the whole.
const MOST_SAID = 120;
const briefly = (defect) => {
  const said = whatOf(defect);
  return said.length > MOST_SAID ? `${said.slice(0, MOST_SAID - 1).trimEnd()}…` : said;
};

// What is jotted down of a standing: the worst defect, the one that takes the pump out where there is one, and how many limit the rig.
export function statusFrom({ state, since_ms, stops_pump, is_waiting, defects: [worst], defects }) {
  const ofPump = defects.find((defect) => defect.state === "pump_out");
  return {
    state, since_ms, stops_pump, is_waiting, what: worst ? briefly(worst) : "", limits: worst?.limits ?? "", limiting: defects.filter((defect) => limitsRig(defect)).length,
    pump: ofPump ? { what: briefly(ofPump), since_ms: ofPump.at_ms, is_waiting: ofPump.repaired_by !== null } : null,
  };
}

export const limitsRig = ({ state }) => LIMITS.has(state);
export const stopsPump = (rig) => Boolean(rig && statusOf(rig.id)?.stops_pump);

export function jotStatus(id, standing) {
  jot(nameOf(id), JSON.stringify(statusFrom(standing)));
  showStatus();
}

// The sentence in `words`, which has one for each state, one for what waits for release, and one for how many more limit the rig.
// On a page that leads into pump, what stops the pump comes first.
export function sentenceOf(status, words, isIntoPump = false) {
  const { state, limits, what, since_ms, is_waiting } = isIntoPump && status.pump ? { state: "pump_out", limits: "", ...status.pump } : status;
  const parts = [limits && state === "restricted" ? `${words.restricted} ${limits}.` : words[state]];
  if (isIntoPump && state === "out_of_service") parts.push(words.no_pump);
  if (is_waiting) parts.push(words.is_waiting);
  if (what) parts.push(`${what}, ${day(Math.min(since_ms, Date.now()))}.`); // a clock that was ahead wrote it
  if (status.limiting > 1) parts.push(fill(words.more, { count: status.limiting - 1 }));
  return parts.join(" ");
}

const dueOf = (id) => `bay-due:${id}`;
export const today = () => Math.floor((Date.now() + aheadMin() * 60000) / DAY_MS);

// Jot down when each row of a rig's due board is due, as whole days; 0 for one that is overdue by its hours or miles.
export function jotDue(id, rows) {
  const days = rows.map(({ standing, due_day: due }) => (standing === "overdue" && !(due < today()) ? 0 : due));
  jot(dueOf(id), JSON.stringify(days.filter((day) => day !== null)));
}

// How many rows of its due board are overdue by now.
export function overdue(id) {
  try {
    return JSON.parse(chosen(dueOf(id), "[]")).filter((day) => day < today()).length;
  } catch {
    return 0; // nothing of ours
  }
}

export function showStatus() {
  const place = document.getElementById("rig-status");
  const id = chosen("rig", null);
  const status = id ? statusOf(id) : null;
  place.hidden = !status || !LIMITS.has(status.state) || "gate" in document.body.dataset; // a gate says it itself
  if (place.hidden) return;
  place.dataset.state = status.state;
  place.querySelector("a").textContent = sentenceOf(status, place.dataset, "intoPump" in document.body.dataset);
}
