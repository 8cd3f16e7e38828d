// Faults of a rig in sentences: the row counted from 1, the field in words, what is wrong and what is allowed.
import { colon, fill } from "../site.js";

// "beds.2.length" as people read it.
export function placeName(place, { rig, field }) {
  const [first, count, ...rest] = place.split(".");
  const name = (key) => (Object.hasOwn(field, key) ? field[key] : key);
  if (count === undefined) return name(first);
  const row = fill(rig.row, { section: name(first), count: Number(count) + 1 });
  return rest.length ? fill(rig.place, { row, field: name(rest.at(-1)) }) : row;
}

const specOf = (field, data) => {
  const [first, count, ...rest] = field.split(".");
  if (count === undefined) return data.fields[first];
  return { hoses: data.hose_fields, beds: data.bed_fields, supply: data.supply_fields }[first]?.[rest.at(-1)];
};

// What is wrong with a field and what is allowed. `inUnits(kind, amount, side)` is a bound of calc's as text.
export function reasonOf(problem, { data, u, inUnits }) {
  const { rig, carry, refusal } = data.words; // the Rig page's, on whatever page
  const spec = specOf(problem.field, data);
  if (problem.code === "out_of_range" && spec) {
    const told = (bound, side) => (spec.kind === "quantity" ? inUnits(spec.quantity, bound, side) : String(bound));
    const unit = spec.kind === "quantity" && spec.quantity !== "coefficient" ? ` ${u[`u_${spec.quantity}`]}` : "";
    return fill(rig.allowed, { least: told(problem.least, -1), most: `${told(problem.most, 1)}${unit}` });
  }
  return fill(carry[problem.code] ?? refusal[problem.code] ?? refusal.other, problem);
}

export const sentenceOf = (problem, context) => `${placeName(problem.field, context.data.words)}${colon} ${reasonOf(problem, context)}`;

// How bounds of calc's become texts in the page's unit; `side` is -1 for the least, 1 for the most.
export const inUnitsOf = (call, units) => (kind, amount, side) => call("entry.bound", { units, kind, amount, side });

// Where the Rig page has the field of a fault, as a fragment; fields.js gives each field its id by the same rule.
export const fieldId = (place) => `field-${place.replaceAll(".", "-")}`;
