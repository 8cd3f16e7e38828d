// Layouts as data: what a change leaves, and what it must not touch.
import { describe, expect, test } from "bun:test";

import * as of from "../../site_src/static/js/pressure/layout.js";

const fog = { kind: "fog", flow: "150@US", least: "95@US", tip: "", pressure: "100@US" };
const smooth = { kind: "smooth", flow: "", least: "", tip: "1.125@US", pressure: "50@US" };
const line = (id, more = {}) => ({ id, hose: "attack", length: "200@US", height: "", runs: "1", device: "none", loss: "", loss_at: "", device_most: "", end: fog, ...more });
const joint = (id, lines, more = {}) => line(id, { hose: "supply", device: "wye", end: { lines }, ...more });
const into = (id, other) => line(id, { end: { kind: "into", line: other } });
const layout = (...lines) => ({
  crew: "handline", source: { kind: "hydrant", intake: "50@US", lift: "", loss: "" }, now: { pressure: "", gates: "set", shut: [] }, lines,
});
const ids = (given) => of.linesOf(given).map(({ id }) => id);
const named = (given, id) => of.linesOf(given).find((each) => each.id === id);

describe("lines of a layout", () => {
  const tree = layout(joint("S", [line("A"), joint("T", [line("B"), line("C")])]), line("D"));

  test("come in the order a person meets them, each with its depth and what feeds it", () => {
    expect(of.everyLine(tree).map(({ line: { id }, depth, feeder }) => [id, depth, feeder?.id ?? null])).toEqual([
      ["S", 0, null], ["A", 1, "S"], ["T", 1, "S"], ["B", 2, "T"], ["C", 2, "T"], ["D", 0, null],
    ]);
  });

  test("say what they end in", () => {
    expect([named(tree, "S"), named(tree, "A")].map(of.isJoint)).toEqual([true, false]);
    expect([into("B", "A"), line("A")].map(of.isInto)).toEqual([true, false]);
    expect(of.guestsOf(layout(line("A"), into("B", "A"), into("C", "A"), into("D", "E")), "A").map(({ id }) => id)).toEqual(["B", "C"]);
  });

  test("of the old kind are known by their rise", () => {
    expect(of.isOld(tree)).toBe(false);
    expect(of.isOld(layout(joint("S", [line("A"), line("B", { rise: "10@US" })])))).toBe(true);
  });
});

describe("a change of one entry", () => {
  const before = layout(joint("S", [line("A"), line("B")]));

  test("changes that line alone, and leaves the layout it came from", () => {
    const after = of.changed(before, "B", "length", "150@US");
    expect(named(after, "B").length).toBe("150@US");
    expect(named(after, "A")).toEqual(named(before, "A"));
    expect(named(before, "B").length).toBe("200@US");
  });

  test("of a nozzle lies in the line's end", () => {
    const after = of.changed(before, "A", "flow", "125@US");
    expect(named(after, "A").end).toEqual({ ...fog, flow: "125@US" });
    expect("flow" in named(after, "A")).toBe(false);
  });
});

describe("second hoses", () => {
  const device = line("A", { device: "master" });

  test("lie beside their line, like it, with no height, device or nozzle of their own", () => {
    const after = of.withSecond(layout({ ...device, height: "8@US", runs: "2" }, line("C")), "A");
    expect(after.lines[1]).toEqual({ ...into("B", "A"), height: "", device: "none", loss: "", loss_at: "", device_most: "", runs: "1" });
    expect(ids(after)).toEqual(["A", "B", "C"]);
  });

  test("go with an end that takes none any more", () => {
    const into_device = layout(device, into("B", "A"), line("C"));
    expect(ids(of.fitted(into_device, "A"))).toEqual(["A", "B", "C"]);
    expect(ids(of.fitted(of.changed(into_device, "A", "device", "none"), "A"))).toEqual(["A", "C"]);
    const piped = { ...into_device, lines: [{ ...device, hose: of.PIPED }, into("B", "A")] };
    expect(ids(of.fitted(piped, "A"))).toEqual(["A"]);
  });

  test.each([
    ["a joint", joint("A", [line("C"), line("D")]), ["A", "C", "D", "B"]],
    ["an intake", line("A", { end: { kind: "inlet", flow: "", least: "", tip: "", pressure: "" } }), ["A", "B"]],
  ])("go into %s as well", (_, end, left) => {
    expect(ids(of.fitted(layout(end, into("B", "A")), "A"))).toEqual(left);
  });
});

