// Whose figure each entry is: entered on this phone, the rig's, or the example that the page opens on.
import { bare } from "../shared/units.js";
import { ofRig } from "./entries.js";

// The names a person entered: those known, and those that differ from all a page opens on.
export const enteredOf = (entries, known, { fields }, rig) => fields.map((field) => field.name).filter((name) => {
  const field = fields.find((each) => each.name === name);
  return known.includes(name) || ![field.customary, field.metric, ofRig(field, rig)].includes(entries[name]);
});

// What is known of a kept draft: not the fields in which another rig has since been chosen.
export function knownOf(draft, { fields }, rig) {
  const known = Array.isArray(draft?.entered) ? draft.entered : [];
  const same = draft?.rig === (rig?.id ?? null);
  return known.filter((name) => same || ofRig(fields.find((field) => field.name === name) ?? {}, rig) === undefined);
}

// Fields by whose figure they hold: one left empty is nobody's, and a rule or a usual value is no example and no entry.
export function originsOf(asked, entries, entered, rig) {
  const origins = { entered: [], rig: [], example: [] };
  for (const field of asked) {
    if (entered.includes(field.name)) origins.entered.push(...[field].filter(({ rule }) => !rule));
    else if (rig && entries[field.name] === ofRig(field, rig)) origins.rig.push(field);
    else if (!field.rule && bare(entries[field.name])) origins.example.push(field);
  }
  return origins;
}

// The examples that the answer itself rests on.
export const examplesIn = ({ example }) => example.filter(({ aside }) => !aside);

// Whether a caution follows from examples only.
export function isExample(code, { warns }, origins) {
  const own = [...origins.entered, ...origins.rig.filter(({ rule }) => !rule)];
  return origins.example.some(({ name }) => warns[code].includes(name)) && !own.some(({ name }) => warns[code].includes(name));
}
