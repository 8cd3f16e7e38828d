// A pack of an install comes out as it went in. Python's own library packs, as the release does.
import { spawnSync } from "bun";
import { describe, expect, test } from "bun:test";

import { unpacked } from "../../site_src/worker/unpacking.js";

const CASES = {
  "text": 'b"friction loss in hose, pump pressure, " * 40 + b"hose and pump" * 3',
  "bytes by chance": "random.randbytes(2000)",
  "one byte": 'b"x"',
  "one byte many times": 'b"x" * 100000',
  "what repeats far back": "(far := random.randbytes(900)) + bytes(3000) + far + bytes(300000) + far + b'end'",
  "few letters": "bytes(random.choice(b'abc') for _ in range(3000))",
  "words by chance": "b' '.join(random.choice([b'pump', b'pressure', b'hose', b'relief', b'gauge', b'intake']) for _ in range(1500))",
  "counted bytes": "b''.join(i.to_bytes(4, 'little') for i in range(900))",
};
const PACK = `
import json, lzma, random, sys
from site_src.publish.packing import packed
random.seed(7)
raw = [${Object.values(CASES).join(", ")}]
print(json.dumps([[text.hex(), packed(text).hex()] for text in raw]))
`;

const { stdout, stderr, exitCode } = spawnSync([process.env.PYTHON, "-c", PACK], { cwd: process.env.ROOT });
if (exitCode) throw new Error(stderr.toString());
const packs = JSON.parse(stdout.toString());

describe("a pack of", () => {
  test.each(Object.keys(CASES).map((name, at) => [name, ...packs[at].map((hex) => Buffer.from(hex, "hex"))]))("%s comes out as it went in", (_, raw, packed) => {
    expect(Buffer.compare(Buffer.from(unpacked(packed, raw.length)), raw)).toBe(0);
  });
});
