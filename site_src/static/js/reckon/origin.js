// Whose figure each entry is: entered on this phone, the rig's, or the example that the page opens on.
import { bare } from "../units.js";
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

// Fields by whose figure they hold; one left empty is nobody's.
export function originsOf(asked, entries, entered, rig) {
  const origins = { entered: [], rig: [], example: [] };
  for (const field of asked) {
    if (entered.includes(field.name)) origins.entered.push(field);
    else if (rig && entries[field.name] === ofRig(field, rig)) origins.rig.push(field);
    else if (bare(entries[field.name])) origins.example.push(field);
  }
  return origins;
}
