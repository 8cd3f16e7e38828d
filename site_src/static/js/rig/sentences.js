// Faults of a rig in sentences: the row counted from 1, the field in words, what stands there, what is wrong and allowed.
import { fill } from "../shared/site.js";
import { bare, isAsTyped, isEntry, unitsFor } from "../shared/units.js";

const LONGEST = 20; // of what stands in a field, in a sentence

// What sentences about a profile need on any page: words and fields of the Rig page, and how amounts stand in the page's units.
export function contextOf({ call, data, u, system, profile }) {
  const units = unitsFor(data.systems, system);
  return {
    data, u, profile,
    inUnits: (kind, amount, side) => call("entry.bound", { units, kind, amount, side }), // `side` is -1 for the least, 1 for the most
    shown: (kind, entry) => (isAsTyped(entry, system) || !isEntry(data.systems, entry) ? bare(entry) : call("entry.shown", { units, kind, text: entry })),
  };
}

// "beds.2.length" as people read it; a row that has a name is named.
export function placeName(place, { rig, field }, profile = null) {
  const [first, count, ...rest] = place.split(".");
  const name = (key) => (Object.hasOwn(field, key) ? field[key] : key);
  if (count === undefined) return name(first);
  const own = profile?.[first]?.[count]?.name;
  const facts = { section: name(first), count: Number(count) + 1, name: own };
  const row = fill(typeof own === "string" && own ? rig.row_named : rig.row, facts);
  return rest.length ? fill(rig.place, { row, field: name(rest.at(-1)) }) : row;
}

const specOf = (field, data) => {
  const [first, count, ...rest] = field.split(".");
  if (count === undefined) return data.fields[first];
  return { hoses: data.hose_fields, beds: data.bed_fields, supply: data.supply_fields }[first]?.[rest.at(-1)];
};

const isTyped = (spec) => spec?.kind === "quantity" || spec?.kind === "number";

// The least and the most of a field, with its unit; null where the fault is another.
function boundsOf(problem, { data, u, inUnits }) {
  const spec = specOf(problem.field, data);
  if (problem.code !== "out_of_range" || !spec) return null;
  const told = (bound, side) => (spec.kind === "quantity" ? inUnits(spec.quantity, bound, side) : String(bound));
  const unit = spec.kind === "quantity" && spec.quantity !== "coefficient" ? ` ${u[`u_${spec.quantity}`]}` : "";
  return { least: told(problem.least, -1), most: `${told(problem.most, 1)}${unit}` };
}

// What is wrong with a field and what is allowed, as it stands beside the field.
export function reasonOf(problem, context) {
  const { rig, carry, refusal } = context.data.words; // the Rig page's, on whatever page
  const bounds = boundsOf(problem, context);
  return bounds ? fill(rig.allowed, bounds) : fill(carry[problem.code] ?? refusal[problem.code] ?? refusal.other, problem);
}

// The text that stands in a typed field, or "" where none does.
function typedIn({ field }, { data, profile, shown }) {
  const spec = specOf(field, data);
  const entry = field.split(".").reduce((part, key) => part?.[key], profile);
  if (!isTyped(spec) || typeof entry !== "string") return "";
  return (spec.kind === "quantity" && entry.includes("@") ? shown(spec.quantity, entry) : entry).trim().slice(0, LONGEST);
}

// A fault as an order: which field to fix, what stands there and what is allowed.
export function sentenceOf(problem, context) {
  const { rig } = context.data.words;
  const typed = typedIn(problem, context);
  const facts = { typed, place: placeName(problem.field, context.data.words, context.profile), reason: reasonOf(problem, context) };
  const bounds = boundsOf(problem, context);
  if (!typed) return fill(rig.fix, facts);
  return bounds ? fill(rig.fix_outside, { ...facts, ...bounds }) : fill(rig.fix_typed, facts);
}

// Where the Rig page has the field of a fault, as a fragment; fields.js gives each field its id by the same rule.
export const fieldId = (place) => `field-${place.replaceAll(".", "-")}`;
