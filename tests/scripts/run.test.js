// Where a run and a part of a test stand.
import { Glob, TOML } from "bun";
import { describe, expect, test } from "bun:test";
import { readFileSync } from "node:fs";

import { begun, halted, withSet, withDraftValue, withValue } from "../../site_src/static/js/service/record.js";
import { isUnderWay, runState } from "../../site_src/static/js/service/run_state.js";
import * as stage from "../../site_src/static/js/service/stage.js";
import * as tips from "../../site_src/static/js/service/tips.js";

const STANDARDS = `${import.meta.dir}/../../site_src/data/service`;
const run = { id: "capacity", kind: "run", due_s: [0, 300, 600, 900, 1200], hold_s: 1200, end_grace_s: 30, tips: [] };
const empty = { tests: {}, conditions: {}, events: [], finished_ms: null };
const judgedAs = (...missing) => ({ attempts: [{ missing: missing.map((at) => `due_${at}`) }] });
const unread = judgedAs(...run.due_s);
const going = (record = empty) => begun(record, "capacity", { now: 0, wall: 0, isRun: true });
const halt = (kind, now, record = going()) => halted(record, "capacity", { kind, now, wall: 0, reason: "" });
const at = (seconds, { record = going(), judged = unread, test: of = run } = {}) => runState(record, of, judged, seconds * 1000);

describe("a run", () => {
  test.each([
    ["not begun", empty, 0, "idle"], ["begun", going(), 5, "going"], ["held to its end", going(), 1200, "over"], ["just before", going(), 1199, "going"],
    ["paused", halt("pause", 5000), 9, "paused"], ["stopped", halt("stop", 5000), 9, "stopped"], ["whose flow moved", halt("strayed", 5000), 9, "strayed"],
  ])("%s stands so", (_, record, seconds, state) => expect(at(seconds, { record }).state).toBe(state));

  test("that is paused after its end with its last reading taken is over", () => {
    const record = halt("pause", 1_210_000);
    expect(at(9999, { record, judged: judgedAs() }).state).toBe("over");
    expect(at(9999, { record, judged: judgedAs(1200) }).state).toBe("paused");
  });

  test("wants readings at their times: the next due, and those that are missed once nearer to the next", () => {
    expect(at(0)).toMatchObject({ due: 0, missed: [], dues: run.due_s });
    expect(at(150)).toMatchObject({ due: 0, missed: [] });
    expect(at(151)).toMatchObject({ due: 300, missed: [0] });
    expect(at(1199, { judged: judgedAs(300, 1200) })).toMatchObject({ due: 1200, missed: [300] });
    expect(at(5000, { judged: judgedAs(1200) })).toMatchObject({ due: 1200, missed: [] });
    expect(at(10, { judged: { attempts: [{ missing: ["due_300", "pitot_psi"] }] } }).dues).toEqual([300]);
    expect(at(10, { judged: { attempts: [] } }).dues).toEqual(run.due_s);
    expect(at(151, { record: halt("stop", 151_000) })).toMatchObject({ due: null, missed: [] });
    expect(at(10, { judged: judgedAs() })).toMatchObject({ due: null });
  });

  test("counts a reading as the nearest that is due, the last not before its end", () => {
    expect([140, 150, 160, 449, 451].map((s) => at(s).at)).toEqual([0, 0, 300, 300, 600]);
    expect([1169, 1170, 1300].map((s) => at(s).at)).toEqual([null, 1200, 1200]);
    expect(at(160, { judged: judgedAs(0, 600) }).at).toBeNull();
    expect(at(10, { test: { ...run, due_s: [], hold_s: null }, judged: { attempts: [] } }).at).toBeNull();
  });

  test("is under way until it is held to its end with its last reading, stopped, or its test finished", () => {
    expect(isUnderWay(empty, run, unread)).toBe(false);
    expect(isUnderWay(going(), run, unread)).toBe(true);
    expect(isUnderWay({ ...going(), finished_ms: 1 }, run, unread)).toBe(false);
    expect(isUnderWay(halt("pause", 100_000), run, unread)).toBe(true);
    expect(isUnderWay(halt("pause", 100_000), run, judgedAs())).toBe(true);
    expect(isUnderWay(halt("pause", 1_200_000), run, judgedAs())).toBe(false);
    expect(isUnderWay(halt("pause", 1_200_000), run, judgedAs(1200))).toBe(true);
    expect(isUnderWay(halt("stop", 100_000), run, unread)).toBe(false);
    expect(isUnderWay(halt("pause", 1_300_000), { ...run, hold_s: null }, judgedAs())).toBe(true);
  });

  test("says what it rests on", () => {
    expect(at(60)).toMatchObject({ counted: 60, isOpen: true, isRunning: true, clock: { since: 0 }, attempt: { sets: [] } });
    expect(at(60, { record: empty })).toMatchObject({ attempt: null, clock: null, counted: 0, isOpen: false, isRunning: false });
    expect(at(60, { record: halt("pause", 5000) })).toMatchObject({ isOpen: true, isRunning: false, counted: 5 });
  });
});

