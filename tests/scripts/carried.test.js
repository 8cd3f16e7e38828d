// Records on their way from phone to phone: let in, in parts of files, in square codes.
import { describe, expect, test } from "bun:test";

import { inOrder, letIn } from "../../site_src/static/js/bay/arrivals.js";
import * as frames from "../../site_src/static/js/bay/frames.js";
import { partsOf } from "../../site_src/static/js/bay/parts.js";
import { sha256 } from "../../site_src/static/js/shared/sha256.js";

const note = (id, more = {}) => ({ kind: "note", id, rig_id: "r", text: "x", ...more });
const JPEG = "data:image/jpeg;base64,";
const photo = (id, picture, more = {}) => ({ kind: "photo", id, rig_id: "r", at_ms: 1, ...(picture === undefined ? {} : { picture: JPEG + picture }), ...more });

describe("records that arrive", () => {
  // A phone with records; its calc adds what it has not, changes what is "changed", and refuses what is "bad".
  async function arrive(arriving, here = []) {
    const log = { rig: { id: "r" }, records: here };
    const [asked, kept] = [[], []];
    const ask = async (door, { arriving: part, standing }) => {
      asked.push({ door, part, standing });
      const places = part.map((record, at) => ({ record, at }));
      return {
        add: places.filter(({ record }) => record && !record.bad && !standing.some(({ id }) => id === record.id)).map(({ at }) => at),
        change: places.filter(({ record }) => record?.changed).map(({ at }) => at),
        refused: places.filter(({ record }) => record === null || record.bad).map(({ at }) => ({ at, field: "text", code: "bad" })),
      };
    };
    const came = await letIn(arriving, log, { ask, keep: async (records) => { kept.push(...records); } });
    return { came, log, asked, kept };
  }

  test("are kept, and stand in the log behind what stood there", async () => {
    const { came, log, asked, kept } = await arrive([note("b"), note("c")], [note("a")]);
    expect(came).toEqual({ taken: 2, same: 0, refused: [] });
    expect(log.records.map(({ id }) => id)).toEqual(["a", "b", "c"]);
    expect(kept.map(({ id }) => id)).toEqual(["b", "c"]);
    expect(asked).toEqual([{ door: "records.taken", part: [note("b"), note("c")], standing: [] }]);
  });

  test("that are here already do not cross again, in whatever order their fields stand", async () => {
    const { came, asked, kept } = await arrive([{ text: "x", rig_id: "r", id: "a", kind: "note" }], [note("a")]);
    expect([came, asked, kept]).toEqual([{ taken: 0, same: 1, refused: [] }, [], []]);
  });

  test("that changed take the place of what stood; what calc leaves is the same", async () => {
    const { came, log, asked } = await arrive([note("a", { changed: 1 }), note("b", { text: "y" })], [note("a"), note("b")]);
    expect(came).toMatchObject({ taken: 1, same: 1 });
    expect(log.records).toEqual([note("a", { changed: 1 }), note("b")]);
    expect(asked[0].standing).toEqual([note("a"), note("b")]);
  });

  test("of another rig, or that calc refuses, stay out, each named by its place", async () => {
    const { came, log } = await arrive([note("a"), null, note("b", { rig_id: "q" }), note("c", { bad: 1 })]);
    expect(came.taken).toBe(1);
    expect(came.refused).toEqual([{ at: 1, field: "text", code: "bad" }, { at: 2, field: "rig_id", code: "unknown" }, { at: 3, field: "text", code: "bad" }]);
    expect(log.records.map(({ id }) => id)).toEqual(["a"]);
  });

  test("cross in parts of three hundred, and no more signs at once than calc takes", async () => {
    const many = await arrive(Array.from({ length: 301 }, (_, at) => note(`n${at}`)));
    expect(many.asked.map(({ part }) => part.length)).toEqual([300, 1]);
    expect(many.came.taken).toBe(301);
    const long = await arrive([note("a", { text: "x".repeat(200_000) }), note("b", { text: "x".repeat(200_000) })]);
    expect(long.asked.map(({ part }) => part.length)).toEqual([1, 1]);
    const longest = await arrive([note("a", { text: "x".repeat(300_000) }), note("b")]);
    expect(longest.came).toEqual({ taken: 1, same: 0, refused: [{ at: 0, field: "record", code: "too_long" }] });
    const changed = await arrive([note("a", { text: "x".repeat(200_000), changed: 1 })], [note("a", { text: "y".repeat(200_000) })]);
    expect(changed.came.refused).toEqual([{ at: 0, field: "record", code: "too_long" }]);
  });

  test("refused come in the order they stood in", async () => {
    const { came } = await arrive([note("a", { bad: 1 }), note("b", { text: "x".repeat(300_000) }), note("c", { bad: 1 })]);
    expect(came.refused.map(({ at }) => at)).toEqual([0, 1, 2]);
  });

  test("that calc has answered for stay where a later part fails", async () => {
    const log = { rig: { id: "r" }, records: [] };
    let parts = 0;
    const ask = async (_, { arriving }) => {
      parts += 1;
      if (parts === 2) throw new Error("gone");
      return { add: arriving.map((_record, at) => at), change: [], refused: [] };
    };
    await expect(letIn(Array.from({ length: 301 }, (_, at) => note(`n${at}`)), log, { ask, keep: async () => {} })).rejects.toThrow("gone");
    expect(log.records.length).toBe(300);
  });

  test("are not in the log where they could not be kept", async () => {
    const log = { rig: { id: "r" }, records: [] };
    const ask = async (_, { arriving }) => ({ add: arriving.map((_record, at) => at), change: [], refused: [] });
    await expect(letIn([note("a")], log, { ask, keep: async () => { throw new Error("full"); } })).rejects.toThrow("full");
    expect(log.records).toEqual([]);
  });

  describe("photos", () => {
    test("cross without their picture, and are kept with it", async () => {
      const { came, asked, kept } = await arrive([photo("p", "AAAA")]);
      expect(came.taken).toBe(1);
      expect("picture" in asked[0].part[0]).toBe(false);
      expect(kept).toEqual([photo("p", "AAAA")]);
    });

    test("without a picture, with a strange one or one too large stay out", async () => {
      const { came, asked } = await arrive([photo("p"), { ...photo("q"), picture: "data:image/png;base64,AAAA" }, { ...photo("s"), picture: `x${JPEG}AAAA` },
        photo("t", "A".repeat(300_000)), { ...photo("u"), picture: 5 }, photo("v", "A<b>"), photo("w", "")]);
      expect(came.refused.map(({ at, field, code }) => [at, field, code])).toEqual([
        [0, "picture", "missing"], ...[1, 2, 3, 4, 5, 6].map((at) => [at, "picture", "unknown"])]);
      expect(asked).toEqual([]);
      expect((await arrive([photo("t", "A".repeat(300_000 - JPEG.length))])).came.taken).toBe(1);
    });

    test("of which the picture is missing here are filled in; of two pictures the greater stays on every phone", async () => {
      expect((await arrive([photo("p", "AAAA")], [photo("p")])).log.records).toEqual([photo("p", "AAAA")]);
      for (const [first, second] of [["AAAA", "BBBB"], ["BBBB", "AAAA"]]) {
        expect((await arrive([photo("p", first)], [photo("p", second)])).log.records).toEqual([photo("p", "BBBB")]);
      }
      const { came, kept } = await arrive([photo("p", "AAAA")], [photo("p", "AAAA")]);
      expect([came, kept]).toEqual([{ taken: 0, same: 1, refused: [] }, []]);
    });

    test("that say something else keep the picture that is here", async () => {
      expect((await arrive([photo("p", "BBBB", { at_ms: 2 })], [photo("p", "AAAA")])).log.records).toEqual([photo("p", "AAAA")]);
      expect((await arrive([photo("p", "BBBB", { at_ms: 2 })], [photo("p")])).log.records).toEqual([photo("p", "BBBB")]);
    });

    test("known here need not bring their picture again", async () => {
      const { came, asked } = await arrive([photo("p")], [photo("p", "AAAA")]);
      expect([came, asked]).toEqual([{ taken: 0, same: 1, refused: [] }, []]);
    });

    test("do not take the place of a note", async () => {
      expect((await arrive([photo("a", "AAAA")], [note("a")])).log.records).toEqual([note("a")]);
      expect((await arrive([note("p")], [photo("p", "AAAA")])).log.records).toEqual([photo("p", "AAAA")]);
    });

    test("that come twice at once are one", async () => {
      const { log, came } = await arrive([photo("p", "AAAA"), photo("p", "BBBB")]);
      expect(log.records.length).toBe(1);
      expect(came.taken).toBe(1);
    });
  });
});

