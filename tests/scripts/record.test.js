// A service test as data: what each act writes, what it leaves, and how its clocks count.
import { describe, expect, test } from "bun:test";

import * as of from "../../site_src/static/js/service/record.js";

const DAY = 86400000;
const standard = { id: "nfpa", edition: "e1", kind: "annual" };
const profile = { id: "rig-1", name: "Engine 1", pump_rated: "1500@US", drive: "midship", tank: "", colour: "red" };
const begin = (more = {}) => of.newRecord({ profile, standard, earlier: [], compared_ms: null, wall: 1000, ...more });
const finishedAt = (finished_ms, more = {}) => ({ ...begin(), finished_ms, result: { points: [] }, ...more });
const going = (record = begin(), name = "capacity", now = 10_000) => of.begun(record, name, { now, wall: 5000, tip: { tip_in: "2@US", count: 1 }, isRun: true });
const clockIn = (record, name = "capacity") => of.clockOf(record, name);

test("tests stand newest first, whatever order they are kept in", () => {
  const kept = [{ begun_ms: 2 }, { begun_ms: 3 }, { begun_ms: 1 }];
  expect(of.newestFirst(kept).map(({ begun_ms }) => begun_ms)).toEqual([3, 2, 1]);
  expect(kept[0].begun_ms).toBe(2);
});

describe("a new test", () => {
  test("takes of the rig what tests say of one, where it is said", () => {
    expect(begin().rig).toEqual({ drive: "midship", pump_rated: "1500@US", meters: "", gauges: "", auxiliary: "", new: {}, last: {} });
    expect(begin()).toMatchObject({
      schema: of.SCHEMA, revision: 0, rig_id: "rig-1", rig_name: "Engine 1", standard, conditions: {}, accuracy: {}, equipment: [],
      people: { tester: "", witness: "" }, tests: {}, events: [], notes: "", begun_ms: 1000, finished_ms: null, result: null,
    });
  });

  test("has an id of its own", () => expect(begin().id).not.toBe(begin().id));

  test("takes the site, the instruments and the tester from the last one finished, and no weather", () => {
    const point = (id, rpm) => ({ id, engine_rpm: rpm, net_psi: 150, other: 1 });
    const first = finishedAt(5, { standard: { ...standard, kind: "acceptance" }, result: { points: [point("capacity", 1700), { id: "fifty", net_psi: 250 }, { id: "seventy", engine_rpm: 1 }] } });
    const last = finishedAt(9, {
      conditions: { place: "pond", source: "draft", weather: "rain", lift_ft: "8", tips_in: ["2@US"] }, equipment: [{ name: "gauge" }],
      people: { tester: "Ann", witness: "Bo" }, rig: { meters: "2", gauges: "3", auxiliary: "no" }, result: { points: [point("capacity", 1800)] },
    });
    const open = { ...begin(), begun_ms: 99, people: { tester: "Cy", witness: "" } };
    const next = begin({ earlier: [last, open, first] });
    expect(next.conditions).toEqual({ place: "pond", source: "draft", tips_in: ["2@US"] });
    expect(next.equipment).toEqual(last.equipment);
    expect(next.equipment[0]).not.toBe(last.equipment[0]);
    expect(next.people).toEqual({ tester: "Ann", witness: "" });
    expect(next.rig).toMatchObject({ meters: "2", gauges: "3", auxiliary: "no" });
    expect(next.rig.new).toEqual({ capacity: { engine_rpm: 1700, net_psi: 150 } });
    expect(next.rig.last).toEqual({ capacity: { engine_rpm: 1800, net_psi: 150 } });
  });

  test("takes limits as compared where they were within the year", () => {
    expect(begin({ compared_ms: 7 }).tests).toEqual({ checks_dry: { values: { limits_confirmed: "yes" }, at: { limits_confirmed: 7 } } });
    expect(of.isCompared(begin({ compared_ms: 7 }))).toBe(true);
    expect(of.isCompared(begin())).toBe(false);
    expect(of.isCompared(begin({ compared_ms: 1000 }))).toBe(false);
  });

  test("takes over what its rig's profile came to say, and keeps what it was begun with", () => {
    const later = of.filledFrom(begin(), { ...profile, drive: "pto", tank: "750@US", colour: "blue" });
    expect(later.rig).toMatchObject({ drive: "midship", tank: "750@US" });
    expect("colour" in later.rig).toBe(false);
  });

  test.each([["acceptance", true], ["annual", false]])("of kind %s is a baseline: %p", (kind, is) => expect(of.isAcceptance({ standard: { kind } })).toBe(is));
});

