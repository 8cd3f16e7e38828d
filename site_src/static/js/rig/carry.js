// A profile on its way: as a file, as a link, as a square code. Nothing that comes in is trusted.

import { oneReading } from "../shared/one_reading.js";
import { plainName } from "./profile.js";

const LARGEST_FILE = 500_000;
const LARGEST_LINK = 20_000;
const MOST_RIGS = 500;
const MARK = "#take=";

const bytesToText = (bytes) =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join("")).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");

const textToBytes = (text) => Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));

async function through(stream, bytes, most) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) throw new RangeError("too large");
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

// A text as a link carries it: packed where the browser can, "z", or plain, "p".
export async function packed(text) {
  const bytes = new TextEncoder().encode(text);
  return "CompressionStream" in window ? `z${bytesToText(await through(new CompressionStream("deflate-raw"), bytes, LARGEST_FILE))}` : `p${bytesToText(bytes)}`;
}

// The text of it again. Throws where it cannot be unpacked.
export async function unpacked(letters) {
  const bytes = textToBytes(letters.slice(1));
  const plain = letters[0] === "z" ? await through(new DecompressionStream("deflate-raw"), bytes, LARGEST_FILE) : bytes;
  return new TextDecoder("utf-8", { fatal: true }).decode(plain);
}

// The link that carries a profile in its fragment.
export const linkOf = async (profile, root) => new URL(`rig/${MARK}${await packed(JSON.stringify(oneReading(profile)))}`, root).href;

// The profile text a fragment carries, or null where it carries none. Throws where it cannot be unpacked.
export async function textOf(fragment) {
  if (!fragment.startsWith(MARK)) return null;
  if (fragment.length > LARGEST_LINK) throw new RangeError("too large");
  return unpacked(fragment.slice(MARK.length));
}

// A name as a part of a file's name.
export const safe = (name) => name.replace(/[^\w-]+/g, "-");

export const fileOf = (profiles, name) =>
  new File([JSON.stringify(oneReading(profiles.length === 1 ? profiles[0] : profiles), null, 1)], `${safe(name)}.json`, { type: "application/json" });

// What a file holds as text; throws a RangeError where it is larger than rigs can be.
export async function read(file) {
  if (file.size > LARGEST_FILE) throw new RangeError("too large");
  return file.text();
}

// What calc does not even read is damaged, or too large to be a rig.
function unreadable(refusal) {
  if (!("field" in refusal)) throw refusal;
  throw { reason: refusal.code === "too_large" ? "refused_large" : "refused_damaged" };
}

// The profiles of a text, each sound, with what `judge(profile)` says of it. Rejects with { reason, facts } naming what is wrong and where.
export async function profilesOf(text, judge) {
  let given;
  try {
    given = JSON.parse(text);
  } catch {
    throw { reason: "refused_json" };
  }
  const profiles = Array.isArray(given) ? given : [given];
  if (profiles.length === 0) throw { reason: "refused_damaged" };
  if (profiles.length > MOST_RIGS) throw { reason: "refused_large" };
  const offered = [];
  for (const profile of profiles) {
    if (profile === null || typeof profile !== "object" || Array.isArray(profile)) throw { reason: "refused_damaged" };
    const judged = await judge(profile).catch(unreadable);
    const [problem] = judged.problems;
    if (problem) throw { reason: problem.field === "schema" ? "refused_version" : "refused_field", facts: { ...problem, profile, version: String(profile.schema).slice(0, 20) } };
    offered.push({ profile, figures: judged.figures });
  }
  const names = profiles.map(({ name }) => plainName(name));
  const twin = profiles.find(({ name }, place) => names.indexOf(plainName(name)) !== place);
  if (twin) throw { reason: "refused_same_name", facts: { name: twin.name } };
  return offered;
}
