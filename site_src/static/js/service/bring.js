// Lets tests in from files of other phones, and a rig's baseline where it has none here. Each is judged anew by calc.service.file before it is kept. One that is here already
// stays as it is, unless it is unfinished here and the file's went further. A clock that ran on the other phone comes in paused.
import { calc, Refusal } from "../shared/engine.js";
import { partAnd } from "../shared/entries.js";
import { fill } from "../shared/site.js";
import { keepRecord } from "../shared/store.js";
import { day } from "../shared/times.js";
import { unlessHeld } from "./hold.js";
import { takeBaseline } from "./quick_record.js";
import { apart, takePhotos } from "./test_photos.js";
import { broughtOver, newestFirst } from "./record.js";

const MOST_SAID = 20; // sentences about what was wrong; the rest is counted

// What came of the files: the tests kept, and sentences for a person.
export async function bring({ files, tests, units, data }) {
  const { words, standards, former, bounds } = data;
  const here = new Map(tests.map((test) => [test.id, test]));
  const taken = [];
  const said = [];
  let already = 0;
  let unkept = 0;
  for (const file of files) {
    const { part, others } = await partAnd(file, "tests", "photos");
    for (const { record: given, photos } of (await recordsOf(part, said, { bounds, words })).map((each) => apart(each, others))) {
      const told = await judge(given, { units, standards, former });
      const pictures = async (record) => {
        const strange = await takePhotos(record, photos);
        if (strange) said.push(fill(words.photo.strange, { name: nameOf(record, file), count: strange }));
      };
      if ("baseline" in told) {
        said.push(fill(words.baseline[await takeBaseline(told, data.quick.step_psi.length)], { name: told.rig_name, date: day(told.baseline.at_ms) }));
        continue;
      }
      if ("refused" in told) {
        said.push(fill(words.years.refused, { name: nameOf(given, file), reason: fill(words.file[told.refused.code] ?? words.file[told.refused.field] ?? words.file.not_a_test, { at: told.refused.at || "?" }) }));
        continue;
      }
      if (here.has(told.record.id) && !isFurther(told.record, here.get(told.record.id))) {
        already += 1;
        await pictures(here.get(told.record.id));
        continue;
      }
      const record = broughtOver(told.record, { reason: words.test.other_phone, wall: Date.now() });
      const kept = await unlessHeld(record.id, () => keepRecord("tests", record));
      if (kept === false) {
        said.push(fill(words.years.refused, { name: nameOf(record, file), reason: words.file.open_here }));
        continue;
      }
      if (kept === "unkept") {
        unkept += 1;
        continue;
      }
      here.set(record.id, record);
      taken.push(record);
      await pictures(record);
      if (told.edition) said.push(fill(words.years.former, { name: nameOf(record, file), edition: told.edition }));
      if (told.claimed) said.push(claim(told, nameOf(record, file), words));
    }
  }
  if (unkept) said.unshift(fill(words.years.unkept, { count: unkept }));
  if (already) said.unshift(fill(words.years.here, { count: already }));
  said.unshift(taken.length === 1 ? words.years.taken_one : fill(words.years.taken, { count: taken.length }));
  return { taken, tests: newestFirst(here.values()), said: shortened(said, words) };
}

const shortened = (said, words) => (said.length > MOST_SAID ? [...said.slice(0, MOST_SAID), fill(words.years.more_said, { count: said.length - MOST_SAID })] : said);

const isFurther = (given, standing) => standing.finished_ms === null && given.revision > standing.revision;

async function recordsOf(file, said, { bounds, words }) {
  const refuse = (reason) => {
    said.push(fill(words.years.refused, { name: file.name, reason: words.file[reason] }));
    return [];
  };
  if (file.size > bounds.largest_bytes) return refuse("too_large");
  let text;
  try {
    text = await file.text();
  } catch {
    return refuse("unreadable");
  }
  try {
    const given = JSON.parse(text);
    const records = Array.isArray(given) ? given : [given];
    return records.length > bounds.most_records ? refuse("too_many") : records;
  } catch {
    return refuse("not_json");
  }
}

async function judge(given, { units, standards, former }) {
  try {
    if (given?.baseline !== undefined) return await calc.ask("service.baseline", { content: given }, { units });
    return await calc.ask("service.judged", { record: given }, { units, standards, former });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refused: /** @type {any} */ (refusal) }; // its facts go by its code
  }
}

const claim = ({ claimed, verdict }, name, words) =>
  fill(words.status[claimed] ? words.years.claimed : words.years.claimed_none, { name, claimed: words.status[claimed], status: words.status[verdict?.status ?? "not_proven"] });

const nameOf = (given, file) => (typeof given?.rig_name === "string" ? `${file.name}, ${given.rig_name.slice(0, 60)}` : file.name);
