// What is kept and cannot be read, whoever spoiled it, or wrote it in an older or newer form: left aside, named above the page that would show it,
// and handed on as a file. Nothing of it is changed or taken away.
import { chosen, jot } from "./choices.js";
import { send } from "./send.js";
import { fill } from "./site.js";

const MOST_CHARACTERS = 300_000; // of one record; one of ours has a tenth at most, beside its picture
const MOST_DEPTH = 12;
const NAMED = 3;

const isText = (value) => typeof value === "string";
const isMoment = (value) => isText(value) && !Number.isNaN(Date.parse(value));
const isObject = (value) => value !== null && typeof value === "object" && Object.getPrototypeOf(value) === Object.prototype;
const listOf = (fits) => (value) => Array.isArray(value) && value.every(fits);
const each = (fits) => (value) => isObject(value) && Object.values(value).every(fits);
const maybe = (fits) => (value) => value === null || value === undefined || fits(value);
const having = (fields) => (value) => isObject(value) && Object.entries(fields).every(([name, fits]) => fits(value[name]));
const isNumber = Number.isFinite;
const isObjects = listOf(isObject);

// What pages take for granted of each store's records; tests/contracts/kept.toml has what is written now.
const clock = having({ counted_s: isNumber, events: isObjects });
const named = { id: isText, rig_id: isText, rig_name: isText };
const SHAPES = {
  rigs: having({ id: isText, name: isText, units: isText }),
  log: having({
    id: isText, kind: (kind) => ["card", "diagnosis", "practice"].includes(kind), title: isText, outcome: isText, began_at: maybe(isMoment), ended_at: maybe(isMoment),
    rig: maybe(having({ name: maybe(isText) })), entries: maybe(listOf(having({ at: isMoment }))), who: maybe(isText), notes: maybe(isText), act: maybe(isText), place: maybe(isText), took_s: maybe(isNumber),
  }),
  tests: having({
    ...named, schema: (schema) => schema === 1, begun_ms: maybe(isNumber), finished_ms: maybe(isNumber), rig: isObject, standard: having({ id: isText, kind: isText }),
    conditions: isObject, accuracy: isObject, equipment: isObjects, people: isObject, events: isObjects, notes: isText, versions: maybe(isObjects),
    result: maybe(having({ status: isText, kind: isText, points: isObjects })),
    tests: each(having({
      at: maybe(isObject), values: maybe(isObject), clock: maybe(clock),
      attempts: maybe(listOf(having({ clock: maybe(clock), sets: listOf(having({ values: isObject })) }))),
    })),
  }),
  bay: having({ ...named, at_ms: isNumber, by: isText, kind: isText, replaces: listOf(isText) }),
  photos: having({ id: isText, test: isText, part: isText, at_ms: isNumber, picture: isText }),
  checkoff: each((value) => value === null || typeof value !== "object"),
};

// The fields of a record as calc.bay.record_fields names them.
const KINDS = { text: isText, texts: listOf(isText), time: isNumber, number: isNumber, flag: (value) => typeof value === "boolean", limit: having({ value: isNumber, to: maybe(isNumber), whose: isText }) };

function fitsKind(value, kind) {
  if (Array.isArray(kind)) return kind.includes(value);
  return kind.endsWith("?") ? value === null || KINDS[kind.slice(0, -1)](value) : KINDS[kind](value);
}

// Whether a record of a rig's log can be read, by the fields of each kind: { kind: [must, may] }.
export function isOfKind(record, fields) {
  const [must, may] = Object.hasOwn(fields, record.kind) ? fields[record.kind] : [null, null];
  if (must === null) return false;
  let count = 0;
  for (const name in record) {
    if (record[name] === undefined) continue;
    const kind = must[name] ?? may[name];
    if (kind === undefined ? name !== "picture" : !fitsKind(record[name], kind)) return false;
    if (name in must) count += 1;
  }
  return count === Object.keys(must).length;
}

