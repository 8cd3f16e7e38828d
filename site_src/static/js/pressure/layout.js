// A layout as the page holds it: names from the shelf, and entries as typed with the system they were typed in ("200@US").
// A line ends in a nozzle, in a joint with lines of its own, or as a second hose at the end of a line beside it. Pure functions from layout to layout.
import { longest } from "../shared/site.js";
import { isEntry } from "../shared/units.js";
import { lossOf } from "./loss.js";

export const NOZZLES = ["fog", "smooth", "automatic", "inlet"];
export const JOINTS = ["wye", "manifold", "standpipe"];
export const DEVICES = ["none", "master", "aerial"];

const NAME = /^[A-Z][0-9]{0,2}$/;

export const isJoint = (line) => "lines" in line.end;

// Whether it is a second hose into what another line leads to, and those that are into one.
export const isInto = (line) => line.end.kind === "into";
export const guestsOf = (layout, id) => linesOf(layout).filter((line) => isInto(line) && line.end.line === id);

// Every line in the order a person meets them from the pump, each with its depth and the line that feeds it.
export function everyLine(layout) {
  const walk = (lines, depth, feeder) => lines.flatMap((line) => [
    { line, depth, feeder },
    ...(isJoint(line) ? walk(line.end.lines, depth + 1, line) : []),
  ]);
  return walk(layout.lines, 0, null);
}

// Whether a line says its elevation the old way, above the joint before it: see calc.layout.heights.
export const isOld = (layout) => linesOf(layout).some((line) => "rise" in line);

export const linesOf = (layout) => everyLine(layout).map(({ line }) => line);

// The layout with the line `id` in its list of siblings replaced by what `change(line)` gives: a list, empty to take it away.
// A joint that is left with no line goes too.
function replaced(layout, id, change) {
  const inside = (lines) => lines.flatMap((line) => {
    if (line.id === id) return change(line);
    if (!isJoint(line)) return [line];
    const left = inside(line.end.lines);
    return left.length ? [{ ...line, end: { lines: left } }] : [];
  });
  return { ...layout, lines: inside(layout.lines) };
}

// The layout with one entry of one line changed; entries of a nozzle lie in its end.
export const changed = (layout, id, name, given) => replaced(layout, id, (line) =>
  [name in line ? { ...line, [name]: given } : { ...line, end: { ...line.end, [name]: given } }]);

// Whether a line's end has an inlet for a second hose: a joint, a device at the end of hose, an intake.
const takesSecond = (line) => line.hose !== PIPED && !isInto(line) && (isJoint(line) || line.device !== "none" || line.end.kind === "inlet");

// The layout without second hoses into a line whose end was changed to one that takes none.
export const fitted = (layout, id) => (takesSecond(linesOf(layout).find((line) => line.id === id)) ? layout : withoutGuests(layout, id));

// The layout with a joint at another height. What stood at the joint's own height behind it goes with it, as a nozzle on the
// joint's floor does; `before` is the layout as it was when this height began to be typed.
export function raised(layout, id, height, before) {
  const joint = linesOf(before).find((line) => line.id === id);
  const along = joint && isJoint(joint) ? linesOf(joint.end).filter((line) => line.height === joint.height) : [];
  return [{ id }, ...along].reduce((next, line) => changed(next, line.id, "height", height), layout);
}

// A name that no line has yet: nozzles are called from A, hoses to a joint from S.
function freeName(layout, first, taken = linesOf(layout).map(({ id }) => id)) {
  const letters = first === "A" ? "ABCDEFGHIJKLMNOPQR" : "STUVWXYZ";
  for (let round = 0; ; round += 1) {
    for (const letter of letters) {
      const name = round ? `${letter}${round}` : letter;
      if (!taken.includes(name)) return name;
    }
  }
}

// A line and all behind it under names of their own, noted in `taken`; it is no longer the rig's bed.
function renamed(layout, { bed, ...line }, taken) {
  const id = freeName(layout, isJoint(line) ? "S" : "A", taken);
  taken.push(id);
  if (!isJoint(line)) return { ...line, id, end: { ...line.end } };
  const behind = line.end.lines.map((each) => renamed(layout, each, taken));
  const nameOf = (before) => behind[line.end.lines.findIndex((each) => each.id === before)].id;
  return { ...line, id, end: { lines: behind.map((each) => (isInto(each) ? { ...each, end: { ...each.end, line: nameOf(each.end.line) } } : each)) } };
}