describe("a log in files", () => {
  test("has all that is written first, then the newest photos, the same on every phone", () => {
    const records = [photo("q", "A", { at_ms: 5 }), note("b"), photo("p", "A", { at_ms: 9 }), note("a"), photo("o", "A", { at_ms: 5 })];
    const [whole, ...more] = partsOf(records);
    expect(more).toEqual([]);
    expect([whole.texts.map((text) => JSON.parse(text).id), whole.photos]).toEqual([["a", "b", "p", "o", "q"], 3]);
    expect(whole).toEqual(partsOf([...records].reverse())[0]);
    expect(whole.texts[0]).toBe(JSON.stringify(inOrder(note("a"))));
    expect(Object.keys(inOrder({ b: 1, a: 2 }))).toEqual(["a", "b"]);
  });

  test("is split before a file is too large, by its bytes; one record is never split", () => {
    const size = (record) => new TextEncoder().encode(JSON.stringify(record)).length;
    const [one, two] = [note("a", { text: "é" }), note("b")];
    expect(partsOf([one, two], size(one) + size(two)).length).toBe(1);
    const picture = photo("p", "A");
    const parts = partsOf([one, two, picture], Math.max(size(one) + size(two) - 1, size(two) + size(picture)));
    expect(parts.map(({ texts, photos }) => [texts.length, photos])).toEqual(size(one) <= size(picture) ? [[2, 0], [1, 1]] : [[1, 0], [2, 1]]);
    expect(partsOf([one, two], size(one) + size(two) - 1).map(({ texts }) => texts.length)).toEqual([1, 1]);
    expect(partsOf([one], 1).map(({ texts }) => texts.length)).toEqual([1]);
    expect(partsOf([], 1)).toEqual([{ texts: [], photos: 0 }]);
  });
});

