// A rig whose newest test failed, and whether anybody decided what it may do since.
import { keptRecords } from "../shared/store.js";
import { home } from "../shared/site.js";

// What the rig's log calls a test.
export const markOf = (test) => `test:${test.id}`;

// What a test came to when it was finished last: one that is opened again stands as it was until it is finished anew.
export function wordOf({ finished_ms: at, result, versions = [] }) {
  if (result) return { at_ms: at, status: result.status };
  const last = versions.at(-1);
  return last?.status ? { at_ms: last.wall, status: last.status } : null;
}

// The rig's newest test that says anything of it, where it failed, or null: no date of a passed one makes up for it.
export async function lastFailed(rig) {
  const said = (await keptRecords("tests")).filter(({ rig_id: id }) => id === rig.id).map((test) => ({ test, ...wordOf(test) }));
  const [last] = said.filter(({ status }) => status === "pass" || status === "fail").sort((one, other) => other.at_ms - one.at_ms);
  return last?.status === "fail" ? last : null;
}

// The same test where nobody decided what the rig may do, or null.
export async function undecided(rig) {
  const last = await lastFailed(rig);
  return last && !(await keptRecords("bay")).some(({ kind, item }) => kind === "defect" && item === markOf(last.test)) ? last.test : null;
}

// Where it is decided: on its sheet, and for one that is opened again once that is finished.
export const toDecision = ({ id, finished_ms: at }) => new URL(`test/${at === null ? "run" : "sheet"}/#${id}`, home).href;