describe("the height of a joint", () => {
  const before = layout(joint("S", [line("A", { height: "20@US" }), line("B", { height: "35@US" })], { height: "20@US" }));

  test("takes what stood as high along, and nothing else", () => {
    const after = of.raised(before, "S", "30@US", before);
    expect(["S", "A", "B"].map((id) => named(after, id).height)).toEqual(["30@US", "30@US", "35@US"]);
  });

  test("goes by the layout as it was when typing began", () => {
    const halfway = of.raised(before, "S", "3@US", before);
    expect(["S", "A", "B"].map((id) => named(of.raised(halfway, "S", "35@US", before), id).height)).toEqual(["35@US", "35@US", "35@US"]);
    expect(named(of.raised(of.raised(before, "S", "35@US", before), "S", "10@US", before), "B").height).toBe("35@US");
  });

  test("of a nozzle, or of a line that is new, is its own", () => {
    expect(named(of.raised(before, "A", "5@US", before), "S").height).toBe("20@US");
    expect(named(of.raised(before, "B", "5@US", layout(line("C"))), "B").height).toBe("5@US");
  });
});

describe("copies", () => {
  test("take the next free name: nozzles from A, hoses to a joint from S", () => {
    const twin = of.withTwin(layout(line("A"), line("C")), "A");
    expect(ids(twin)).toEqual(["A", "B", "C"]);
    const tree = of.withTwin(layout(joint("S", [line("A"), line("B")])), "S");
    expect(ids(tree)).toEqual(["S", "A", "B", "T", "C", "D"]);
  });

  test("go past the last letter of their kind with a number", () => {
    const all = [..."ABCDEFGHIJKLMNOPQR"].map((id) => line(id));
    expect(ids(of.withTwin(layout(...all), "R")).at(-1)).toBe("A1");
    const joints = [..."STUVWXYZ"].map((id, place) => joint(id, [line(`A${place + 1}`)]));
    expect(of.withLine(layout(...joints), joints[0]).lines.at(-1).id).toBe("S1");
  });

  test("share nothing with what they were made of", () => {
    const after = of.withTwin(layout(line("A")), "A");
    expect(after.lines[1].end).toEqual(after.lines[0].end);
    expect(after.lines[1].end).not.toBe(after.lines[0].end);
  });

  test("of a line that others share an end with come behind those", () => {
    expect(ids(of.withTwin(layout(line("A", { device: "master" }), into("B", "A"), line("C")), "A"))).toEqual(["A", "B", "D", "C"]);
  });

  test("of a joint have their second hoses into the copied line", () => {
    const after = of.withTwin(layout(joint("S", [line("A", { device: "master" }), into("B", "A"), line("C")])), "S");
    expect(after.lines[1].end.lines.map(({ id, end }) => [id, end.line ?? null])).toEqual([["D", null], ["E", "D"], ["F", null]]);
  });

  test("are put last as a line of their own", () => {
    const after = of.withLine(layout(line("A"), line("B")), line("A", { length: "50@US" }));
    expect(after.lines.map(({ id, length }) => [id, length])).toEqual([["A", "200@US"], ["B", "200@US"], ["C", "50@US"]]);
  });
});

