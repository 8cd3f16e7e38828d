// Small texts: entries as typed, sentences, cells of a spreadsheet, times, and what one page hands to another.
import { describe, expect, test } from "bun:test";

import { eventWords, entryWords, outcomeWords } from "../../site_src/static/js/log/told.js";
import { cell, table } from "../../site_src/static/js/shared/cell.js";
import { partOf } from "../../site_src/static/js/shared/entries.js";
import * as handed from "../../site_src/static/js/shared/handed.js";
import { oneReading } from "../../site_src/static/js/shared/one_reading.js";
import { decimals, fill, home, numberOf, scoped, unitWords } from "../../site_src/static/js/shared/site.js";
import * as times from "../../site_src/static/js/shared/times.js";
import * as units from "../../site_src/static/js/shared/units.js";
import * as usual from "../../site_src/static/js/shared/usual.js";

test("a sentence closes in a name that reads from the right or turns text, and no other", () => {
  const said = (name) => fill("{name} is here.", { name });
  expect(said("Engine 9")).toBe("Engine 9 is here.");
  expect(said("É")).toBe("É is here.");
  expect(said(9)).toBe("9 is here.");
  expect(said("\u05d0 9")).toBe("\u2068\u05d0 9\u2069 is here.");
  expect(said("\u202eEngine\u2069")).toBe("\u2068Engine\u2069 is here.");
  expect(fill("{said} And more.", { said: said("\u0627") })).toBe("\u2068\u0627 is here.\u2069 And more.");
});

describe("an entry", () => {
  test("carries the system it was typed in, and no more than anyone could mean", () => {
    expect(units.tagged("2@0@0", "US")).toBe("200@US");
    expect(units.tagged("9".repeat(60), "US")).toBe(`${"9".repeat(37)}@US`);
    expect([units.bare("200@US"), units.bare("200"), units.bare("")]).toEqual(["200", "200", ""]);
    expect(["1.5@US", "1.5@SI", "1.5"].map((entry) => units.isAsTyped(entry, "US"))).toEqual([true, false, false]);
  });

  test("is a text of a known system, or of none", () => {
    const is = (entry) => units.isEntry({ US: {} }, entry);
    expect([is(""), is("x"), is("1@US"), is("1".repeat(40))]).toEqual([true, true, true, true]);
    expect([is(1), is(null), is("1@SI"), is("1@toString"), is("1@"), is("1@US@US"), is("1".repeat(41))]).toEqual([false, false, false, false, false, false, false]);
  });

  test("brings the systems that are shown or typed in, and no others", () => {
    const systems = { US: { kinds: { pressure: 1 } }, SI: { kinds: { pressure: 2 } }, UK: { kinds: {} } };
    expect(units.unitsFor(systems, "US", ["5@SI", "6@XX", "7"])).toEqual({ shown: "US", decimal: ".", systems: { US: { pressure: 1 }, SI: { pressure: 2 } } });
    expect(units.unitsFor(systems, "US", [])).toMatchObject({ systems: { US: { pressure: 1 } } });
    expect(Object.keys(units.unitsFor(systems, "US").systems).sort()).toEqual(["SI", "UK", "US"]);
    const once = units.unitsOnce(systems);
    expect(once("SI")).toBe(once("SI"));
    expect([once("SI").shown, once("US").shown]).toEqual(["SI", "US"]);
  });
});

test("a comma before three digits goes where it sets thousands apart; what is signed stays", () => {
  expect(["1,500@US", "-1,500", "\u22121,500@US", " 12,345 @US", "999,999"].map(oneReading)).toEqual(["1500@US", "-1500", "\u22121500@US", "12345@US", "999999"]);
  for (const asIs of ["0,500", "1,50", "1,5000", "1234,567", "1,500,000", "a 1,500", "1,500 psi", "1,500@", 5, null, true]) expect(oneReading(asIs)).toBe(asIs);
  expect(oneReading({ a: ["1,500", { b: "2,000@US" }], signed: [] })).toEqual({ a: ["1500", { b: "2000@US" }], signed: [] });
  const signed = { a: "1,500", signed: [{ name: "Ann" }] };
  expect(oneReading([signed])[0]).toBe(signed);
  const other = new Map([["a", "1,500"]]);
  expect(oneReading(other)).toBe(other);
});

describe("a sentence", () => {
  test("has its names filled in; one that nobody gave stands", () => {
    expect(fill("{a} of {b}, {c}", { a: 0, b: "" })).toBe("0 of , {c}");
    expect(unitWords({ unit: { US: { pressure: "psi", flow: "gpm" } } }, "US")).toEqual({ u_pressure: "psi", u_flow: "gpm" });
  });

  test("has counts and numbers in the language's own way", () => {
    expect([decimals(1.25, 1), decimals(3, 2), numberOf("1.5")]).toEqual(["1.3", "3.00", 1.5]);
  });

  test("of a run says what was seen and what came of it", () => {
    const log = { outcome: { done: "Done" }, event: { seen: "Seen", started: "Started" } };
    expect([outcomeWords({ outcome: "done" }, log), outcomeWords({ outcome: "new" }, log), outcomeWords({}, log)]).toEqual(["Done", "new", ""]);
    expect([eventWords({ event: "started", said: "seen" }, log), eventWords({ said: "seen" }, log), eventWords({ said: "odd" }, log), eventWords({}, log)]).toEqual(["Started", "Seen", "odd", ""]);
    expect(entryWords({ said: "seen", text: "Lamp" }, log)).toBe("Seen: Lamp");
    expect(entryWords({ told: "Turn", text: "Lamp", answer: "yes" }, log)).toBe("Turn: yes");
    expect(entryWords({ event: "started" }, log)).toBe("Started");
  });
});