const copyOf = (layout, line) => renamed(layout, line, linesOf(layout).map(({ id }) => id));

// Whether a layout may have this added to it at a line: "line", "twin", "second" hose into its device, joint or inlet, or "wye", which leads
// to the line and its twin, and so to none that shares its end.
export function hasRoom(layout, id, added, { lines, depth, loops }) {
  const at = everyLine(layout).find(({ line }) => line.id === id);
  const behind = [at.line, ...(isJoint(at.line) ? linesOf(at.line.end) : [])];
  const deepest = at.depth + 1 + (isJoint(at.line) ? Math.max(...everyLine(at.line.end).map((each) => each.depth)) + 1 : 0);
  const more = { line: 1, second: 1, twin: behind.length, wye: behind.length + 1 }[added];
  if (added === "wye" && (isInto(at.line) || guestsOf(layout, id).length)) return false;
  const looped = (each) => each.filter(isInto).length;
  if (added === "second" && !takesSecond(at.line)) return false;
  if (looped(linesOf(layout)) + { second: 1, twin: looped(behind) }[added] > loops) return false;
  return linesOf(layout).length + more <= lines && (added !== "wye" || deepest < depth);
}

// What stands in the page's inputs: kind of quantity and entry.
export const entriesOf = ({ lines, source, now }, reach) => [
  ...linesOf({ lines }).flatMap((line) => [
    ["length", line.length], ["rise", line.height], ["pressure", line.loss], ["flow", line.loss_at], ["flow", line.device_most],
    ...(isJoint(line) || isInto(line) ? [] : [["flow", line.end.flow], ["flow", line.end.least], ["diameter", line.end.tip], ["pressure", line.end.pressure]]),
  ]),
  ["pressure", source.intake], ["lift", source.lift], ["lift", source.loss], ["pressure", now.pressure],
  ["pressure", reach.pump], ["pressure", reach.end], ["flow", reach.flow], ["length", reach.length],
];

// A second line like this one, from the same outlet.
export function withTwin(layout, id) {
  const twin = copyOf(layout, linesOf(layout).find((line) => line.id === id));
  return replaced(layout, guestsOf(layout, id).at(-1)?.id ?? id, (last) => [last, twin]); // no line between those into one end
}

// A second hose like this line's, beside it into the same end.
export const withSecond = (layout, id) => replaced(layout, id, (line) => [line, {
  id: freeName(layout, "A"), hose: line.hose, length: line.length, height: "", runs: "1", device: "none", loss: "", loss_at: "", device_most: "", end: { kind: "into", line: id },
}]);

// A joint put before a line, as high as that line ends: `supply` leads to it, and behind it lie the line and its twin.
export const withJoint = (layout, id, supply) => replaced(layout, id, (line) => {
  const name = freeName(layout, "S");
  const twin = renamed(layout, line, [...linesOf(layout).map((each) => each.id), name]); // the joint's own name is taken too
  return [{ runs: "1", loss: "", loss_at: "", device_most: "", ...supply, height: line.height, id: name, end: { lines: [line, twin] } }];
});

export const withLine = (layout, line) => ({ ...layout, lines: [...layout.lines, copyOf(layout, line)] });

// The layout without a joint: the lines behind it start where its own hose did.
export const unjoined = (layout, id) => replaced(withoutGuests(layout, id), id, (line) => line.end.lines);

const withoutGuests = (layout, id) => guestsOf(layout, id).reduce((left, guest) => replaced(left, guest.id, () => []), layout);

// The layout without a line; a line added later under its name does not start shut.
export function without(layout, id) {
  const left = replaced(withoutGuests(layout, id), id, () => []);
  const names = linesOf(left).map((line) => line.id);
  return { ...left, now: { ...left.now, shut: left.now.shut.filter((each) => names.includes(each)) } };
}

// Whether anything is left without a line: what hangs behind it goes with it, and so does a joint that it leaves with none.
export const isSpare = (layout, id) => without(layout, id).lines.length > 0;

// A device that is plumbed to the pump stands in the place of a hose.
export const PIPED = "piped";

