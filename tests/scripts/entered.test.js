// What is entered on a water page, whose figure it is, and which part of a line is open.
import { describe, expect, test } from "bun:test";

import * as diagnosis from "../../site_src/static/js/diagnose/record.js";
import { remedyOf } from "../../site_src/static/js/diagnose/remedy.js";
import { openingsOf } from "../../site_src/static/js/pressure/opening.js";
import * as tabs from "../../site_src/static/js/pressure/tabs.js";
import * as of from "../../site_src/static/js/reckon/entries.js";
import * as origin from "../../site_src/static/js/reckon/origin.js";

const field = (name, more = {}) => ({ name, kind: "pressure", customary: "50@US", metric: "4@SI", ...more });
const hose = field("hose", {
  kind: "hose", customary: "five", metric: "wide", from_rig: "supply",
  customary_options: [{ id: "five", label: "5 in", abroad: "127 mm" }], metric_options: [{ id: "wide", label: "110 mm" }],
});
const systems = { US: {}, SI: {} };
const data = { fields: [field("pressure"), field("limit", { from_rig: "limit", customary: "" }), field("tank", { kind: "volume", from_rig: "tank" }), hose, field("rule", { kind: "choice", rule: true, customary: "a" })], systems };
const rig = { id: "r", tank: "750@US", supply: [{ hose: "bed", limit: "9@US" }, { hose: "wide", limit: "200@US" }] };

describe("a water page", () => {
  test("opens on its own figures, and on the rig's where its profile has them", () => {
    expect(of.opening(data, "metric", null)).toEqual({ pressure: "4@SI", limit: "4@SI", tank: "4@SI", hose: "wide", rule: "4@SI" });
    expect(of.opening(data, "customary", rig)).toEqual({ pressure: "50@US", limit: "9@US", tank: "750@US", hose: "wide", rule: "a" });
    expect(of.opening(data, "customary", { id: "s", tank: "" })).toEqual({ pressure: "50@US", limit: "", tank: "50@US", hose: "five", rule: "a" });
    expect(of.ofRig(hose, { supply: [{ hose: "bed" }] })).toBeUndefined();
  });

  test("offers the sizes of its family, and one chosen from the other by its own name", () => {
    expect(of.offered(hose, "customary", "five")).toEqual([hose.customary_options[0]]);
    expect(of.offered(hose, "customary", "wide").map(({ id, label, chip }) => [id, label, chip])).toEqual([["five", "5 in", undefined], ["wide", "110 mm", "110 mm"]]);
    expect(of.offered(hose, "metric", "five").at(-1)).toMatchObject({ id: "five", label: "127 mm", chip: "127 mm" });
  });

  test("has one entry changed, and knows which entries convert", () => {
    const entries = { a: "1", b: "2" };
    expect(of.changed(entries, "a", "3")).toEqual({ a: "3", b: "2" });
    expect(entries.a).toBe("1");
    expect(of.amountsOf({ pressure: "1", limit: "2", tank: "3", hose: "five", rule: "a" }, data)).toEqual([["pressure", "1"], ["pressure", "2"], ["volume", "3"]]);
    expect(of.amountsOf({ n: "1" }, { fields: [field("n", { kind: "count" })] })).toEqual([]);
  });

  const good = { pressure: "1", limit: "2@US", tank: "3@SI", hose: "wide", rule: "b" };

  test("takes only what it asks for", () => {
    expect(of.clean({ ...good, more: "x" }, data)).toEqual(good);
    const { limit, ...old } = good;
    expect(of.clean(old, data)).toEqual({ ...good, limit: "" });
    for (const bad of [{ ...good, pressure: undefined }, { ...good, pressure: "1@XX" }, { ...good, hose: "toString" }, { ...good, tank: 5 }]) expect(() => of.clean(bad, data)).toThrow(TypeError);
  });

  test("opens with what was kept, and with what another rig says in its own fields", () => {
    const draft = of.draftOf(good, ["pressure"], rig);
    expect(draft).toEqual({ rig: "r", entries: good, entered: ["pressure"] });
    expect(of.draftOf(good, [], null).rig).toBeNull();
    expect(of.opened(draft, data, "customary", rig)).toEqual(good);
    expect(of.opened({ ...draft, rig: "other" }, data, "customary", rig)).toEqual({ ...good, limit: "9@US", tank: "750@US", hose: "wide" });
    expect(of.opened({ ...draft, rig: null }, data, "customary", null)).toEqual(good);
    expect(of.opened(draft, data, "customary", null)).toEqual(good);
    for (const bad of [null, {}, { ...draft, entries: { ...good, hose: "x" } }]) expect(of.opened(bad, data, "customary", rig)).toEqual(of.opening(data, "customary", rig));
  });

  test("knows whose figure each entry is", () => {
    const entries = { pressure: "50@US", limit: "7@US", tank: "750@US", hose: "five", rule: "b" };
    expect(origin.enteredOf(entries, [], data, rig)).toEqual(["limit", "rule"]);
    expect(origin.enteredOf(entries, ["pressure"], data, rig)).toEqual(["pressure", "limit", "rule"]);
    const names = ({ entered, rig: own, example }) => [entered, own, example].map((fields) => fields.map(({ name }) => name));
    expect(names(origin.originsOf(data.fields, entries, ["limit", "rule"], rig))).toEqual([["limit"], ["tank"], ["pressure", "hose"]]);
    expect(names(origin.originsOf(data.fields, { ...entries, limit: "", rule: "a" }, [], null))).toEqual([[], [], ["pressure", "tank", "hose"]]);
    expect(origin.examplesIn({ example: [{ name: "a", aside: true }, { name: "b" }] })).toEqual([{ name: "b" }]);
  });

  test("knows of a kept draft what was entered, but where another rig says it", () => {
    const draft = { rig: "r", entered: ["pressure", "tank", "gone"] };
    expect(origin.knownOf(draft, data, rig)).toEqual(["pressure", "tank", "gone"]);
    expect(origin.knownOf({ ...draft, rig: "s" }, data, rig)).toEqual(["pressure", "gone"]);
    expect(origin.knownOf({ entered: ["tank"] }, data, null)).toEqual(["tank"]);
    for (const bad of [null, {}, { entered: "tank" }]) expect(origin.knownOf(bad, data, rig)).toEqual([]);
  });

  test("says of a caution when it follows from examples only", () => {
    const origins = (entered, own, example) => ({ entered: entered.map((name) => ({ name })), rig: own, example: example.map((name) => ({ name })) });
    const is = (...of_whom) => origin.isExample("hot", { warns: { hot: ["a", "b"] } }, origins(...of_whom));
    expect([is([], [], ["a"]), is(["b"], [], ["a"]), is([], [{ name: "b" }], ["a"]), is([], [{ name: "b", rule: true }], ["a"]), is(["c"], [], ["a"]), is([], [], ["c"])])
      .toEqual([true, false, false, true, true, false]);
  });
});

