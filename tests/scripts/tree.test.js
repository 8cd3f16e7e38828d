// Where the pieces of a layout are drawn.
import { describe, expect, test } from "bun:test";

import { tree } from "../../site_src/static/js/line/tree.js";

const line = (id, feeder = null, length = 100, into = null) => ({ id, feeder, length, into });
const least = { joint: 2, end: 3 };
const drawn = (lines, room = 30) => tree(lines, { room, least });
const rows = ({ pieces }) => Object.fromEntries(Object.entries(pieces).map(([id, { row }]) => [id, row]));

describe("rows", () => {
  test("are one an end, in order", () => {
    const of = drawn([line("A"), line("B"), line("C")]);
    expect([rows(of), of.rows, of.deep]).toEqual([{ A: 0, B: 1, C: 2 }, 3, 1]);
  });

  test("of a joint is that of its middle line; of two, the upper", () => {
    expect(rows(drawn([line("S"), line("A", "S"), line("B", "S"), line("C", "S")])).S).toBe(1);
    expect(rows(drawn([line("S"), line("A", "S"), line("B", "S"), line("D")]))).toEqual({ S: 0, A: 0, B: 1, D: 2 });
    expect(rows(drawn([line("S"), line("T", "S"), line("A", "T"), line("B", "T"), line("C", "S")]))).toEqual({ S: 0, T: 0, A: 0, B: 1, C: 2 });
  });

  test("of a lone wye is between its two lines", () => {
    expect(rows(drawn([line("S"), line("A", "S"), line("B", "S")]))).toEqual({ S: 0.5, A: 0, B: 1 });
    expect(rows(drawn([line("S"), line("A", "S")]))).toEqual({ S: 0, A: 0 });
  });

  test("of a line starts where its feeder lies", () => {
    const { pieces } = drawn([line("S"), line("A", "S"), line("B", "S"), line("C", "S")]);
    expect(["S", "A", "B", "C"].map((id) => pieces[id].start)).toEqual([1, 1, 1, 1]);
  });
});

describe("lengths", () => {
  test("fill the room by the longest way, and go by the root of the hose", () => {
    const { pieces, wide } = drawn([line("A", null, 400), line("B", null, 100)]);
    expect(wide).toBe(30);
    expect(pieces.A).toMatchObject({ from: 0, to: 30 });
    expect((pieces.A.to - least.end) / (pieces.B.to - least.end)).toBeCloseTo(2, 12);
  });

  test("of very short hose, or of hose that nobody knows, are drawn as of 16", () => {
    const { pieces } = drawn([line("A", null, 400), line("B", null, 16), line("C", null, 1), line("D", null, null), line("E", null, -9)]);
    for (const id of ["C", "D", "E"]) expect(pieces[id].to).toBe(pieces.B.to);
    expect((pieces.A.to - 3) / (pieces.B.to - 3)).toBeCloseTo(5, 12);
  });

  test("behind a joint begin where it stands", () => {
    const { pieces, deep } = drawn([line("S", null, 100), line("A", "S", 100), line("B", "S", 25)]);
    expect([pieces.A.from, pieces.B.from]).toEqual([pieces.S.to, pieces.S.to]);
    expect(pieces.A.to).toBeCloseTo(30, 12);
    expect([pieces.S.depth, pieces.A.depth, deep]).toEqual([1, 2, 2]);
    const stretch = (30 - least.joint - least.end) / 20;
    expect(pieces.S.to).toBeCloseTo(least.joint + 10 * stretch, 12);
    expect(pieces.B.to).toBeCloseTo(pieces.S.to + least.end + 5 * stretch, 12);
  });

  test("take more than the room where pieces need it", () => {
    const { pieces, wide } = drawn([line("S"), line("T", "S"), line("A", "T")], 5);
    expect(wide).toBe(7);
    expect(pieces.A.to).toBe(7);
  });
});

test("a second hose ends where the line does that it goes into", () => {
  const { pieces } = drawn([line("A", null, 400), line("B", null, 16, "A")]);
  expect(pieces.B).toMatchObject({ to: pieces.A.to, meets: 0, row: 1 });
  expect("meets" in pieces.A).toBe(false);
});
