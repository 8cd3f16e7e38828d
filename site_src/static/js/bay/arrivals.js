// Another phone's records let into a log. What is here already is not looked at again; the rest crosses to calc.bay.records in
// parts, once, without its pictures. The log ends the same in whatever order the records come, twice, or partly.
const BATCH = 300; // records that cross at once
const MOST_CHARACTERS = 300_000; // of one, and of those before it: with what stands here less than calc.phone takes
const MOST_PICTURE = 300_000;
const PICTURE = /^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/;

const isPicture = (picture) => typeof picture === "string" && picture.length <= MOST_PICTURE && PICTURE.test(picture);

// A picture is looked at here: calc has no part in it.
function bare(record) {
  if (record?.kind !== "photo") return record;
  const { picture: _, ...rest } = record;
  return rest;
}

export const inOrder = (record) => Object.fromEntries(Object.keys(record).sort().map((key) => [key, record[key]]));
const spelled = (record) => JSON.stringify(inOrder(bare(record)));

// A photo here with the picture of another that has its id: filled in where it has none; of two that are else alike the greater,
// on every phone. null where it stays as it is.
function pictured(there, record) {
  if (record.kind !== "photo" || there?.kind !== "photo" || !isPicture(record.picture)) return null;
  const isGreater = there.picture < record.picture && spelled(there) === spelled(record);
  return isGreater || !isPicture(there.picture) ? { ...there, picture: record.picture } : null;
}

// What is wrong with the picture of an arriving photo: a code, or null.
function flaw({ kind, picture }) {
  if (kind !== "photo" || isPicture(picture)) return null;
  return picture === undefined ? "missing" : "unknown";
}

// Let records into `log`: `ask` and `keep` are the doors to calc and to what the phone keeps. Resolves to
// { taken, same, refused: [{ at, field, code }] }.
export async function letIn(arriving, log, { ask, keep }) {
  const here = new Map(log.records.map((record) => [record.id, record]));
  const came = { taken: 0, same: 0, refused: [] };
  let part = [];
  let size = 0;
  const cross = async () => {
    if (part.length) await judge(part, here, came, { rig: log.rig.id, ask, keep });
    [part, size] = [[], 0];
  };
  try {
    for (const [at, record] of arriving.entries()) {
      const there = here.get(record?.id);
      const text = JSON.stringify(bare(record)).length + (there ? JSON.stringify(bare(there)).length : 0);
      const isHere = there !== undefined && spelled(there) === spelled(record);
      const code = record === null || isHere && record.picture === undefined ? null : flaw(record);
      if (code || text > MOST_CHARACTERS) came.refused.push({ at, field: code ? "picture" : "record", code: code ?? "too_long" });
      else if (isHere && !pictured(there, record)) came.same += 1;
      else {
        if (part.length === BATCH || size + text > MOST_CHARACTERS) await cross();
        part.push({ at, record });
        size += text;
      }
    }
    await cross();
  } finally {
    log.records = [...here.values()];
  }
  came.refused.sort((one, other) => one.at - other.at);
  return came;
}

async function judge(part, here, came, { rig, ask, keep }) {
  const standing = new Map(part.filter(({ record }) => here.has(record?.id)).map(({ record }) => [record.id, here.get(record.id)]));
  const answer = await ask("records.taken", { arriving: part.map(({ record }) => bare(record)), standing: [...standing.values()].map(bare) });
  const isTaken = new Set([...answer.add, ...answer.change]);
  const refused = new Map(answer.refused.map((refusal) => [refusal.at, refusal]));
  const taken = new Map();
  for (const [place, { at, record }] of part.entries()) {
    const there = taken.get(record?.id) ?? standing.get(record?.id);
    if (refused.has(place)) came.refused.push({ ...refused.get(place), at });
    else if (record.rig_id !== rig) came.refused.push({ at, field: "rig_id", code: "unknown" });
    else if (isTaken.has(place)) taken.set(record.id, record);
    else if (pictured(there, record)) taken.set(record.id, pictured(there, record));
    else came.same += 1;
  }
  if (!taken.size) return;
  await keep([...taken.values()]);
  for (const [id, record] of taken) here.set(id, record);
  came.taken += taken.size;
}
