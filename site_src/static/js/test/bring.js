// Lets tests in from files of other phones. Each is judged anew by calc.service_file before it is kept; one that is here
// already stays as it is. An unfinished one is not let in: its clocks hang on the phone it was begun on.
import { Refusal } from "../engine.js";
import { fill } from "../site.js";
import { keepRecord } from "../store.js";

const LARGEST_FILE = 20_000_000; // some hundreds of whole tests

// What came of the files: the tests kept, and sentences for a person.
export async function bring({ files, tests, call, units, words }) {
  const here = new Map(tests.map((test) => [test.id, test]));
  const taken = [];
  const said = [];
  let already = 0;
  let unkept = 0;
  for (const file of files) {
    for (const given of await recordsOf(file, said, words)) {
      const told = judge(given, { call, units });
      if (told.refused) {
        said.push(fill(words.years.refused, { name: nameOf(given, file), reason: fill(words.file[told.refused.code] ?? words.file[told.refused.field] ?? words.file.not_a_test, { at: told.refused.at || "?" }) }));
        continue;
      }
      const { record } = told;
      if ((record.finished_ms ?? null) === null) {
        said.push(fill(words.years.refused, { name: nameOf(record, file), reason: words.file.unfinished }));
        continue;
      }
      if (here.has(record.id)) {
        already += 1;
        continue;
      }
      if (!(await keepRecord("tests", record))) {
        unkept += 1;
        continue;
      }
      here.set(record.id, record);
      taken.push(record);
      if (told.claimed) said.push(claim(told, nameOf(record, file), words));
    }
  }
  if (unkept) said.unshift(fill(words.years.unkept, { count: unkept }));
  if (already) said.unshift(fill(words.years.here, { count: already }));
  said.unshift(taken.length === 1 ? words.years.taken_one : fill(words.years.taken, { count: taken.length }));
  return { taken, tests: [...here.values()], said };
}

async function recordsOf(file, said, words) {
  const refuse = (reason) => {
    said.push(fill(words.years.refused, { name: file.name, reason: words.file[reason] }));
    return [];
  };
  if (file.size > LARGEST_FILE) return refuse("too_large");
  let text;
  try {
    text = await file.text();
  } catch {
    return refuse("unreadable");
  }
  try {
    const given = JSON.parse(text);
    return Array.isArray(given) ? given : [given];
  } catch {
    return refuse("not_json");
  }
}

function judge(record, { call, units }) {
  try {
    return call("service_file.judged", { record, units });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refused: refusal };
  }
}

const claim = ({ claimed, verdict }, name, words) =>
  fill(words.status[claimed] ? words.years.claimed : words.years.claimed_none, { name, claimed: words.status[claimed], status: words.status[verdict?.status ?? "not_proven"] });

const nameOf = (given, file) => (typeof given?.rig_name === "string" ? `${file.name}, ${given.rig_name.slice(0, 60)}` : file.name);
