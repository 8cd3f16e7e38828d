// A rig's profile as plain data: making, copying and changing it. Pure functions.
import { mark } from "../shared/mark.js";

export const newBed = (data, system, name) => {
  const { crew, lines: [line] } = data.openings[data.systems[system].family];
  const { kind, flow, tip, pressure } = line.end;
  return { name, hose: line.hose, length: line.length, crew, end: { kind, flow, tip, pressure } };
};

// With one bed of the usual hose, named `bed`.
export const newProfile = (data, system, name, bed) => ({
  schema: data.schema,
  id: mark(),
  name,
  units: system,
  ...data.new[data.systems[system].family],
  beds: [newBed(data, system, bed)],
  hoses: [],
});

export const copyOf = (profile, name) => ({ ...structuredClone(profile), id: mark(), name });

// A deck gun, piped to the pump, as the ready-made master stream ends.
export const newGun = (data, system, name) => {
  const { kind, flow, tip, pressure } = data.guns[data.systems[system].family];
  return { name, hose: "", length: "", device: "master", loss: "", end: { kind, flow, tip, pressure }, tips: [] };
};

// The first of some hoses that no row names yet.
const unnamed = (hoses, rows) => hoses.find(({ id }) => !rows.some(({ hose }) => hose === id)) ?? hoses[0];

export const newHose = (data, system, rows) => {
  const family = data.hoses.filter((choice) => choice.family === data.systems[system].family);
  const common = family.filter((choice) => choice.common);
  return { hose: unnamed([...common, ...family], rows).id, coefficient: "", origin: "handbook", test_pressure: "" };
};

export const newSupply = (data, system, rows) =>
  ({ hose: unnamed(data.supplies[data.systems[system].family], rows).id, length: "", limit: "" });

// What stands in the inputs of a profile that convert: kind of quantity and entry.
export function amountsOf(profile, { fields, hose_fields, bed_fields, supply_fields }) {
  const of = (specs, row) => Object.entries(specs).filter(([name, spec]) => spec.kind === "quantity" && typeof row?.[name] === "string").map(([name, spec]) => [spec.quantity, row[name]]);
  const rows = (list) => (Array.isArray(profile?.[list]) ? profile[list] : []);
  return [
    ...of(fields, profile),
    ...rows("hoses").flatMap((row) => of(hose_fields, row)),
    ...rows("beds").flatMap((row) => [...of(bed_fields, row), ...of(bed_fields, row?.end)]),
    ...rows("supply").flatMap((row) => of(supply_fields, row)),
  ];
}

export const withRow = (rows = [], row) => [...rows, row];
export const withoutRow = (rows, place) => rows.filter((_, each) => each !== place);
export const changedRow = (rows, place, change) => rows.map((row, each) => (each === place ? { ...row, ...change } : row));

// A name that no other rig has: the name itself, or with a number.
export function freeName(name, rigs) {
  const taken = new Set(rigs.map((rig) => plainName(rig.name)));
  let free = name;
  for (let count = 2; taken.has(plainName(free)); count += 1) free = `${name} ${count}`;
  return free;
}

// A name as names are compared.
export const plainName = (name) => String(name ?? "").trim().toLocaleLowerCase();