describe("a log in square codes", () => {
  const numbers = (count) => Array.from({ length: count }, (_, at) => `${(at * 104729) % 1299709}`).join(" ");
  const lettersOf = (read) => read.map(({ letters }) => letters);
  // A frame as another version of this page could send it: its sum is right, whatever it says.
  const sealed = async ({ set, at, of, letters }) => `${frames.MARK}${set}.${at}.${of}.${(await sha256([set, at, of, letters].join("."))).slice(0, 4)}.${letters}`;

  test("comes together from its frames in any order, once all are there", async () => {
    const text = numbers(400);
    const sent = await frames.framesOf(text);
    expect(sent.length).toBeGreaterThan(1);
    const read = await Promise.all([...sent].reverse().map(frames.frameOf));
    expect(read.map(({ at, of }) => [at, of])).toEqual(sent.map((_, place) => [sent.length - place, sent.length]));
    expect(read.every(({ letters }) => letters.length <= 600)).toBe(true);
    expect(sent.every((frame) => frame.startsWith(frames.MARK))).toBe(true);
    expect(await frames.joined(read[0].set, lettersOf([...read].reverse()))).toBe(text);
    await expect(frames.joined(read[0].set, lettersOf(read))).rejects.toThrow("damaged");
  });

  test("is none where a person would have to show more than twelve", async () => {
    const lengths = await Promise.all([1600, 1800, 2000, 2200, 2400, 2600, 2800, 3000].map(async (count) => (await frames.framesOf(numbers(count)))?.length ?? null));
    expect(Math.max(...lengths)).toBe(frames.MOST_FRAMES);
    expect(lengths.at(-1)).toBeNull();
  });

  test("takes a frame up to the bounds, and none beyond them", async () => {
    const frame = { set: "0123abcd", at: 1, of: 1, letters: "x" };
    const read = async (more) => frames.frameOf(await sealed({ ...frame, ...more }));
    expect(await read({})).toEqual(frame);
    expect(await read({ at: 12, of: 12, letters: "x".repeat(600) })).toMatchObject({ at: 12, of: 12 });
    for (const beyond of [{ at: 0 }, { at: 2 }, { of: 13 }, { at: 13, of: 13 }, { at: 100, of: 100 }, { letters: "x".repeat(601) }, { letters: "" }, { letters: "x!" }, { set: "0123abc" }, { set: "0123abcg" }]) {
      expect(await read(beyond)).toBeNull();
    }
  });

  test("refuses a frame that was changed on its way, or that is none", async () => {
    const [frame] = await frames.framesOf("text");
    const last = frame.at(-1);
    for (const other of ["", frames.MARK, `${frame}!`, frame.slice(0, -1) + (last === "A" ? "B" : "A"), `${frames.MARK}x${frame.slice(frames.MARK.length)}`]) {
      expect(await frames.frameOf(other)).toBeNull();
    }
  });
});

test("the digest of a text is its SHA-256", async () => { // FIPS 180-4, the example of one block
  expect(await sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
});
