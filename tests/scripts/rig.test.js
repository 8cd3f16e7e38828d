// A rig's profile as data, and what of it differs from another.
import { describe, expect, test } from "bun:test";

import { inWords, known, mayFit, signOf } from "../../site_src/static/js/shift/known.js";
import { pathOf } from "../../site_src/static/js/power/of_run.js";
import { differences } from "../../site_src/static/js/rig/differences.js";
import * as of from "../../site_src/static/js/rig/profile.js";

const end = (more = {}) => ({ kind: "fog", flow: "150@US", tip: "", pressure: "100@US", ...more });
const data = {
  schema: 3,
  systems: { US: { family: "customary" }, SI: { family: "metric" } },
  new: { customary: { tank: "", friction: "exact" }, metric: { tank: "", friction: "metric" } },
  openings: { customary: { crew: "two", lines: [{ hose: "attack", length: "200@US", colour: "red", end: { ...end(), least: "95@US" } }] } },
  guns: { customary: end({ kind: "smooth", tip: "1.5@US", pressure: "80@US", least: "x" }) },
  hoses: [{ id: "wide", family: "metric", common: true }, { id: "odd", family: "customary", label: "Odd" }, { id: "attack", family: "customary", common: true, label: "Attack" }, { id: "large", family: "customary", common: true, label: "Large" }],
  supplies: { customary: [{ id: "five" }, { id: "four" }] },
  tips: [{ id: "1@US", label: "1 in" }],
};

describe("a new rig", () => {
  test("has its system, one bed of the usual hose, and no measured hose", () => {
    expect(of.newProfile(data, "US", "Engine 1", "Bed")).toEqual({
      schema: 3, id: expect.any(String), name: "Engine 1", units: "US", tank: "", friction: "exact", hoses: [],
      beds: [{ name: "Bed", hose: "attack", length: "200@US", crew: "two", end: end() }],
    });
  });

  test("is another one as a copy, which shares nothing", () => {
    const one = of.newProfile(data, "US", "Engine 1", "Bed");
    const copy = of.copyOf(one, "Engine 2");
    expect(copy).toEqual({ ...one, id: copy.id, name: "Engine 2" });
    expect(copy.id).not.toBe(one.id);
    expect(copy.beds[0]).not.toBe(one.beds[0]);
  });

  test("has a gun piped to the pump, hose and supply of a kind that no row has yet", () => {
    expect(of.newGun(data, "US", "Gun")).toEqual({ name: "Gun", hose: "", length: "", device: "master", loss: "", end: end({ kind: "smooth", tip: "1.5@US", pressure: "80@US" }), tips: [] });
    const row = (hose) => ({ hose });
    expect(of.newHose(data, "US", [])).toEqual({ hose: "attack", coefficient: "", origin: "handbook", test_pressure: "" });
    expect(of.newHose(data, "US", [row("attack")]).hose).toBe("large");
    expect(of.newHose(data, "US", [row("attack"), row("large")]).hose).toBe("odd");
    expect(of.newHose(data, "US", ["attack", "large", "odd"].map(row)).hose).toBe("attack");
    expect(of.newHose(data, "SI", []).hose).toBe("wide");
    expect(of.newSupply(data, "US", [row("five")])).toEqual({ hose: "four", length: "", limit: "" });
    expect(of.newSupply(data, "US", []).hose).toBe("five");
  });

  test("has rows added, taken away and changed, each in its place", () => {
    expect(of.withRow(undefined, 1)).toEqual([1]);
    expect(of.withRow([1], 2)).toEqual([1, 2]);
    expect(of.withoutRow([1, 2, 3], 1)).toEqual([1, 3]);
    expect(of.changedRow([{ a: 1 }, { a: 1, b: 2 }], 1, { a: 5 })).toEqual([{ a: 1 }, { a: 5, b: 2 }]);
  });

  test("has a name that no other has, as people read names", () => {
    const rigs = [{ name: "Engine 1" }, { name: " ENGINE 1 2" }, { name: null }];
    expect([of.freeName("Tower", rigs), of.freeName("engine 1", rigs), of.freeName("Engine 1 ", rigs)]).toEqual(["Tower", "engine 1 3", "Engine 1  2"]);
    expect([of.plainName(" Abc "), of.plainName(null), of.plainName(5)]).toEqual(["abc", "", "5"]);
  });
});