describe("a joint before a line", () => {
  const supply = { hose: "large", length: "100@US", device: "wye" };

  test("stands as high as the line ended, with the line and its twin behind it", () => {
    const after = of.withJoint(layout(line("A", { height: "12@US" }), line("B")), "A", supply);
    expect(after.lines[0]).toEqual({
      ...supply, id: "S", runs: "1", loss: "", loss_at: "", device_most: "", height: "12@US",
      end: { lines: [line("A", { height: "12@US" }), line("C", { height: "12@US" })] },
    });
    expect(after.lines[1]).toEqual(line("B"));
  });

  test("before a joint takes a name that none behind it has", () => {
    expect(ids(of.withJoint(layout(joint("S", [line("A")])), "S", supply))).toEqual(["T", "S", "A", "U", "B"]);
  });

  test("goes again, and the lines behind it stay, but those that shared its end", () => {
    const tree = layout(joint("S", [line("A"), line("B")]), into("C", "S"), line("D"));
    expect(ids(of.unjoined(tree, "S"))).toEqual(["A", "B", "D"]);
  });
});

describe("a line taken away", () => {
  const tree = { ...layout(joint("S", [line("A")]), line("B", { device: "master" }), into("C", "B")), now: { pressure: "", gates: "set", shut: ["A", "B", "C"] } };

  test("takes a joint that it leaves empty, its second hoses, and what is shut of them", () => {
    expect(ids(of.without(tree, "A"))).toEqual(["B", "C"]);
    expect(of.without(tree, "A").now.shut).toEqual(["B", "C"]);
    expect(ids(of.without(tree, "B"))).toEqual(["S", "A"]);
    expect(of.without(tree, "B").now).toEqual({ pressure: "", gates: "set", shut: ["A"] });
  });

  test("leaves a joint that has others", () => {
    expect(ids(of.without(layout(joint("S", [line("A"), line("B")])), "A"))).toEqual(["S", "B"]);
  });

  test("is to spare only where something stays", () => {
    expect(of.isSpare(tree, "A")).toBe(true);
    expect(of.isSpare(layout(joint("S", [line("A")])), "A")).toBe(false);
    expect(of.isSpare(layout(line("A", { device: "master" }), into("B", "A")), "A")).toBe(false);
  });
});

describe("room for more", () => {
  const bounds = { lines: 4, depth: 2, loops: 1 };
  const two = layout(line("A"), line("B"));
  const four = layout(...[..."ABCD"].map((id) => line(id)));
  const looped = layout(line("A", { device: "master" }), into("B", "A"));
  const lone = layout(joint("S", [line("A")]));

  test.each([
    ["a line", two, "A", "line", true],
    ["no fifth line", four, "A", "line", false],
    ["a twin that makes four", layout(...[..."ABC"].map((id) => line(id))), "A", "twin", true],
    ["a twin of a joint with all behind it", lone, "S", "twin", true],
    ["no twin of a joint that makes six", layout(joint("S", [line("A"), line("B")])), "S", "twin", false],
    ["a wye and its twin", two, "A", "wye", true],
    ["no wye and twin that make five", layout(...[..."ABC"].map((id) => line(id))), "A", "wye", false],
    ["no wye deeper than the bound", lone, "A", "wye", false],
    ["no wye before a joint at the bound", lone, "S", "wye", false],
    ["no wye before a line that shares its end", looped, "A", "wye", false],
    ["no wye before a second hose", looped, "B", "wye", false],
    ["a second hose into a device", layout(line("A", { device: "master" })), "A", "second", true],
    ["no second hose into a nozzle", two, "A", "second", false],
    ["no second loop", looped, "A", "second", false],
    ["no twin that makes a second loop", layout(joint("S", [line("A", { device: "master" }), into("B", "A")])), "S", "twin", false],
    ["a line beside a loop", looped, "A", "line", true],
  ])("%s", (_, given, id, added, is) => {
    expect(of.hasRoom(given, id, added, bounds)).toBe(is);
  });

  test("counts a wye's own hose and the twin of all that is behind it", () => {
    const tree = layout(joint("S", [line("A"), line("B")]));
    expect(of.hasRoom(tree, "S", "wye", { lines: 7, depth: 3, loops: 0 })).toBe(true);
    expect(of.hasRoom(tree, "S", "wye", { lines: 6, depth: 3, loops: 0 })).toBe(false);
    expect(of.hasRoom(tree, "S", "wye", { lines: 7, depth: 2, loops: 0 })).toBe(false);
    expect(of.hasRoom(tree, "S", "twin", { lines: 6, depth: 1, loops: 0 })).toBe(true);
    expect(of.hasRoom(tree, "S", "twin", { lines: 5, depth: 1, loops: 0 })).toBe(false);
  });
});