describe("limits compared with the edition in force", () => {
  const compared = (at, more = {}) => ({ standard, tests: { checks_dry: { values: { limits_confirmed: "yes" }, at: { limits_confirmed: at } } }, ...more });
  const asked = (tests, wall = 400 * DAY) => of.comparedMs(tests, standard, wall);

  test("stand for a year, the last of them", () => {
    expect(asked([compared(100 * DAY), compared(200 * DAY), compared(150 * DAY)])).toBe(200 * DAY);
    expect(asked([compared(35 * DAY)])).toBeNull();
    expect(asked([compared(35 * DAY + 1)])).toBe(35 * DAY + 1);
    expect(asked([compared(400 * DAY)])).toBe(400 * DAY);
    expect(asked([])).toBeNull();
  });

  test("not by a clock ahead, by another standard or edition, nor where they were not", () => {
    expect(asked([compared(401 * DAY)])).toBeNull();
    expect(asked([compared(300 * DAY, { standard: { ...standard, id: "ulc" } })])).toBeNull();
    expect(asked([compared(300 * DAY, { standard: { ...standard, edition: "e2" } })])).toBeNull();
    expect(asked([{ standard, tests: {} }, { standard, tests: { checks_dry: {} } }])).toBeNull();
    expect(asked([{ standard, tests: { checks_dry: { values: { limits_confirmed: "no" }, at: { limits_confirmed: 300 * DAY } } } }])).toBeNull();
    expect(of.comparedMs([{ standard, tests: { checks_dry: { values: { limits_confirmed: "yes" } } } }], standard, 5)).toBe(0);
  });
});

describe("what is entered", () => {
  test("stands with its time, beside what stood", () => {
    const one = of.withValue(begin(), "leaks", "pump", "no", 7);
    const two = of.withValue(one, "leaks", "valves", "yes", 8);
    expect(two.tests.leaks).toEqual({ values: { pump: "no", valves: "yes" }, at: { pump: 7, valves: 8 } });
    expect(of.testOf(begin(), "leaks")).toEqual({});
    expect(of.withNotDone(two, "leaks", "frozen").tests.leaks).toMatchObject({ not_done: "frozen", values: { pump: "no" } });
    expect(one.tests.leaks.values).toEqual({ pump: "no" });
  });

  test("of readings is a draft that knows which were read since the last set", () => {
    let record = of.withDraftValue(begin(), "capacity", "discharge_psi", "150@US");
    record = of.withDraftValue(record, "capacity", "pitot_psi", "47@US", 1);
    record = of.withDraftValue(record, "capacity", "discharge_psi", "151@US");
    expect(of.testOf(record, "capacity").draft).toEqual({
      values: { discharge_psi: "151@US", pitot_psi: ["", "47@US"] }, touched: true, read: ["discharge_psi", "pitot_psi.1"],
    });
    expect(of.withDraftValue(record, "capacity", "pitot_psi", "46@US", 0).tests.capacity.draft.values.pitot_psi).toEqual(["46@US", "47@US"]);
    expect(of.testOf(record, "capacity").draft.values.pitot_psi).toEqual(["", "47@US"]);
    expect(of.withDraft(record, "capacity", { tip: "x" }).tests.capacity.draft).toMatchObject({ tip: "x", touched: true });
  });
});