describe("a part of a test", () => {
  const leaks = { id: "leaks", kind: "entries" };
  const said = (judged, record = empty, part = leaks) => stage.stateOf(record, part, { attempts: [], ...judged });

  test.each([
    [{ status: "fail" }, "failed"], [{ status: "pass" }, "passed"], [{ status: "pass", is_close: true }, "close"], [{ not_done: "frozen" }, "left"],
    [{ status: "fail", not_done: "frozen" }, "failed"], [{}, "todo"],
  ])("judged %p is %s", (judged, state) => expect(said(judged)).toBe(state));

  test("is now while its clock or its run goes on", () => {
    const holding = begun(empty, "vacuum", { now: 0, wall: 0, isRun: false });
    expect(said({ status: "fail" }, holding, { id: "vacuum", kind: "hold" })).toBe("now");
    expect(said({}, halted(holding, "vacuum", { kind: "pause", now: 1, wall: 0 }), { id: "vacuum", kind: "hold" })).toBe("todo");
    expect(said(unread, halt("pause", 1000), run)).toBe("now");
    expect(said(judgedAs(), halt("pause", 1_300_000), run)).toBe("open");
  });

  test("is begun once anything was entered, and open once the test is finished", () => {
    const entered = withValue(empty, "leaks", "pump", "no", 1);
    expect(said({}, entered)).toBe("begun");
    expect(said({}, withValue(empty, "leaks", "pump", "", 1))).toBe("todo");
    expect(said({}, withDraftValue(empty, "leaks", "pump", "1"))).toBe("begun");
    expect(said({}, { ...entered, finished_ms: 1 })).toBe("open");
    expect(said({}, { ...empty, finished_ms: 1 })).toBe("open");
    const conditions = { id: "conditions", kind: "conditions", fields: [{ id: "place" }, { id: "lift_ft" }] };
    expect(said({}, { ...empty, conditions: { lift_ft: "8" } }, conditions)).toBe("begun");
    expect(said({}, { ...empty, conditions: { tips_in: "2" } }, conditions)).toBe("todo");
    expect(said({}, { ...empty, conditions: { lift_ft: "8" } }, { ...conditions, kind: "entries" })).toBe("todo");
  });

  test("has a station of the line", () => {
    const states = Object.keys(stage.STATION);
    expect(states.filter((state) => stage.STATION[state] === "proven")).toEqual(["passed", "close"]);
    expect(states.filter((state) => stage.STATION[state] === "shut")).toEqual(["failed"]);
    expect(states.filter((state) => stage.STATION[state] === "here")).toEqual(["now"]);
    expect(states.filter((state) => stage.STATION[state] === "todo")).toEqual(["todo", "begun"]);
    expect(states.filter((state) => stage.STATION[state] === "skipped")).toEqual(["left", "open"]);
  });

  test("is counted once", () => {
    const counts = stage.countsOf(Object.keys(stage.STATION));
    expect(counts).toEqual({ pass: 2, fail: 1, todo: 3, open: 1, left: 1 });
  });

  test("that any standard asks for, or did, stands once on the line, and nothing else does", () => {
    const standing = stage.GROUPS.flatMap(([name, names]) => (name ? names : []));
    const read = (pattern) => [...new Glob(pattern).scanSync(STANDARDS)].map((name) => readFileSync(`${STANDARDS}/${name}`, "utf-8"));
    const kinds = [...read("*.toml").flatMap((text) => TOML.parse(text).kind ?? []), ...read("former/*.json").flatMap((text) => Object.values(JSON.parse(text)).flatMap(Object.values))];
    const asked = kinds.flatMap(({ tests }) => tests);
    expect(asked.length).toBeGreaterThan(0);
    expect([...standing].sort()).toEqual([...new Set(asked)].sort());
    expect(new Set(stage.GROUPS.map(([name]) => name)).size).toBe(stage.GROUPS.length);
  });

  test("to go on with is one that runs, else the first to do, else the first begun", () => {
    const tests = ["a", "b", "c"].map((id) => ({ id }));
    const next = (...states) => stage.nextPart(tests, { a: states[0], b: states[1], c: states[2] })?.id ?? null;
    expect(next("todo", "begun", "now")).toBe("c");
    expect(next("begun", "passed", "todo")).toBe("c");
    expect(next("passed", "begun", "failed")).toBe("b");
    expect(next("passed", "open", "left")).toBeNull();
  });

  test("that is under way may stand still", () => {
    expect(stage.nameOf(going(), run, "now")).toBe("now");
    expect(stage.nameOf(halt("pause", 1000), run, "now")).toBe("paused");
    expect(stage.nameOf(empty, run, "now")).toBe("paused");
    expect(stage.nameOf(going(), run, "passed")).toBe("passed");
  });
});