describe("the parts of a line", () => {
  const nozzle = { id: "A", hose: "attack", end: { kind: "fog" } };
  const joint = { id: "S", hose: "attack", end: { lines: [nozzle] } };

  test("are those that it has", () => {
    expect(tabs.tabsOf(nozzle)).toEqual(["hose", "length", "nozzle", "height", "more"]);
    expect(tabs.tabsOf({ ...nozzle, hose: "piped" })).toEqual(["hose", "nozzle", "height", "more"]);
    expect(tabs.tabsOf(joint)).toEqual(["hose", "length", "height", "more"]);
    expect(tabs.tabsOf({ ...nozzle, end: { kind: "into", line: "B" } })).toEqual(["hose", "length", "more"]);
    expect([tabs.openTab("nozzle", nozzle), tabs.openTab("nozzle", joint), tabs.openTab(tabs.NOW, joint)]).toEqual(["nozzle", "hose", "now"]);
  });

  test("hold the entry that was refused", () => {
    const layout = { lines: [joint] };
    const at = (name, line = "A") => tabs.tabOf({ field: name, line }, layout);
    expect([at("flow", "Z"), at("gauge", undefined), at("crew"), tabs.tabOf(null, layout)]).toEqual([null, "now", null, null]);
    expect(["hose", "length", "height"].map((name) => at(name, "S"))).toEqual(["hose", "length", "height"]);
    expect(["kind", "flow", "least", "tip", "pressure"].map((name) => at(name))).toEqual(Array(5).fill("nozzle"));
    expect(["runs", "device", "loss", "loss_at"].map((name) => at(name))).toEqual(Array(4).fill("more"));
  });
});