test("what belongs to this site has its plain name at an origin's root alone, and English pages lie there", () => {
  expect(scoped("rig")).toMatch(/^\/.* rig$/); // these tests stand below their root
  expect(home.href.endsWith("/site_src/")).toBe(true);
});

describe("a cell of a spreadsheet", () => { // RFC 4180, and no formula of whoever wrote it
  test.each([
    ["plain", "plain"], [null, ""], [undefined, ""], [0, "0"], ["-1.5", "-1.5"], ["-1,5", '"-1,5"'], ["12", "12"],
    ['say "so"', '"say ""so"""'], ["a,b", '"a,b"'], ["a;b", '"a;b"'], ["a\nb", '"a\nb"'], ["a\rb", '"a\rb"'],
    ["=1+1", `"'=1+1"`], ["+1", `"'+1"`], ["-x", `"'-x"`], ["@a", `"'@a"`], ["＝1", `"'＝1"`], ["＋1", `"'＋1"`], ["－1", `"'－1"`], ["＠a", `"'＠a"`],
    ["\ta", `"'\ta"`], [" =1", `"' =1"`], ['"=1', `"'""=1"`], ["a;=1", `"a;'=1"`], ["a\t=1", `"a\t'=1"`], ["a; \"=1", `"a;' ""=1"`], ["-", `"'-"`], ["1-2", "1-2"], ["a =1", "a =1"],
    ["-1.", `"'-1."`], ["x-1", "x-1"], ["-1x", `"'-1x"`], ["-12.25", "-12.25"], ["-5", "-5"], ["=5", `"'=5"`],
  ])("of %p is %p", (value, written) => expect(cell(value)).toBe(written));

  test("of French, where a comma is the decimal mark and semicolons part cells", () => {
    expect(table([["Pièce", "Valeur"], ["a;b", "-29,9"], ["x,=1", 300.1]], ",")).toBe('\ufeffPièce;Valeur\r\n"a;b";-29,9\r\n"x,\'=1";300,1\r\n');
    expect(table([["a,b", "29.9", 300.1]], ".")).toBe('\ufeff"a,b",29.9,300.1\r\n');
  });
});