// The hose bed of a rig in the place of a line: all that a bed says, at the height of the line. Its people are the layout's.
export const asBed = (layout, id, bed) => ({
  ...replaced(layout, id, (line) => [{
    ...line,
    hose: bed.hose || PIPED,
    length: bed.hose ? bed.length : "0",
    runs: "1",
    device: bed.device || "none",
    loss: (bed.device && bed.loss) || "",
    loss_at: (bed.device && bed.loss && bed.loss_at) || "",
    device_most: (bed.device && bed.device_most) || "",
    end: { ...line.end, ...bed.end, typed: "" },
    bed: bed.name,
  }]),
  crew: bed.crew || layout.crew,
});

// The supply hose that a rig carries in the place of a line: all of it, to the inlet of the ready-made supply line.
export const asSupply = (layout, id, row, { end }) => replaced(layout, id, ({ bed, ...line }) => [{
  ...line, hose: row.hose, length: row.length, runs: "1", device: "none", loss: "", loss_at: "", device_most: "", end: { ...line.end, ...end },
}]);

// A layout rebuilt from only what a layout may hold; throws where something is missing or strange.
export function clean(layout, choices) {
  const names = [];
  const known = (name, allowed) => {
    if (!allowed.includes(name)) throw new TypeError("not offered");
    return name;
  };
  const text = (entry) => {
    if (!isEntry(choices.systems, entry)) throw new TypeError("not an entry");
    return entry;
  };
  const name = (given) => {
    if (typeof given !== "string" || !NAME.test(given) || names.includes(given) || names.push(given) > choices.bounds.lines) throw new TypeError("not a name");
    return given;
  };
  const nozzle = (end) => ({
    kind: known(end.kind, NOZZLES),
    flow: text(end.flow),
    least: text(end.least ?? end.flow),
    tip: text(end.tip),
    pressure: text(end.pressure),
    ...(end.typed && { typed: "yes" }), // the pressure was typed by whoever made the layout, and stays
  });
  const line = (given, depth) => {
    if (depth > choices.bounds.depth) throw new TypeError("too deep");
    const joint = "lines" in given.end;
    if (given.end.kind === "into") {
      return {
        id: name(given.id), hose: known(given.hose, choices.hoses.map((hose) => hose.id)), length: text(given.length), height: "",
        runs: known(given.runs ?? "1", choices.runs.map(({ id }) => id)), device: "none", loss: "", loss_at: "", device_most: "", end: { kind: "into", line: given.end.line },
      };
    }
    if (joint && !given.end.lines.length) throw new TypeError("a joint to nowhere");
    return {
      id: name(given.id),
      hose: known(given.hose, choices.hoses.map((hose) => hose.id)),
      length: text(given.length),
      height: text(given.height ?? ""),
      ...((given.height === undefined || given.rise !== undefined) && { rise: text(given.rise) }), // of the old kind: above the joint before it
      runs: known(given.runs ?? "1", choices.runs.map(({ id }) => id)),
      device: known(given.device ?? (joint ? "wye" : "none"), joint ? JOINTS : DEVICES),
      ...lossOf(given, text),
      device_most: text(given.device_most ?? ""),
      end: joint ? { lines: together(given.end.lines, depth + 1) } : nozzle(given.end),
      ...(given.bed && { bed: String(given.bed).slice(0, longest) }), // whose hose it is on the rig, by its name
    };
  };
  // Lines from one place: a second hose goes into one of them that has an end of its own.
  const together = (given, depth) => {
    const lines = given.map((each) => line(each, depth));
    const ends = lines.filter((each) => !isInto(each)).map(({ id }) => id);
    for (const { end } of lines.filter(isInto)) known(end.line, ends);
    return lines;
  };
  const source = layout.source ?? choices.source;
  const now = layout.now ?? choices.now;
  const shut = (now.shut ?? []).map(text);
  if (!layout.lines.length) throw new TypeError("no line");
  return {
    crew: known(layout.crew, Object.keys(choices.shelf.crews)),
    source: { kind: known(source.kind, choices.waters), intake: text(source.intake), lift: text(source.lift), loss: text(source.loss) },
    now: { pressure: text(now.pressure), gates: known(now.gates, ["set", "open"]), shut },
    lines: together(layout.lines, 1),
  };
}
