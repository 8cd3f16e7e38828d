// Faults of a rig in sentences: the row counted from 1, the field in words, what stands there, what is wrong and allowed.
// A fault is as calc.rig.page gives it. `context` is { data, u, profile }: words and fields of the Rig page, on any page.
import { fill } from "../shared/site.js";

const LONGEST = 20; // of what stands in a field, in a sentence

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
  return { hoses: data.hose_fields, beds: data.bed_fields, supply: data.supply_fields, checks: data.check_fields }[first]?.[rest.at(-1)];
};

// The least and the most of a field, with its unit; null where the fault is another.
function boundsOf({ field, allowed }, { data, u }) {
  if (!allowed) return null;
  const spec = specOf(field, data);
  const unit = spec?.kind === "quantity" && spec.quantity !== "coefficient" ? ` ${u[`u_${spec.quantity}`]}` : "";
  return { least: allowed.least, most: `${allowed.most}${unit}` };
}

// What is wrong with a field and what is allowed, as it stands beside the field.
export function reasonOf(problem, context) {
  const { rig, carry, refusal } = context.data.words; // the Rig page's, on whatever page
  const bounds = boundsOf(problem, context);
  return bounds ? fill(rig.allowed, bounds) : fill(carry[problem.code] ?? refusal[problem.code] ?? refusal.other, problem);
}

// A fault as an order: which field to fix, what stands there and what is allowed.
export function sentenceOf(problem, context) {
  const { rig } = context.data.words;
  const typed = problem.typed?.slice(0, LONGEST);
  const facts = { typed, place: placeName(problem.field, context.data.words, context.profile), reason: reasonOf(problem, context) };
  const bounds = boundsOf(problem, context);
  if (!typed) return fill(rig.fix, facts);
  return bounds ? fill(rig.fix_outside, { ...facts, ...bounds }) : fill(rig.fix_typed, facts);
}

// Where the Rig page has the field of a fault, as a fragment; fields.js gives each field its id by the same rule.
export const fieldId = (place) => `field-${place.replaceAll(".", "-")}`;