test("what converts of a profile is every quantity that is there, with its kind", () => {
  const specs = {
    fields: { tank: { kind: "quantity", quantity: "volume" }, friction: { kind: "choice" }, rated: { kind: "quantity", quantity: "flow" } },
    hose_fields: { coefficient: { kind: "quantity", quantity: "coefficient" } },
    bed_fields: { length: { kind: "quantity", quantity: "length" }, pressure: { kind: "quantity", quantity: "pressure" } },
    supply_fields: { limit: { kind: "quantity", quantity: "pressure" } },
  };
  const profile = { tank: "500@US", friction: "exact", rated: 5, hoses: [{ coefficient: "15@US" }, null], beds: [{ length: "200@US", end: { pressure: "100@US" } }, null, { length: 1 }], supply: [{ limit: "185@US" }] };
  expect(of.amountsOf(profile, specs)).toEqual([["volume", "500@US"], ["coefficient", "15@US"], ["length", "200@US"], ["pressure", "100@US"], ["pressure", "185@US"]]);
  expect(of.amountsOf({ beds: "x" }, specs)).toEqual([]);
  expect(of.amountsOf(null, specs)).toEqual([]);
});

describe("what differs between two rigs", () => {
  const spec = {
    ...data,
    fields: { name: { kind: "text" }, drive: { kind: "choice" }, tank: { kind: "quantity", quantity: "volume" }, bed: { kind: "codes" } },
    hose_fields: { hose: { kind: "shelf" }, coefficient: { kind: "quantity", quantity: "coefficient" } },
    bed_fields: { name: { kind: "text" }, hose: { kind: "shelf" }, tip: { kind: "quantity", quantity: "diameter" }, flow: { kind: "quantity", quantity: "flow" }, pressure: { kind: "quantity", quantity: "pressure" } },
    supply_fields: { hose: { kind: "shelf" }, limit: { kind: "quantity", quantity: "pressure" } },
    check_fields: { item: { kind: "text" }, least: { kind: "text" } },
    words: {
      field: { name: "Name", drive: "Drive", tank: "Tank", bed: "Codes", hoses: "Hose", beds: "Bed", supply: "Supply", checks: "Check", coefficient: "Coefficient", hose: "Hose", tip: "Tip", tips: "Tips", kind: "Nozzle", flow: "Flow", pressure: "Pressure", limit: "Limit", item: "Item", least: "Least" },
      option: { pto: "PTO" }, pressure: { fog: "Fog", smooth: "Smooth bore" }, rig: { unset: "not said" },
      carry: { row_added: "new", row_removed: "gone", change: "{before} to {after}" },
    },
  };
  const u = { u_volume: "gal", u_flow: "gpm", u_pressure: "psi" };
  const shown = (kind, entry) => entry.split("@")[0];
  const base = { name: "Engine 1", drive: "midship", tank: "500@US", hoses: [{ hose: "attack", coefficient: "15@US" }], beds: [{ name: "Left", hose: "attack", end: end() }], supply: [{ hose: "large", limit: "185@US" }], checks: [{ item: "lights", least: "3" }] };
  const told = (after, before = base) => differences(before, after, { data: spec, u, shown }).map(({ where, field, change }) => [where, field, change].join(" | "));

  test("is nothing where they are alike", () => expect(told(structuredClone(base))).toEqual([]));

  test.each([
    [{ name: "Engine 2" }, ["| Name | Engine 1 to Engine 2"]],
    [{ drive: "pto" }, ["| Drive | midship to PTO"]],
    [{ drive: undefined }, ["| Drive | midship to not said"]],
    [{ tank: "750@US" }, ["| Tank | 500 gal to 750 gal"]],
    [{ tank: "" }, ["| Tank | 500 gal to not said"]],
    [{ bed: ["a", "b"] }, ["| Codes | not said to a, b"]],
    [{ bed: [] }, []],
    [{ hoses: [{ hose: "attack", coefficient: "12@US" }] }, ["Hose, Attack | Coefficient | C 15 to C 12"]],
    [{ hoses: [] }, ["Hose, Attack | | gone"]],
    [{ hoses: undefined }, ["Hose, Attack | | gone"]],
    [{ hoses: [...base.hoses, { hose: "own", coefficient: "9@US" }] }, ["Hose, own | | new"]],
    [{ hoses: [...base.hoses, ...base.hoses] }, ["Hose, Attack (2) | | new"]],
    [{ hoses: [...base.hoses, ...base.hoses, ...base.hoses] }, ["Hose, Attack (2) | | new", "Hose, Attack (3) | | new"]],
    [{ beds: [{ name: "Left", hose: "large", end: end() }] }, ["Bed, Left | Hose | Attack to Large"]],
    [{ beds: [{ name: "Left", hose: "attack", end: end({ flow: "125@US", tip: "1@US" }) }] }, ["Bed, Left | Flow | 150 gpm to 125 gpm"]],
    [{ beds: [{ name: "Left", hose: "attack", end: end({ kind: "smooth", tip: "1@US", pressure: "50@US" }) }] },
      ["Bed, Left | Tip | not said to 1 in", "Bed, Left | Flow | 150 gpm to not said", "Bed, Left | Pressure | 100 psi to 50 psi", "Bed, Left | Nozzle | Fog to Smooth bore"]],
    [{ beds: [{ name: "Left", hose: "attack", tips: ["1@US", "7@US"], end: end() }] }, ["Bed, Left | Tips | not said to 1 in, 7"]],
    [{ supply: [{ hose: "large", limit: "200@US" }] }, ["Supply, Large | Limit | 185 psi to 200 psi"]],
    [{ supply: undefined, checks: undefined }, ["Supply, Large | | gone", "Check, lights | | gone"]],
    [{ checks: [{ item: "lights", name: "Lamps", least: "3" }] }, ["Check, lights | | gone", "Check, Lamps | | new"]],
    [{ checks: [{ item: "lights", least: "4" }] }, ["Check, lights | Least | 3 to 4"]],
  ])("is said in words: %#", (change, lines) => expect(told({ ...base, ...change }).map((line) => line.replace(/^ /, "").replace("|  |", "| |"))).toEqual(lines));
});

