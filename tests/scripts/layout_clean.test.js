// A layout that came in a link, a file or a draft: only what a layout may hold is taken, anything else is refused.
import { describe, expect, test } from "bun:test";

import { clean } from "../../site_src/static/js/pressure/layout.js";

const choices = {
  bounds: { lines: 5, depth: 2 },
  hoses: [{ id: "attack" }, { id: "piped" }],
  runs: [{ id: "1" }, { id: "2" }],
  waters: ["hydrant", "draft"],
  systems: { US: {}, SI: {} },
  shelf: { crews: { handline: {}, two: {} } },
  source: { kind: "hydrant", intake: "50@US", lift: "", loss: "" },
  now: { pressure: "", gates: "set", shut: [] },
};
const end = { kind: "fog", flow: "150@US", least: "95@US", tip: "", pressure: "100@US" };
const line = (id, more = {}) => ({ id, hose: "attack", length: "200@US", height: "", runs: "1", device: "none", loss: "", loss_at: "", device_most: "", end, ...more });
const joint = (id, lines, more = {}) => line(id, { device: "wye", end: { lines }, ...more });
const into = (id, other, more = {}) => line(id, { end: { kind: "into", line: other }, ...more });
const whole = (lines, more = {}) => ({ crew: "two", source: choices.source, now: choices.now, lines, ...more });
const made = (lines, more) => clean(whole(lines, more), choices);

describe("a sound layout", () => {
  test("comes out as it went in", () => {
    const given = whole([joint("S", [line("A"), line("B2", { device: "master", loss: "15@SI", loss_at: "9@SI", device_most: "8@SI", runs: "2" }), into("C", "B2")]), line("Z10")],
      { now: { pressure: "90@SI", gates: "open", shut: ["A"] }, source: { kind: "draft", intake: "1", lift: "10@US", loss: "2@US" } });
    expect(clean(given, choices)).toEqual(given);
  });

  test("loses what no layout has", () => {
    expect(made([line("A", { colour: "red", end: { ...end, made: "up" } })], { more: 1 })).toEqual(whole([line("A")]));
  });

  test("of before has what came since in its place", () => {
    const { source, now, ...old } = whole([line("A", { runs: undefined, device: undefined, loss: undefined, loss_at: undefined, device_most: undefined, end: { ...end, least: undefined } })]);
    expect(clean(old, choices)).toEqual(whole([line("A", { end: { ...end, least: "150@US" } })]));
    expect(made([joint("S", [line("A")], { device: undefined })]).lines[0].device).toBe("wye");
    expect(made([line("A")], { now: { pressure: "", gates: "set" } }).now.shut).toEqual([]);
    expect(made([line("A", { device: "master" }), into("B", "A", { runs: undefined })]).lines[1].runs).toBe("1");
  });

  test("of before heights has its rise kept, and no height", () => {
    expect(made([line("A", { height: undefined, rise: "10@US" })]).lines[0]).toEqual({ ...line("A"), rise: "10@US" });
    expect("rise" in made([line("A")]).lines[0]).toBe(false);
    expect(made([line("A", { height: "5@US", rise: "10@US" })]).lines[0]).toMatchObject({ height: "5@US", rise: "10@US" });
  });

  test("keeps that a pressure was typed by whoever made it", () => {
    expect(made([line("A", { end: { ...end, typed: "anything" } })]).lines[0].end.typed).toBe("yes");
    expect("typed" in made([line("A", { end: { ...end, typed: "" } })]).lines[0].end).toBe(false);
  });

  test("has second hoses without height, device and loss, whatever was said of them", () => {
    expect(made([line("A", { device: "master" }), into("B", "A", { height: "9", device: "aerial", loss: "9", loss_at: "9", device_most: "9" })]).lines[1]).toEqual(into("B", "A"));
  });
});

