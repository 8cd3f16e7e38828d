// A lay as the page holds it: names from the shelf, and entries as typed with the system they were typed in ("200@US").
// Pure functions from lay to lay.

const LONGEST_LINK = 4000;
const LONGEST_ENTRY = 30;

export const isWye = (line) => "lines" in line.end;

// The lines in the order a person meets them: the hose to the wye, then its branches.
export const everyLine = (lay) => lay.lines.flatMap((line) => (isWye(line) ? [line, ...line.end.lines] : [line]));

const WYE_SUPPLY = {
  customary: { hose: "attack-2.5", length: "100@US", rise: "0@US" },
  metric: { hose: "metric-65", length: "30@SI", rise: "0@SI" },
};

export function withWye(lay, family) {
  const [first] = lay.lines;
  const second = { ...structuredClone(first), id: "B" };
  const supply = { id: "S", ...WYE_SUPPLY[family], end: { lines: [first, second] } };
  return { ...lay, lines: [supply] };
}

export const withoutWye = (lay) => ({ ...lay, lines: [lay.lines[0].end.lines[0]] });

// The lay with one entry of one line changed; `end` entries are those of its nozzle.
export function changed(lay, id, name, given) {
  const value = given.slice(0, LONGEST_ENTRY);
  const change = (line) => {
    if (isWye(line)) line = { ...line, end: { lines: line.end.lines.map(change) } };
    if (line.id !== id) return line;
    if (name in line) return { ...line, [name]: value };
    return { ...line, end: { ...line.end, [name]: value } };
  };
  return { ...lay, lines: lay.lines.map(change) };
}

// The next multiple of a step up or down from what is typed, or null where that is no number or would pass below `least`.
export function stepped(typed, step, direction, least) {
  const value = Number(typed.trim().replace(",", "."));
  if (!typed.trim() || !Number.isFinite(value)) return null;
  const count = direction > 0 ? Math.floor(value / step) + 1 : Math.ceil(value / step) - 1;
  const next = count * step;
  return next < least ? null : String(Number(next.toFixed(6)));
}

// The lay of a rig's hose bed.
export const ofBed = (bed, opening) => ({
  crew: bed.crew || opening.crew,
  lines: [{ ...opening.lines[0], hose: bed.hose, length: bed.length, end: { ...opening.lines[0].end, ...bed.end } }],
});

export const link = (lay) => `#lay=${encodeURIComponent(JSON.stringify(lay))}`;

// The lay of a link's fragment; null where the fragment holds none, undefined where it holds one that cannot be read.
export function fromLink(fragment, choices) {
  if (!fragment.startsWith("#lay=")) return null;
  if (fragment.length > LONGEST_LINK) return undefined;
  try {
    const lay = JSON.parse(decodeURIComponent(fragment.slice(5)));
    return clean(lay, choices);
  } catch {
    return undefined;
  }
}

// A lay rebuilt from only what a lay may hold; throws where something is missing or strange.
export function clean(lay, choices) {
  const known = (name, allowed) => {
    if (!allowed.includes(name)) throw new TypeError("not offered");
    return name;
  };
  const text = (entry) => {
    if (typeof entry !== "string" || entry.length > LONGEST_ENTRY) throw new TypeError("not an entry");
    return entry;
  };
  const nozzle = (end) => ({
    kind: known(end.kind, ["fog", "smooth"]),
    flow: text(end.flow),
    tip: text(end.tip),
    pressure: text(end.pressure),
  });
  const line = (given, id, end) => ({
    id: known(given.id, [id]),
    hose: known(given.hose, choices.hoses.map((hose) => hose.id)),
    length: text(given.length),
    rise: text(given.rise),
    end: end ?? nozzle(given.end),
  });
  const crew = known(lay.crew, Object.keys(choices.shelf.crews));
  const [first] = lay.lines;
  if (lay.lines.length !== 1) throw new TypeError("not one line");
  if (!("lines" in first.end)) return { crew, lines: [line(first, "A")] };
  const [one, two] = first.end.lines;
  if (first.end.lines.length !== 2) throw new TypeError("not two lines");
  return { crew, lines: [line(first, "S", { lines: [line(one, "A"), line(two, "B")] })] };
}