describe("the tips of a run", () => {
  const record = { ...empty, conditions: { flow_by: "pitot", tips_in: ["2@US", "1.5@US"] } };
  const part = { id: "capacity", tips: [{ place: 1, count: 2, pitot: 40 }, { place: 0, count: 1, pitot: 60 }] };

  test("are those chosen, else the best at hand, none where flow is metered or the plan has none", () => {
    expect(tips.tipStanding(part, record)).toEqual({ tip_in: "1.5@US", count: 2 });
    const chosen = withDraftValue(record, "capacity", "x", "1");
    chosen.tests.capacity.draft.tip = { tip_in: "2@US", count: 1 };
    expect(tips.tipStanding(part, chosen)).toEqual({ tip_in: "2@US", count: 1 });
    expect(tips.optionOf(part, chosen).pitot).toBe(60);
    expect(tips.optionOf(part, record).pitot).toBe(40);
    expect(tips.tipStanding(part, { ...record, conditions: { ...record.conditions, flow_by: "meter" } })).toBeNull();
    expect(tips.tipStanding({ ...part, tips: [] }, record)).toBeNull();
    expect(tips.tipStanding({ ...part, tips: undefined }, record)).toBeNull();
    expect(tips.optionOf(part, { ...record, conditions: { ...record.conditions, flow_by: "meter" } })).toBeUndefined();
    expect(tips.optionOf({ ...part, tips: [{ place: 1, count: 1 }, { place: 0, count: 1, pitot: 7 }] }, chosen).pitot).toBe(7);
    expect(tips.optionOf({ ...part, tips: [{ place: 0, count: 2 }, { place: 0, count: 1, pitot: 7 }] }, chosen).pitot).toBe(7);
  });

  test("are called by the name and unit they were chosen under", () => {
    const context = { data: { tips: [{ id: "2.25@US", chip: "2 1/4" }] }, words: { unit: { US: { diameter: "in" }, SI: { diameter: "mm" } } } };
    expect([tips.tipName("2.25@US", context), tips.tipName("38@SI", context), tips.tipName("38", context)]).toEqual(["2\u00a01/4\u00a0in", "38\u00a0mm", "38"]);
  });
});

test("a set is one of the attempt that runs", () => {
  const record = withSet(withDraftValue(going(going()), "capacity", "discharge_psi", "1"), { id: "capacity", fields: [] }, { now: 0, wall: 0 });
  expect(record.tests.capacity.attempts.map(({ sets }) => sets.length)).toEqual([0, 1]);
});