test("what stands in inputs is every entry with its kind; a joint and a second hose have no nozzle", () => {
  const given = { ...layout(joint("S", [line("A", { end: smooth })], { loss: "10@US", loss_at: "500@US", device_most: "800@US" }), into("B", "S")), now: { pressure: "80@US", gates: "set", shut: [] } };
  given.source = { kind: "draft", intake: "1@US", lift: "10@US", loss: "2@US" };
  const hose = (loss = "", at = "", most = "") => [["length", "200@US"], ["rise", ""], ["pressure", loss], ["flow", at], ["flow", most]];
  expect(of.entriesOf(given, { pump: "150@US", end: "100@US", flow: "60@US", length: "7@US" })).toEqual([
    ...hose("10@US", "500@US", "800@US"), ...hose(), ["flow", ""], ["flow", ""], ["diameter", "1.125@US"], ["pressure", "50@US"], ...hose(),
    ["pressure", "1@US"], ["lift", "10@US"], ["lift", "2@US"], ["pressure", "80@US"],
    ["pressure", "150@US"], ["pressure", "100@US"], ["flow", "60@US"], ["length", "7@US"],
  ]);
});

describe("what a rig carries in the place of a line", () => {
  const before = layout(line("A", { height: "9@US", runs: "2", loss: "3@US", loss_at: "1@US", device_most: "800@US", device: "master", end: { ...fog, typed: "yes" } }), line("B"));
  const bed = { hose: "attack", length: "150@US", crew: "two", end: smooth };

  test("a hose bed brings its hose, nozzle and people, at the height of the line", () => {
    const after = of.asBed(before, "A", bed);
    expect(after.lines[0]).toEqual(line("A", { height: "9@US", length: "150@US", end: { ...smooth, typed: "" } }));
    expect([after.crew, after.lines[1]]).toEqual(["two", line("B")]);
    expect(of.asBed(before, "A", { ...bed, crew: undefined }).crew).toBe("handline");
  });

  test("a piped device has no hose, and its builder's loss where it has one", () => {
    const gun = { ...bed, hose: "", length: "", device: "master", loss: "15@US", loss_at: "500@US", device_most: "800@US" };
    expect(of.asBed(before, "A", gun).lines[0]).toMatchObject({ hose: of.PIPED, length: "0", device: "master", loss: "15@US", loss_at: "500@US", device_most: "800@US", runs: "1" });
    expect(of.asBed(before, "A", { ...gun, loss_at: undefined }).lines[0]).toMatchObject({ loss: "15@US", loss_at: "" });
    expect(of.asBed(before, "A", { ...gun, loss: "" }).lines[0]).toMatchObject({ loss: "", loss_at: "" });
    expect(of.asBed(before, "A", { ...gun, device: "" }).lines[0]).toMatchObject({ device: "none", loss: "", loss_at: "", device_most: "" });
  });

  test("supply hose goes to the inlet of the ready-made line, all of it", () => {
    const inlet = { end: { kind: "inlet", pressure: "20@US" } };
    expect(of.asSupply(before, "A", { hose: "large", length: "800@US" }, inlet).lines[0]).toEqual(
      line("A", { hose: "large", length: "800@US", height: "9@US", end: { ...fog, typed: "yes", kind: "inlet", pressure: "20@US" } }));
  });
});
