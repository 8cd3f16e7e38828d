// What of a rig differs from the rig it would replace, field by field in words.
import { bare } from "../units.js";

// Each field of a profile by where it stands, as people read it: [where, field, value, spec]. Rows go by what they are of.
function entriesOf(profile, data) {
  const { words } = data;
  const hose = (id) => data.hoses.find((choice) => choice.id === id)?.label ?? id;
  const row = (section, name, fields, values) =>
    Object.entries(fields).map(([field, spec]) => [`${words.field[section]}, ${name}`, field, values[field], spec]);
  const bed = ({ end, tips, ...own }) => row("beds", own.name, { ...data.bed_fields, kind: { kind: "nozzle" }, tips: { kind: "tips" } }, { ...own, kind: end.kind, ...used(end), tips });
  return [
    ...Object.entries(data.fields).map(([field, spec]) => ["", field, profile[field], spec]),
    ...(profile.hoses ?? []).flatMap((own) => row("hoses", hose(own.hose), data.hose_fields, own)),
    ...(profile.beds ?? []).flatMap(bed),
    ...(profile.supply ?? []).flatMap((own) => row("supply", hose(own.hose), data.supply_fields, own)),
  ];
}

// What a nozzle is used at; the entries of the kind it is not now are left out.
const used = ({ kind, tip, flow, pressure }) => (kind === "smooth" ? { tip, pressure } : { flow, pressure });

function text(value, spec, { data, u, shown }) {
  const { words } = data;
  if (value === undefined || value === "" || value?.length === 0) return words.rig.unset;
  if (spec.kind === "choice") return words.option[value] ?? value;
  if (spec.kind === "nozzle") return words.pressure[value];
  if (spec.kind === "shelf") return data.hoses.find((hose) => hose.id === value)?.label ?? value;
  const tipOf = (tip) => data.tips.find(({ id }) => id === tip)?.label ?? bare(tip);
  if (spec.kind === "tips") return value.map(tipOf).join(", ");
  if (spec.quantity === "diameter") return tipOf(value);
  if (spec.kind !== "quantity") return value;
  return spec.quantity === "coefficient" ? `C ${shown("coefficient", value)}` : `${shown(spec.quantity, value)} ${u[`u_${spec.quantity}`]}`;
}

// The differences as { where, field, before, after }, texts.
export function differences(before, after, context) {
  const { words } = context.data;
  const key = ([where, field]) => `${where}\n${field}`;
  const was = new Map(entriesOf(before, context.data).map((entry) => [key(entry), entry]));
  const is = new Map(entriesOf(after, context.data).map((entry) => [key(entry), entry]));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((name) => {
    const [where, field, , spec] = is.get(name) ?? was.get(name);
    const [earlier, later] = [was, is].map((entries) => text(entries.get(name)?.[2], spec, context));
    return earlier === later ? [] : [{ where, field: words.field[field] ?? field, before: earlier, after: later }];
  });
}