describe("what Pressure opens on", () => {
  const choices = {
    bounds: { lines: 5, depth: 2 }, hoses: [{ id: "attack" }], runs: [{ id: "1" }], waters: ["hydrant"], systems, shelf: { crews: { two: {} } },
    source: { kind: "hydrant", intake: "", lift: "", loss: "" }, now: { pressure: "", gates: "set" },
  };
  const end = { kind: "fog", flow: "150", least: "95", tip: "", pressure: "100" };
  const asked = [];
  const ready = (id) => asked.push(id) && ({ crew: "two", lines: [{ id: "A", hose: "attack", length: "200", height: "", end }] });
  const { usable, openingLayout, layoutOf, soundLayout } = openingsOf(choices, ready);
  const bed = { hose: "attack", length: "150", crew: "two", end };

  test("is the rig's first bed, else the ready-made layout", () => {
    expect(openingLayout([]).lines[0].length).toBe("200");
    expect(asked).toEqual(["one"]);
    expect(openingLayout([bed, { ...bed, length: "9" }]).lines[0].length).toBe("150");
    expect(layoutOf({ ...bed, hose: "gone" })).toBeNull();
    expect(usable([bed, { ...bed, hose: "gone" }])).toEqual([bed]);
    expect(usable(null)).toEqual([]);
  });

  test("hides no fault of our own", () => {
    expect(() => soundLayout(() => { throw new RangeError("ours"); })).toThrow(RangeError);
    expect(soundLayout(() => ({}))).toBeNull();
  });
});

