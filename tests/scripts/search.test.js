// What a search makes of what was typed: slips, endings, turns of phrase, and which row comes first.
import { describe, expect, test } from "bun:test";

import * as of from "../../site_src/static/js/help/search.js";

test("words lose case, accents and signs; letters of any script and figures stay", () => {
  expect(of.folded("Échelle À")).toBe("echelle a");
  expect(of.wordsOf("Pump won't prime: 10 inHg, Élan!")).toEqual(["pump", "won", "t", "prime", "10", "inhg", "elan"]);
  expect(of.wordsOf("Насос 1 ?")).toEqual(["насос", "1"]);
  expect(of.wordsOf(" ?! ")).toEqual([]);
});

test("turns of phrase become the word the index has for them, whole words only", () => {
  const phrases = { engage: "go in|goes in", dry: "runs out" };
  expect(of.said("It will not GO IN, it runs out", phrases)).toBe("it will not engage it dry");
  expect(of.said("go inside, cargo in, go in go in", phrases)).toBe("go inside cargo in engage engage");
});

test("a rare word weighs more than one that every row has", () => {
  const rows = Array(8).fill({});
  expect(of.rarity(rows, [1])).toBeCloseTo(Math.log(9), 12);
  expect(of.rarity(rows, Array(8))).toBeCloseTo(Math.log(2), 12);
});

describe("slips are letters wrong, missing, too many or swapped", () => { // Damerau 1964: the four errors of one letter
  test.each([
    ["pump", "pump", 0], ["pump", "pimp", 1], ["pump", "pum", 1], ["pump", "pumpp", 1], ["pump", "pupm", 1], ["", "abc", 3], ["abc", "", 3],
    ["kitten", "sitting", 3], ["gauge", "guage", 1], ["relief", "releif", 1], ["ab", "ba", 1], ["abcd", "badc", 2], ["ca", "abc", 3], ["abxy", "yxba", 3],
  ])("%p and %p: %p", (one, other, count) => {
    expect(of.slips(one, other)).toBe(count);
    expect(of.slips(other, one)).toBe(count);
  });
});

describe("a word typed is like one of the index", () => {
  test.each([
    ["pump", "pump", 1], ["throtle", "throttle", 0.95], ["capp", "cap", 0.95], ["pri", "prime", 0.8], ["primes", "prime", 0.8], ["primers", "prime", 0.8],
    ["prim", "prime", 0.8], ["pumpings", "pump", 0], ["pressrue", "pressure", 0.75], ["intaek", "intake", 0.75], ["priming", "primer", 0.7], ["gauge", "gague", 0.5],
    ["foan", "foam", 0.5], ["pum", "pmu", 0], ["on", "one", 0], ["on", "an", 0], ["fire", "hose", 0], ["cat", "cot", 0], ["relied", "relief", 0.75],
    ["proportionate", "proportioner", 0.7], ["abcdefgh", "abcdefxy", 0.7], ["abcxefyh", "abcdefgh", 0.5], ["abcxyzgh", "abcdefgh", 0], ["valfes", "valve", 0],
  ])("%p %p: %p", (typed, word, like) => expect(of.likeness(typed, word)).toBe(like));
});

describe("what is found", () => {
  const rows = [{ name: "Prime a pump" }, { name: "Pump" }, { name: "Pump is hot" }, { name: "Hose" }, { name: "The hose" }];
  const words = { prime: [[0, 4]], pump: [[0, 2], [1, 2], [2, 2]], hot: [[2, 4]], hose: [[3, 3], [4, 3]] };
  const silent = new Set(["the", "a", "is", "my"]);
  const found = (text, phrases = {}) => of.find({ rows, words, phrases }, text, silent).map(({ name }) => name);

  test("comes with the row that has all the words first", () => {
    expect(found("hot pump")[0]).toBe("Pump is hot");
    expect(found("prime pump")[0]).toBe("Prime a pump");
    expect(found("is my pump hot")[0]).toBe("Pump is hot");
  });

  test("comes with the row that is named so before all others, and next one that is but for words that say nothing", () => {
    expect(found("pump")[0]).toBe("Pump");
    expect(found("hose")).toEqual(["Hose", "The hose"]);
    expect(found("the hose")).toEqual(["The hose", "Hose"]);
  });

  test("is nothing where no word is like any, or nothing is said", () => {
    expect([found("xyzzy"), found(""), found("the is a")]).toEqual([[], [], []]);
  });

  test("forgives slips and takes turns of phrase", () => {
    expect(found("priem the pumo")[0]).toBe("Prime a pump");
    expect(found("too warm", { hot: "too warm" })).toEqual(["Pump is hot"]);
  });

  test("leaves out what is much less like it than the best", () => {
    const many = { rows: [{ name: "one" }, { name: "two" }, { name: "three" }], words: { relief: [[0, 10], [1, 3], [2, 2.9]] }, phrases: {} };
    expect(of.find(many, "relief", silent).map(({ name }) => name)).toEqual(["one", "two"]);
  });

  test("says no more for a longer form of a common word than for the word itself", () => {
    const index = { rows: [{ name: "one" }, { name: "two" }, { name: "three" }, { name: "four" }], words: { pump: [[0, 1], [1, 1], [2, 1]], pumping: [[3, 1]] }, phrases: {} };
    const weights = Object.fromEntries(of.find(index, "pump", silent).map(({ name, weight }) => [name, weight]));
    expect(weights.four).toBeCloseTo(0.8 * Math.log(1 + 4 / 3) / Math.log(5), 12);
    expect(weights.one).toBe(1);
    expect(Object.fromEntries(of.find(index, "pumpp", silent).map(({ name, weight }) => [name, weight])).one).toBeCloseTo(0.95, 12);
  });

  test("keeps of a row the likest word for each word typed, once", () => {
    const index = { rows: [{ name: "one" }], words: { gauge: [[0, 2]], gauges: [[0, 1]] }, phrases: {} };
    expect(of.find(index, "gauge", silent)[0]).toMatchObject({ weight: 2, met: 1, named: 1 });
    expect(of.find(index, "gauge xyzzy", silent)[0]).toMatchObject({ weight: 1, met: 0.5 });
  });
});