describe("a clock", () => {
  test("counts from its start, and stands still before and where it ran backwards", () => {
    const record = going();
    expect(clockIn(record)).toEqual({ counted_s: 0, since: 10_000, events: [{ kind: "start", at_s: 0, wall: 5000 }] });
    expect(of.countedS(clockIn(record), 70_000)).toBe(60);
    expect(of.countedS(clockIn(record), 9_000)).toBe(0);
    expect(of.countedS(null, 9_000)).toBe(0);
    expect(of.attemptOf(record, "capacity")).toMatchObject({ tip: { count: 1 }, clock_s: 0, stopped: null, sets: [] });
    expect([of.attemptOf(begin(), "capacity"), clockIn(begin())]).toEqual([null, null]);
  });

  test("of a test that holds is its own, without attempts", () => {
    const record = of.begun(begin(), "vacuum", { now: 1, wall: 2, isRun: false });
    expect(record.tests.vacuum).toEqual({ clock: { counted_s: 0, since: 1, events: [{ kind: "start", at_s: 0, wall: 2 }] }, clock_s: 0 });
    expect(of.halted(record, "vacuum", { kind: "pause", now: 3001, wall: 4 }).tests.vacuum).toMatchObject({ clock: { counted_s: 3, since: null }, clock_s: 3 });
  });

  test("paused keeps its count, wants the flow anew, and goes on from there", () => {
    let record = of.withDraftValue(going(), "capacity", "pitot_psi", "47@US", 0);
    record = of.withDraftValue(of.withDraftValue(record, "capacity", "meter_gpm", "1500@US"), "capacity", "discharge_psi", "150@US");
    const paused = of.halted(record, "capacity", { kind: "pause", reason: "tip", now: 40_000, wall: 9 });
    expect(clockIn(paused)).toMatchObject({ counted_s: 30, since: null });
    expect(clockIn(paused).events.at(-1)).toEqual({ kind: "pause", reason: "tip", at_s: 30, wall: 9 });
    expect(of.attemptOf(paused, "capacity")).toMatchObject({ stopped: null, clock_s: 30 });
    expect(paused.tests.capacity.draft).toMatchObject({ values: { discharge_psi: "150@US" }, touched: true });
    expect(of.isRunning(paused)).toBe(false);
    const on = of.resumed(paused, "capacity", { now: 100_000, wall: 10 });
    expect(clockIn(on).events.at(-1)).toEqual({ kind: "resume", at_s: 30, wall: 10 });
    expect(of.countedS(clockIn(on), 105_000)).toBe(35);
    expect(of.runningIn(on)).toEqual(["capacity"]);
  });

  test.each([
    ["pause", "", null], ["stop", "noise", "noise"], ["stop", undefined, "stopped"], ["strayed", "", "flow_strayed"], ["end", "", null],
  ])("halted by %s for %p stops its attempt as %p", (kind, reason, stopped) => {
    const record = of.halted(going(), "capacity", { kind, reason, now: 11_000, wall: 9 });
    expect(of.attemptOf(record, "capacity").stopped).toBe(stopped);
    expect(clockIn(record).events.at(-1)).toEqual({ kind, reason: reason ?? "", at_s: 1, wall: 9 });
  });

  test("ended keeps the flow that was read", () => {
    const record = of.withDraftValue(going(), "capacity", "meter_gpm", "1500@US");
    expect(of.halted(record, "capacity", { kind: "end", now: 11_000, wall: 9 }).tests.capacity.draft.values).toEqual({ meter_gpm: "1500@US" });
    expect(of.halted(going(), "capacity", { kind: "pause", now: 11_000, wall: 9 }).tests.capacity.draft).toBeUndefined();
  });

  test("folded has its count up to now; one that stands still is left", () => {
    const record = of.folded(going(), "capacity", 25_000);
    expect(clockIn(record)).toMatchObject({ counted_s: 15, since: 25_000 });
    const still = of.halted(going(), "capacity", { kind: "pause", now: 11_000, wall: 9 });
    expect(of.folded(still, "capacity", 99_000)).toBe(still);
    expect(of.folded(begin(), "capacity", 1)).toMatchObject({ tests: {} });
  });

  test("begun again is another attempt; the first stays as it was", () => {
    const stopped = of.halted(going(), "capacity", { kind: "stop", reason: "noise", now: 11_000, wall: 9 });
    const again = of.begun(stopped, "capacity", { now: 12_000, wall: 10, isRun: true });
    expect(again.tests.capacity.attempts.map(({ stopped: why, tip }) => [why, tip])).toEqual([["noise", { tip_in: "2@US", count: 1 }], [null, null]]);
    expect(again.tests.capacity.attempts[0].clock.counted_s).toBe(1);
  });

  test("all of them halt at the end", () => {
    const both = of.begun(going(), "vacuum", { now: 10_000, wall: 1, isRun: false });
    const done = of.allHalted(both, { now: 15_000, wall: 2 });
    expect([of.runningIn(both).sort(), of.runningIn(done)]).toEqual([["capacity", "vacuum"], []]);
    expect(["capacity", "vacuum"].map((name) => clockIn(done, name).counted_s)).toEqual([5, 5]);
    expect(of.isRunning(both)).toBe(true);
  });
});

