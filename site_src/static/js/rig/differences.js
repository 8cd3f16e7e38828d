// What of a rig differs from the rig it would replace, field by field in words.
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";

// The parts of a profile by where they stand, as people read it: the rig itself, then each row by what it is of.
function partsOf(profile, data) {
  const { words } = data;
  const parts = new Map([["", { fields: data.fields, values: profile }]]);
  const add = (section, name, fields, values) => {
    let where = `${words.field[section]}, ${name}`;
    for (let count = 2; parts.has(where); count += 1) where = `${words.field[section]}, ${name} (${count})`;
    parts.set(where, { fields, values });
  };
  const hoseOf = ({ hose }) => data.hoses.find((choice) => choice.id === hose)?.label ?? hose;
  for (const row of profile.hoses ?? []) add("hoses", hoseOf(row), without(data.hose_fields, "hose"), row);
  for (const { end, ...bed } of profile.beds ?? []) {
    add("beds", bed.name, { ...without(data.bed_fields, "name"), kind: { kind: "nozzle" }, tips: { kind: "tips" } }, { ...bed, kind: end.kind, ...used(end) });
  }
  for (const row of profile.supply ?? []) add("supply", hoseOf(row), without(data.supply_fields, "hose"), row);
  for (const row of profile.checks ?? []) add("checks", row.name || row.item, data.check_fields, row);
  return parts;
}

// Fields without the one a row goes by.
const without = (fields, name) => Object.fromEntries(Object.entries(fields).filter(([field]) => field !== name));

// What a nozzle is used at; the entries of the kind it is not now are left out.
const used = ({ kind, tip, flow, pressure }) => (kind === "smooth" ? { tip, pressure } : { flow, pressure });

function text(value, spec, { data, u, shown }) {
  const { words } = data;
  if (value === undefined || value === "" || value?.length === 0) return words.rig.unset;
  if (spec.kind === "choice") return words.option[value] ?? value;
  if (spec.kind === "nozzle") return words.pressure[value];
  if (spec.kind === "shelf") return data.hoses.find((hose) => hose.id === value)?.label ?? value;
  if (spec.kind === "codes") return value.join(", ");
  const tipOf = (tip) => data.tips.find(({ id }) => id === tip)?.label ?? bare(tip);
  if (spec.kind === "tips") return value.map(tipOf).join(", ");
  if (spec.quantity === "diameter") return tipOf(value);
  if (spec.kind !== "quantity") return value;
  return spec.quantity === "coefficient" ? `C ${shown("coefficient", value)}` : `${shown(spec.quantity, value)} ${u[`u_${spec.quantity}`]}`;
}

// The differences as { where, field, change }, texts; a row that comes or goes is one, its field empty.
export function differences(before, after, context) {
  const { words } = context.data;
  const [was, is] = [before, after].map((profile) => partsOf(profile, context.data));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((where) => {
    if (!was.has(where)) return [{ where, field: "", change: words.carry.row_added }];
    if (!is.has(where)) return [{ where, field: "", change: words.carry.row_removed }];
    const { fields } = is.get(where);
    return Object.entries(fields).flatMap(([field, spec]) => {
      const [earlier, later] = [was, is].map((parts) => text(parts.get(where).values[field], spec, context));
      return earlier === later ? [] : [{ where, field: words.field[field], change: fill(words.carry.change, { before: earlier, after: later }) }];
    });
  });
}