describe("what a profile answers of a card's questions", () => {
  const questions = [
    { id: "drive", field: "drive", answers: ["midship", "pto"] },
    { id: "stages", field: "pump_stages", says: { 1: "single", 2: "two" }, answers: ["single", "two"] },
  ];

  test("is only what it says, in the card's words", () => {
    expect(known(questions, { drive: "pto", pump_stages: "2" })).toEqual({ drive: "pto", stages: "two" });
    expect(known(questions, { drive: "boat", pump_stages: "7" })).toEqual({});
    expect(known(questions, null)).toEqual({});
    expect(inWords({ drive: "pto", stages: "two" }, { rig_answer: { drive: { pto: "PTO" }, stages: { two: "two-stage" } } })).toBe("PTO, two-stage");
  });

  test("leaves out a card only where it speaks against it", () => {
    const fits = { drive: ["pto"], stages: ["single", "two"] };
    expect([mayFit(fits, {}), mayFit(fits, { drive: "pto" }), mayFit(fits, { drive: "midship" }), mayFit(fits, { stages: "two" }), mayFit({}, { drive: "pto" })]).toEqual([true, true, false, true, true]);
  });

  test("adds to a sign what goes for such a rig, once it is known to be one", () => {
    const step = { see: "Lamp on.", note: "Two lamps.", note_for: { drive: ["pto"] } };
    expect([signOf(step, { drive: "pto" }), signOf(step, { drive: "midship" }), signOf(step, {}), signOf({ see: "Lamp on." }, { drive: "pto" })])
      .toEqual(["Lamp on. Two lamps.", "Lamp on.", "Lamp on.", "Lamp on."]);
  });
});

describe("the power path of a practice run", () => {
  const train = { gear: "drive", collar: "pump", selector: "pump", valve: "pump", pump_air: 1, road_air: 0.05, brake_set: true, grinding: false, moved: false };
  const shown = { raised: false, shaft_turning: true, pump_turning: true, stand: ["switch_closed"], lights: { engaged: true }, strains: false };
  const path = (more = {}, said = {}) => pathOf({ train: { ...train, ...more }, shown: { ...shown, ...said } }, { pump_psi: "90" });

  test("is as calc says", () => {
    expect(path()).toEqual({
      engine: "idle", gear: "pump", collar: "pump", selector: "pump", air: { road: "empty", pump: "full" }, shaft_turning: true, pump_turning: true,
      wheels_locked: true, switch_closed: true, lights: { engaged: true }, grinding: false, strains: false, moved: false, figures: { pump_psi: "90" },
    });
    expect(path({ gear: "neutral" }, { raised: true, stand: [] })).toMatchObject({ engine: "raised", gear: "neutral", switch_closed: false });
  });

  test("has air on the side that the valve feeds once it pushes, and leaving the other while it is felt", () => {
    expect(path({ pump_air: 0.5 }).air).toEqual({ road: "empty", pump: "empty" });
    expect(path({ pump_air: 0.51, road_air: 0.2 }).air).toEqual({ road: "leaving", pump: "full" });
    expect(path({ road_air: 0.1 }).air.road).toBe("empty");
    expect(path({ valve: "road", road_air: 0.9, pump_air: 0.9 }).air).toEqual({ road: "full", pump: "leaving" });
  });
});