describe("readings", () => {
  const read = (text) => (record) => of.withDraft(of.withDraftValue(of.withDraftValue(record, "capacity", "pitot_psi", text, 0), "capacity", "discharge_psi", "150@US"), "capacity", { tip: "t" });
  const run = { id: "capacity", fields: [["pitot_psi", true], ["discharge_psi", true], ["oil_psi", false]].map(([id, needed]) => ({ id, needed })) };
  const first = of.withSet(read("47@US")(going()), run, { now: 10_000 + 300_040, wall: 77 });

  test("are kept with when they were taken, and the next start from them", () => {
    expect(of.attemptOf(first, "capacity").sets).toEqual([{ at_s: 300, at_ms: 77, tip: "t", values: { pitot_psi: ["47@US"], discharge_psi: "150@US" } }]);
    expect(first.tests.capacity.draft).toMatchObject({ touched: false, read: [], values: { discharge_psi: "150@US" } });
    expect(clockIn(first)).toMatchObject({ counted_s: 300.04, since: 310_040 });
    const plain = of.withSet(of.withDraftValue(going(), "capacity", "discharge_psi", "1"), run, { now: 10_000, wall: 1 });
    expect(of.attemptOf(plain, "capacity").sets[0].tip).toBeNull();
  });

  test("taken back are entered again, and stay as taken back", () => {
    const second = of.withSet(read("12@US")(first), run, { now: 400_000, wall: 88 });
    const back = of.takenBack(second, "capacity", 99);
    expect(of.attemptOf(back, "capacity").sets).toEqual(of.attemptOf(first, "capacity").sets);
    expect(of.attemptOf(back, "capacity").taken_back).toEqual([{ at_s: 390, at_ms: 88, tip: "t", values: { pitot_psi: ["12@US"], discharge_psi: "150@US" }, back_ms: 99 }]);
    expect(back.tests.capacity.draft).toMatchObject({ tip: "t", touched: true, read: ["pitot_psi.0", "discharge_psi"], values: { pitot_psi: ["12@US"] } });
    expect(of.attemptOf(of.takenBack(back, "capacity", 100), "capacity").taken_back.map(({ back_ms }) => back_ms)).toEqual([99, 100]);
  });
});

describe("readings that nobody touched", () => {
  const run = { id: "capacity", fields: [["pitot_psi", true], ["discharge_psi", true], ["oil_psi", false]].map(([id, needed]) => ({ id, needed })) };
  const typed = (record, ...rows) => rows.reduce((each, [name, text, place]) => of.withDraftValue(each, "capacity", name, text, place), record);
  const first = of.withSet(typed(going(), ["pitot_psi", "47@US", 0], ["pitot_psi", "48@US", 1], ["discharge_psi", "150@US"], ["oil_psi", "40@US"]), run, { now: 11_000, wall: 1 });

  test("are named, each tip's apart; none of a first set, and no blank", () => {
    expect("as_before" in of.attemptOf(first, "capacity").sets[0]).toBe(false);
    expect(of.carriedIn(first, run)).toEqual(["pitot_psi.0", "pitot_psi.1", "discharge_psi"]);
    expect(of.carriedIn(typed(first, ["pitot_psi", "49@US", 1], ["discharge_psi", ""]), run)).toEqual(["pitot_psi.0"]);
    expect(of.carriedIn(going(), run)).toEqual([]);
  });

  test("are carried into the next set, which says so; what the run can do without is not", () => {
    const second = of.withSet(typed(first, ["pitot_psi", "49@US", 1]), run, { now: 12_000, wall: 2 });
    expect(of.attemptOf(second, "capacity").sets[1]).toMatchObject({ values: { pitot_psi: ["47@US", "49@US"], discharge_psi: "150@US" }, as_before: ["pitot_psi.0", "discharge_psi"] });
    expect("oil_psi" in of.attemptOf(second, "capacity").sets[1].values).toBe(false);
    expect(of.carriedIn(of.takenBack(second, "capacity", 3), run)).toEqual(["pitot_psi.0", "discharge_psi"]);
  });
});

