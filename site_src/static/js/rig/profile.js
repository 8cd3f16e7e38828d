// A rig's profile as plain data: making, copying and changing it. Pure functions.

const mark = () => crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;

export const newProfile = (data, system, name) => ({
  schema: data.schema,
  id: mark(),
  name,
  units: system,
  ...data.new[data.systems[system].family],
  beds: [],
  hoses: [],
});

export const copyOf = (profile, name) => ({ ...structuredClone(profile), id: mark(), name });

export const newBed = (data, system, name) => {
  const { crew, lines: [line] } = data.openings[data.systems[system].family];
  const { kind, flow, tip, pressure } = line.end;
  return { name, hose: line.hose, length: line.length, crew, end: { kind, flow, tip, pressure } };
};

export const newHose = (data, system) => {
  const hose = data.hoses.find((choice) => choice.family === data.systems[system].family && choice.common);
  return { hose: hose.id, coefficient: `${plain(data.shelf.hoses[hose.id].coefficient)}@US`, origin: "handbook", test_pressure: "" };
};

const plain = (number) => String(Number(number.toFixed(6)));

export const withRow = (rows = [], row) => [...rows, row];
export const withoutRow = (rows, place) => rows.filter((_, each) => each !== place);
export const changedRow = (rows, place, change) => rows.map((row, each) => (each === place ? { ...row, ...change } : row));

// "beds.2.length" as people read it.
export function placeName(field, words) {
  const [first, count, ...rest] = field.split(".");
  const name = (key) => (Object.hasOwn(words.field, key) ? words.field[key] : key);
  if (count === undefined) return name(first);
  return words.rig.place.replace("{section}", name(first)).replace("{count}", Number(count) + 1).replace("{field}", name(rest.at(-1)));
}
