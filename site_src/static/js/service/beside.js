// What stands beside an entry: the figure when the pump was new, and at its last test.
import { fill } from "../shared/site.js";
import { isAcceptance } from "./record.js";
import { kindOf } from "./entries.js";

// besideOf(view, test, field) gives the words, or null where neither is known; its `earlier` are the tests they come from.
export function besideMaker({ tests, record }) {
  const earlier = tests
    .filter((each) => each.rig_id === record.rig_id && each.id !== record.id && each.result && each.finished_ms < record.begun_ms)
    .sort((one, other) => one.finished_ms - other.finished_ms);
  const sources = [["new", earlier.find(isAcceptance)], ["last", earlier.at(-1)]];
  return Object.assign(({ words, shown, u }, test, field) => {
    const told = sources.map(([source, from]) => {
      const text = from && readIn(from, test, field);
      return text ? fill(words.test[`when_${source}`], { value: `${shown(kindOf(field), text)} ${u[`u_${kindOf(field)}`]}` }) : null;
    }).filter(Boolean);
    return told.length ? told.join(" · ") : null;
  }, { earlier: sources.map(([, from]) => from).filter(Boolean) });
}

// What an earlier test read there, as typed; of a run, the set in the middle of its last attempt.
function readIn(record, test, field) {
  if (test === "conditions" && record.conditions[field]) return record.conditions[field];
  const given = record.tests[test];
  const sets = given?.attempts?.at(-1)?.sets;
  const value = sets ? sets[Math.floor(sets.length / 2)]?.values[field] : given?.values?.[field];
  return Array.isArray(value) ? value[0] : value;
}