describe("a diagnosis", () => {
  const questions = [{ id: "which", answers: [{ id: "one", seen: ["a"] }, { id: "two", seen: ["b", "c"] }, { id: "none", seen: [] }] }];
  const start = () => diagnosis.begun({ rig: { id: "r", name: "Engine 1", tank: "x" }, role: "operator", engine: "on", madeOf: "v" });
  const look = (sign, more = {}) => ({ sign, ...more });
  const which = look("a", { question: "which", answers: ["one", "two"] });

  test("begins with nothing said", () => {
    expect(start()).toMatchObject({ madeOf: "v", role: "operator", engine: "on", rig: { id: "r", name: "Engine 1" }, signs: {}, complaints: [], asked: [], written: false });
    expect(start().rig).toEqual({ id: "r", name: "Engine 1" });
    expect(diagnosis.begun({ rig: null }).rig).toBeNull();
    expect(start().id).not.toBe(start().id);
  });

  test("keeps each answer with the signs that it settles", () => {
    const one = diagnosis.answered(start(), look("lamp"), "not_seen", questions);
    expect([one.signs, one.asked.map(({ sign, settles, said }) => [sign, settles, said])]).toEqual([{ lamp: "not_seen" }, [["lamp", ["lamp"], "not_seen"]]]);
    expect("question" in one.asked[0]).toBe(false);
    const unsure = diagnosis.answered(one, look("noise"), "unknown", questions);
    expect([unsure.signs, unsure.asked[1].said]).toEqual([{ lamp: "not_seen", noise: "unknown" }, "unknown"]);
  });

  test("settles by a question all its answers' signs that are open", () => {
    const two = diagnosis.answered({ ...start(), signs: { c: "not_seen" } }, which, "two", questions);
    expect(two.signs).toEqual({ c: "not_seen", a: "not_seen", b: "seen" });
    expect(two.asked[0]).toMatchObject({ sign: "a", settles: ["a", "b"], said: "seen", question: "which", answer: "two" });
    expect(diagnosis.answered(start(), which, "unknown", questions).signs).toEqual({ a: "unknown", b: "unknown", c: "unknown" });
    expect(diagnosis.answered(start(), { ...which, answers: ["one"] }, "one", questions).signs).toEqual({ a: "seen" });
    const none = diagnosis.answered(start(), { ...which, answers: ["one", "none"] }, "none", questions);
    expect([none.signs, none.asked[0].said]).toEqual([{ a: "not_seen" }, "not_seen"]);
  });

  test("goes one look back", () => {
    const two = diagnosis.answered(diagnosis.answered(start(), look("lamp"), "seen", questions), which, "two", questions);
    const back = diagnosis.oneBack(two);
    expect([back.signs, back.asked.length]).toEqual([{ lamp: "seen" }, 1]);
    expect(diagnosis.oneBack(back).signs).toEqual({});
  });

  test("made once more has its new answer in place of the first, unless nobody can tell", () => {
    const first = diagnosis.answered(diagnosis.answered(start(), which, "one", questions), look("lamp"), "seen", questions);
    const again = diagnosis.answered(first, { ...which, again: true }, "two", questions);
    expect(again.signs).toEqual({ lamp: "seen", a: "not_seen", b: "seen", c: "seen" });
    expect([again.asked.map(({ sign }) => sign), again.again]).toEqual([["lamp", "a"], ["a", "b", "c"]]);
    const unsure = diagnosis.answered(first, { ...which, again: true }, "unknown", questions);
    expect([unsure.signs, unsure.asked, unsure.again]).toEqual([first.signs, first.asked, ["a", "b", "c"]]);
    const twice = diagnosis.answered(again, look("lamp", { again: true }), "not_seen", questions);
    expect([twice.signs.lamp, twice.again]).toEqual(["not_seen", ["a", "b", "c", "lamp"]]);
    expect(diagnosis.answered(start(), look("noise", { again: true }), "seen", questions)).toMatchObject({ signs: { noise: "seen" }, again: ["noise"] });
  });

  test("notes what was carried out", () => {
    expect(diagnosis.carried(diagnosis.carried(start(), "stop"), "cool").carriedOut).toEqual(["stop", "cool"]);
  });

  describe("as a record", () => {
    const words = {
      sees: { lamp: "Lamp dark", steam: "Steam" }, name: { wire: "A wire is off" }, act: { wire: "Mend the wire." }, remains: { wire: "Tape it." }, question: { which: "Which lamp?" }, said: { which: { two: "The second" } },
      asks: { lamp: ["Lamp?", "on", "off"] }, diagnose: { out: "Out of service.", unsure: "can't tell" }, end: { none: "No fault fits.", none_title: "Not found" },
    };
    const knowledge = { causes: [{ id: "wire", shows: ["a", "cured"] }], signs: [{ id: "a" }, { id: "cured", cures: true }, { id: "other", cures: true }] };
    const context = { words, causes: { wire: { out: true } }, knowledge, orders: { steam: { title: "Steam!", grade: "danger", do: ["Stop.", "Wait."] } }, signs: { lamp: {}, noise: {}, a: {}, b: {}, c: {}, steam: { alarm: true, order: "steam" } } };
    const state = () => ({ ...diagnosis.answered(start(), which, "two", questions), complaints: ["lamp"] });
    const record = (end, from = state(), more = {}) => diagnosis.recordOf(from, end, { ...context, ...more });

    test("says the cause, what to do, and each answer as it was asked", () => {
      const done = record({ kind: "cause", cause: "wire" });
      expect(done).toMatchObject({ kind: "diagnosis", title: "A wire is off", outcome: "cause", cause: "wire", act: "Out of service. Mend the wire.", role: "operator", rig: { id: "r" } });
      expect(done.entries).toMatchObject([{ sign: "lamp", said: "seen", text: "Lamp dark" }, { sign: "a", text: "Which lamp?", answer: "The second" }]);
      expect(record({ kind: "cause", cause: "wire" }, state(), { causes: { wire: {} } }).act).toBe("Mend the wire.");
      expect(done.entries[0].at).toBe(done.began_at);
    });

    test("says what remains once the cure was seen to work, and no call for what is done", () => {
      const of = { words, knowledge, causes: { wire: { radio: "lost", order: "stop" } } };
      for (const signs of [{}, { cured: "not_seen" }, { a: "seen", other: "seen" }]) expect(remedyOf("wire", { signs }, of)).toEqual({ isDone: false, act: "Mend the wire.", radio: "lost", order: "stop" });
      expect(remedyOf("wire", { signs: { cured: "seen" } }, of)).toEqual({ isDone: true, act: "Tape it." });
      const plain = { ...of, words: { ...words, remains: {} } }; // its remedy is of the next time, and stands
      expect(remedyOf("wire", { signs: { cured: "seen" } }, plain)).toEqual({ isDone: true, act: "Mend the wire.", radio: "lost", order: "stop" });
      expect(record({ kind: "cause", cause: "wire" }, { ...state(), signs: { cured: "seen" } }).act).toBe("Out of service. Tape it.");
    });

    test("of one that found none says so, or what the hazard asked for", () => {
      expect(record({ kind: "none" })).toMatchObject({ title: "Not found", act: "No fault fits." });
      const steam = diagnosis.answered(start(), look("steam"), "seen", questions);
      expect(record({ kind: "none" }, steam)).toMatchObject({ title: "Steam!", act: "Stop. Wait." });
      expect(record({ kind: "none" }, steam).entries[0]).toMatchObject({ sign: "steam", said: "seen", text: "Steam" });
    });
  });
});