describe("refused is", () => {
  const bad = (...lines) => whole(lines);
  const six = [..."ABCDEF"].map((id) => line(id));
  test.each([
    ["no line", bad()],
    ["a joint to nowhere", bad(joint("S", []))],
    ["a joint too deep", bad(joint("S", [joint("T", [line("A")])]))],
    ["more lines than the page takes", bad(...six)],
    ["the same name twice", bad(line("A"), line("A"))],
    ["a name in small letters", bad(line("a"))],
    ["a name of two letters", bad(line("AB"))],
    ["a name before or behind something", bad(line("A1 "))],
    ["a name before something", bad(line(" A1"))],
    ["a name of three digits", bad(line("A100"))],
    ["a name that is a list", bad(line(["A"]))],
    ["a hose that is not offered", bad(line("A", { hose: "toString" }))],
    ["an end that is not offered", bad(line("A", { end: { ...end, kind: "wye" } }))],
    ["a device that is a joint's", bad(line("A", { device: "wye" }))],
    ["a joint that is a device", bad(joint("S", [line("A")], { device: "master" }))],
    ["so many runs", bad(line("A", { runs: "9" }))],
    ["an entry that is a number", bad(line("A", { length: 200 }))],
    ["an entry of no system", bad(line("A", { length: "200@XX" }))],
    ["an entry of a name that all objects have", bad(line("A", { length: "200@constructor" }))],
    ["an entry longer than any", bad(line("A", { length: "2".repeat(41) }))],
    ["no pressure", bad(line("A", { end: { ...end, pressure: undefined } }))],
    ["no flow", bad(line("A", { end: { ...end, flow: undefined } }))],
    ["no tip", bad(line("A", { end: { ...end, tip: undefined } }))],
    ["a loss that is none", bad(line("A", { loss: 3 }))],
    ["a flow of a loss that is none", bad(line("A", { loss_at: 3 }))],
    ["a most flow that is none", bad(line("A", { device_most: 3 }))],
    ["a height that is none", bad(line("A", { height: 3 }))],
    ["a rise that is none", bad(line("A", { height: undefined, rise: 3 }))],
    ["neither height nor rise", bad(line("A", { height: undefined }))],
    ["a second hose into nothing", bad(line("A"), into("B", "C"))],
    ["a second hose into itself", bad(line("A"), into("B", "B"))],
    ["a second hose into another", bad(line("A"), into("B", "A"), into("C", "B"))],
    ["a second hose into a line from another place", bad(joint("S", [line("A")]), into("B", "A"))],
    ["a second hose of strange hose", bad(line("A"), into("B", "A", { hose: "x" }))],
    ["a second hose of strange length", bad(line("A"), into("B", "A", { length: null }))],
    ["a second hose of strange runs", bad(line("A"), into("B", "A", { runs: "x" }))],
    ["a strange crew", { ...bad(line("A")), crew: "all" }],
    ["a strange water", { ...bad(line("A")), source: { ...choices.source, kind: "sea" } }],
    ["strange gates", { ...bad(line("A")), now: { ...choices.now, gates: "half" } }],
    ["a shut line that is no text", { ...bad(line("A")), now: { ...choices.now, shut: [1] } }],
    ["a strange pressure now", { ...bad(line("A")), now: { ...choices.now, pressure: 1 } }],
    ["a strange intake", { ...bad(line("A")), source: { ...choices.source, intake: 1 } }],
    ["a strange lift", { ...bad(line("A")), source: { ...choices.source, lift: 1 } }],
    ["a strange loss of suction", { ...bad(line("A")), source: { ...choices.source, loss: 1 } }],
    ["nothing at all", {}],
    ["a line without an end", bad({ id: "A" })],
  ])("%s", (_, given) => {
    expect(() => clean(given, choices)).toThrow(TypeError);
  });

  test("and what comes up to the bounds is not", () => {
    expect(made(six.slice(1)).lines.length).toBe(5);
    expect(made([joint("S", [line("A")])]).lines[0].end.lines.length).toBe(1);
    expect(made([line("A", { length: "2".repeat(40) })]).lines[0].length.length).toBe(40);
  });
});
