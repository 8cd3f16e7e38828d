// What is entered on a water or foam page: by name, text as typed with its system ("65@US"), or the id of a choice.
// Pure functions from entries to entries.
import { isEntry } from "../shared/units.js";

// What a page opens on: its own figures, and the rig's where its profile has them.
export const opening = ({ fields }, family, rig) =>
  Object.fromEntries(fields.map((field) => [field.name, ofRig(field, rig) ?? field[family]]));

// What a rig's profile says for a field, or undefined.
export function ofRig(field, rig) {
  if (!rig || !field.from_rig) return undefined;
  if (field.kind === "hose") return supplyOf(rig, everyOption(field))?.hose;
  return (field.from_rig === "limit" ? supplyOf(rig)?.limit : rig[field.from_rig]) || undefined;
}

// The first supply hose a rig carries, of those offered; hose in a bed, or that the profile has figures of, is none.
const supplyOf = (rig, options = null) =>
  (rig.supply ?? []).find(({ hose }) => options === null || options.some(({ id }) => id === hose));

const everyOption = (field) => [...field.customary_options, ...field.metric_options];

// The options of a family, and the one that is chosen, whatever its family: of another it is said in this one's unit, or carries its own.
export const offered = (field, family, value) => {
  const options = field[`${family}_options`];
  const chosen = options.some((option) => option.id === value) ? [] : everyOption(field).filter((option) => option.id === value);
  const said = chosen.map((option) => ({ ...option, label: option.abroad ?? option.label }));
  return [...options, ...said.map((option) => ({ ...option, chip: option.label }))];
};

export const changed = (entries, name, text) => ({ ...entries, [name]: text });

// What stands in the inputs that convert, and on the chips below them: kind of quantity and entry.
export const amountsOf = (entries, { fields }) => fields
  .filter(({ kind }) => !["choice", "hose", "count"].includes(kind))
  .flatMap(({ kind, name, usual = [] }) => [entries[name], ...usual].map((entry) => [kind, entry]));

// Entries rebuilt from only what the page asks for; throws where one is missing or strange. One that may be left empty, a rule or what hangs on one may be new to old drafts and links.
export function clean(entries, { fields, systems }) {
  return Object.fromEntries(fields.map((field) => {
    const entry = entries[field.name] ?? (field.rule || field.when || field.customary === "" ? field.customary : undefined);
    if (!isEntry(systems, entry)) throw new TypeError("not an entry");
    if ("customary_options" in field && !everyOption(field).some((option) => option.id === entry)) throw new TypeError("not offered");
    return [field.name, entry];
  }));
}

// What is kept of a page: the entries, which of them a person made, and the rig they were made beside.
export const draftOf = (entries, entered, rig) => ({ rig: rig?.id ?? null, entries, entered });

// The entries to open with: those kept, with what another rig since chosen says in its fields.
export function opened(draft, data, family, rig) {
  const fresh = opening(data, family, rig);
  try {
    const kept = clean(draft.entries, data);
    if (draft.rig === (rig?.id ?? null)) return kept;
    const own = data.fields.filter((field) => ofRig(field, rig) !== undefined).map((field) => [field.name, fresh[field.name]]);
    return { ...kept, ...Object.fromEntries(own) };
  } catch {
    return fresh;
  }
}