// Whether a value is plain data of our size, beside a picture.
function isPlain(value) {
  let left = MOST_CHARACTERS;
  const look = (part, depth) => {
    if (isText(part)) left -= part.length;
    else if (typeof part === "number") return Number.isFinite(part);
    else if (part !== null && typeof part === "object") {
      if (depth === MOST_DEPTH || !(Array.isArray(part) || isObject(part))) return false;
      for (const name in part) {
        left -= name.length;
        if (left < 0 || !look(part[name], depth + 1)) return false;
      }
    } else return part === null || part === undefined || typeof part === "boolean";
    return left >= 0;
  };
  return look(value, 0);
}

const isSound = (shape, record) => SHAPES[shape](record) && isPlain(record);

const aside = new Map(); // by place

// Plain text of anything that a database holds.
const asText = (value) => {
  try {
    return JSON.stringify(value, (_, part) => (typeof part === "bigint" ? String(part) : part)) ?? String(value);
  } catch {
    return JSON.stringify(String(value));
  }
};

// Those of some entries, [key, record], that can be read; the others are named above the page. `shape`: what each is to be.
/** @param {(record: any, key: any) => boolean} [fits] */
export function readable(shape, entries, fits = () => true) {
  const sound = [];
  for (const [key, record] of entries) {
    if (isSound(shape, record) && fits(record, key)) sound.push(record);
    else aside.set(`${shape}/${String(key)}`, record);
  }
  tell();
  return sound;
}

const LISTS = new Set(["layouts", "pressure-past", "out:passed"]);
const among = (names, fits) => having(Object.fromEntries(names.map((name) => [name, (value) => value === undefined || fits(value)])));

// What pages take for granted of a draft, by what its name begins with; of others their page judges each part.
const DRAFTS = {
  layouts: listOf((row) => isObject(row) && isText(row.name) && isObjects((row.layout ?? row.lay)?.lines)),
  "pressure-past": isObjects,
  release: (draft) => among(["defects", "opened", "passed"], listOf(isText))(draft) && among(["done", "parts", "hours", "repaired_by", "by"], isText)(draft),
  defect: having({ form: among(["what", "seen", "class", "scope", "origin", "rule", "by"], isText) }),
};

// Whether a draft is what its name says, a list or an object; who reads the check-off judges each part of it.
export function isDraft(name, value) {
  if (value === null || value === undefined || name === "checkoff") return true;
  const [begins] = name.split(":");
  return typeof value === "object" && Array.isArray(value) === LISTS.has(name) && (!Object.hasOwn(DRAFTS, begins) || DRAFTS[begins](value));
}

export function readDraft(name, value) {
  if (isDraft(name, value)) return value;
  setAside(`drafts/${name}`, value);
  return undefined;
}

// Name a value above the page, and have it in the file.
export function setAside(name, value) {
  aside.set(name, value);
  tell();
}

// What was hidden by hand stays so, on every page, until something else cannot be read.
const HIDDEN = "unreadable";
const MOST_HIDDEN = 500;
const hidden = () => chosen(HIDDEN, "").split("\n");
const marks = () => [...aside].map(([name, value]) => JSON.stringify([name, asText(value).length]));

function tell() {
  const place = document.getElementById("unreadable");
  if (!place || !aside.size) return;
  const names = [...aside.keys()];
  const more = names.length > NAMED ? ` +${names.length - NAMED}` : "";
  place.querySelector("span").textContent = fill(place.dataset.told, { names: names.slice(0, NAMED).map((name) => name.slice(0, 40)).join(", ") + more });
  const [save, hide] = place.querySelectorAll("button");
  save.onclick = () => {
    const rows = [...aside].map(([name, value]) => `${JSON.stringify(name)}:${asText(value)}`);
    send(new File([`{${rows.join(",\n")}}`], "unreadable.json", { type: "application/json" }));
  };
  hide.onclick = () => {
    jot(HIDDEN, [...new Set([...hidden(), ...marks()])].slice(-MOST_HIDDEN).join("\n"));
    place.hidden = true;
  };
  const known = new Set(hidden());
  place.hidden = marks().every((each) => known.has(each));
}