describe("times", () => {
  test("of a clock", () => {
    expect([-5, 0, 59.9, 60, 247, 3600, 3847].map(times.minutes)).toEqual(["0:00", "0:00", "0:59", "1:00", "4:07", "1:00:00", "1:04:07"]);
    expect([times.two(3), times.two(12), times.two("")]).toEqual(["03", "12", "00"]);
  });

  test("of a date field are the phone's own day", () => {
    expect(times.dateField(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
    expect(times.dateField(new Date(2026, 11, 31, 0, 0))).toBe("2026-12-31");
    expect(times.dateField()).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(times.aheadMin()).toBe(-new Date().getTimezoneOffset());
  });

  test("of day are of 24 hours for a field, and as the language has them else", () => {
    const at = new Date(2026, 10, 3, 14, 5, 9);
    expect(times.dayTime(at)).toBe("14:05");
    expect(times.clockTime(at)).toMatch(/05.09/);
    expect(times.shortTime(at)).toMatch(/05/);
    expect(times.shortTime(at)).not.toMatch(/09/);
    expect(times.day(at)).toMatch(/Nov.*2026|2026.*Nov/);
    expect(times.dayAndTime(at)).toMatch(/2026.*05|05.*2026/);
  });
});

describe("what one page hands to another", () => {
  const back = (given) => handed.handedIn(handed.fragmentOf(given));

  test("arrives as it was said", () => {
    expect(back({ what: "Won't prime", seen: "20 s, no % & #", origin: "card", class: "a", scope: "s", rule: "r" }))
      .toEqual({ what: "Won't prime", seen: "20 s, no % & #", origin: "card", rank: "a", scope: "s", rule: "r" });
    expect(back({ what: "", seen: "" })).toEqual({ what: "", seen: "", origin: "", rank: "", scope: "", rule: "" });
  });

  test("is cut where it is too long, and shows it, with no sign in half", () => {
    expect(back({ what: "x".repeat(160), seen: "y".repeat(600) })).toMatchObject({ what: "x".repeat(160), seen: "y".repeat(600) });
    expect(back({ what: "x".repeat(161), seen: "" }).what).toBe(`${"x".repeat(159)}…`);
    expect(back({ what: "", seen: "y".repeat(601) }).seen.length).toBe(600);
    expect(back({ what: `${"x".repeat(158)}😀😀`, seen: "" }).what).toBe(`${"x".repeat(158)}…`);
    expect(back({ what: "a\ud800b", seen: "\udc00" })).toMatchObject({ what: "ab", seen: "" });
  });

  test("whatever the fragment says is text, or lost, or nothing", () => {
    expect(handed.handedIn("#other")).toBeNull();
    expect(handed.handedIn(`${handed.MARK}%`)).toBe("lost");
    expect(handed.handedIn(`${handed.MARK}null`)).toBe("lost");
    expect(handed.handedIn(`${handed.MARK}${encodeURIComponent("x".repeat(12_000))}`)).toBe("lost");
    expect(handed.handedIn(handed.MARK + encodeURIComponent(JSON.stringify({ what: 5, seen: ["a"], origin: "o".repeat(200) }))))
      .toMatchObject({ what: "", seen: "", origin: `${"o".repeat(159)}…` });
    const longest = `${handed.MARK}"${"x".repeat(12_000 - handed.MARK.length - 2)}"`;
    expect(handed.handedIn(longest)).toMatchObject({ what: "" });
    expect(handed.handedIn(`${longest} `)).toBe("lost");
  });
});

describe("the file of a closed site", () => {
  const file = (text) => new File([text], "all.json", { type: "application/json" });
  test("gives what it has in a store as a list; any other file comes as it is", async () => {
    const part = await partOf(file('{ "format": "entries", "rigs": {"a": {"id": "a"}, "b": {"id": "b"}} }'), "rigs");
    expect([await part.text(), part.name, part.type.split(";")[0]]).toEqual(['[{"id":"a"},{"id":"b"}]', "all.json", "application/json"]);
    expect(await (await partOf(file('{"format":"entries"}'), "rigs")).text()).toBe("[]");
    expect(await (await partOf(file('\n{"format":"entries","rigs":{}}'), "rigs")).text()).toBe("[]");
    for (const text of ["[1]", '{"format":"entries", broken', '{"a":1,"format":"entries"}', 'x{"format":"entries","rigs":{}}', '[{"format":"entries","rigs":{}}']) {
      const given = file(text);
      expect(await partOf(given, "rigs")).toBe(given);
    }
    const sized = (size) => Object.defineProperty(file('{"format":"entries"}'), "size", { value: size });
    const [largest, larger] = [64_000_000, 64_000_001].map(sized);
    expect(await partOf(larger, "rigs")).toBe(larger);
    expect(await (await partOf(largest, "rigs")).text()).toBe("[]");
  });
});

describe("the usual pressure of a nozzle", () => { // common practice: 50 psi on a hand line's smooth bore, 80 on a master stream's
  const data = { usual: { customary: { fog: "100@US", smooth: "50@US", master: "80@US" } }, tips: [{ id: "1.5@US", is_master: true }, { id: "1@US" }] };
  const of = (end, device) => usual.usualPressure(data, "customary", end, device);
  const smooth = { kind: "smooth", tip: "1@US", pressure: "50@US" };

  test("goes by its kind, and a smooth bore by who holds it", () => {
    expect([of({ kind: "fog" }), of({ kind: "fog" }, "master"), of(smooth), of(smooth, "none")]).toEqual(["100@US", "100@US", "50@US", "50@US"]);
    expect([of(smooth, "master"), of(smooth, "aerial"), of({ ...smooth, tip: "1.5@US" }), of({ ...smooth, tip: "9@US" })]).toEqual(["80@US", "80@US", "80@US", "50@US"]);
  });

  test("follows a change where it was the usual one, or none was said", () => {
    const changed = (end, changes, held) => usual.withUsual(data, "customary", end, changes, held).pressure;
    expect(changed(smooth, { kind: "fog" }, ["none", "none"])).toBe("100@US");
    expect(changed(smooth, {}, ["none", "master"])).toBe("80@US");
    expect(changed({ ...smooth, pressure: "45@US" }, { kind: "fog" }, ["none", "none"])).toBe("45@US");
    expect(changed({ ...smooth, pressure: "  @US" }, { kind: "fog" }, ["none", "none"])).toBe("100@US");
  });

  test("a smooth bore takes the usual tip of another hose, unless another was picked", () => {
    const hoses = [{ id: "a", tip: "1@US" }, { id: "b", tip: "1.5@US" }, { id: "c" }];
    const tip = (end, hose) => usual.withUsualTip(hoses, end, hose).tip;
    expect([tip(smooth, ["a", "b"]), tip({ ...smooth, tip: "0.5@US" }, ["a", "b"]), tip(smooth, ["a", "c"]), tip({ ...smooth, kind: "fog" }, ["a", "b"])])
      .toEqual(["1.5@US", "0.5@US", "1@US", "1@US"]);
    expect([tip(smooth, ["b", "b"]), tip({ ...smooth, tip: "0.5@US" }, ["b", "b"]), tip(smooth, ["x", "b"])]).toEqual(["1.5@US", "0.5@US", "1@US"]);
  });
});