describe("time that went by unseen", () => {
  const away = { kind: "away", turn: 4, s: 60, counted_s: 0 };

  test("is written with the clocks that ran then", () => {
    const record = of.withJump(of.begun(going(), "vacuum", { now: 1, wall: 1, isRun: false }), away);
    expect(record.events).toEqual([{ ...away, clocks: [{ test: "capacity", attempt: 1 }, { test: "vacuum", attempt: 0 }] }]);
    expect(record.heard).toBe(4);
  });

  test("is asked once, and only where it did not count", () => {
    const record = of.withJump(going(), away);
    expect(of.askedOf(record)).toMatchObject(away);
    expect(of.askedOf(of.withJump(going(), { ...away, counted_s: 3 }))).toBeUndefined();
    expect(of.askedOf(of.withJump(going(), { ...away, kind: "clock" }))).toBeUndefined();
    for (const isCounted of [true, false]) expect(of.askedOf(of.withSaid(record, of.askedOf(record), { isCounted, wall: 1 }))).toBeUndefined();
    const twice = of.withJump(record, { ...away, turn: 5 });
    expect(of.askedOf(of.withSaid(twice, of.askedOf(twice), { isCounted: true, wall: 1 })).turn).toBe(5);
  });

  test("counts where the tester says so, for the clocks that were not begun again", () => {
    const record = of.withJump(of.begun(going(), "vacuum", { now: 1, wall: 1, isRun: false }), away);
    const counted = of.withSaid(record, of.askedOf(record), { isCounted: true, wall: 8 });
    expect(["capacity", "vacuum"].map((name) => clockIn(counted, name).counted_s)).toEqual([60, 60]);
    expect(counted.events.at(-1)).toEqual({ kind: "counted", turn: 4, s: 60, wall: 8 });
    const again = of.begun(record, "capacity", { now: 2, wall: 2, isRun: true });
    expect(clockIn(of.withSaid(again, of.askedOf(again), { isCounted: true, wall: 8 })).counted_s).toBe(0);
    const left = of.withSaid(record, of.askedOf(record), { isCounted: false, wall: 8 });
    expect(clockIn(left).counted_s).toBe(0);
    expect(left.events.at(-1)).toEqual({ kind: "left", turn: 4, s: 60, wall: 8 });
  });
});

describe("a test that came from another phone", () => {
  test("has its clocks paused where they stood, and that phone's own clock stays behind", () => {
    const record = { ...of.folded(going(), "capacity", 40_000), steady: 1, heard: 2 };
    const here = of.broughtOver(record, { reason: "brought", wall: 3 });
    expect(clockIn(here)).toMatchObject({ counted_s: 30, since: null });
    expect(clockIn(here).events.at(-1)).toEqual({ kind: "pause", reason: "brought", at_s: 30, wall: 3 });
    expect(["steady" in here, "heard" in here]).toEqual([false, false]);
  });

  test("that is finished comes as it is", () => {
    const record = { ...finishedAt(5), steady: 1 };
    expect(of.broughtOver(record, { reason: "brought", wall: 3 })).toBe(record);
  });
});

describe("the end", () => {
  test("leaves the result standing, and a signature turns the record once", () => {
    const done = of.finished(begin(), { result: { status: "pass" }, wall: 9 });
    expect(done).toMatchObject({ finished_ms: 9, result: { status: "pass" } });
    const signed = of.withSigned(of.withSigned(done, { name: "Ann" }), { name: "Bo" });
    expect([signed.signed, signed.revision]).toEqual([[{ name: "Ann" }, { name: "Bo" }], 2]);
  });

  test("opened again keeps what was signed as a version that says what, why and by whom", () => {
    const signed = of.withSigned(of.finished(begin(), { result: { status: "pass" }, wall: 9 }), { name: "Ann", digest: "d1" });
    const change = { what: "pitot", why: "misread", by: "Ann", digest: "d1", wall: 12 };
    const open = of.reopened(signed, change);
    expect(open).toMatchObject({ signed: [], finished_ms: null, result: null, revision: 2, versions: [{ ...change, signed: ["Ann"], status: "pass" }] });
    const again = of.withSigned(of.finished(open, { result: { status: "fail" }, wall: 13 }), { name: "Bo" });
    expect(of.reopened(again, change).versions.map(({ signed: names, status }) => [names, status])).toEqual([[["Ann"], "pass"], [["Bo"], "fail"]]);
  });
});

test("a clock begun again leaves what is read at its end to be read again", () => {
  const held = of.withValue(of.withValue(begin(), "vacuum", "vacuum_reached_inhg", "24@US", 1), "vacuum", "vacuum_after_inhg", "20@US", 2);
  const again = of.begun(held, "vacuum", { now: 10, wall: 10, isRun: false, start: ["vacuum_reached_inhg"] });
  expect(of.testOf(again, "vacuum").values).toEqual({ vacuum_reached_inhg: "24@US" });
});
