// The digest of a test as it was signed: SHA-256 of what it says, written with its names in order, the digests of its photos among it. site_src/report/signed.py writes
// the same.
import { sha256 } from "../shared/sha256.js";

const SIGNED = ["schema", "id", "rig_id", "rig_name", "rig", "conditions", "accuracy", "equipment", "people", "tests", "events", "notes", "overrides", "photographed", "begun_ms", "finished_ms"];

function written(content) {
  if (Array.isArray(content)) return `[${content.map(written).join(",")}]`;
  if (content === null || typeof content !== "object") return JSON.stringify(content);
  return `{${Object.keys(content).sort().map((name) => `${JSON.stringify(name)}:${written(content[name])}`).join(",")}}`;
}

export async function digestOf(record) {
  const { id, kind, edition } = record.standard;
  const plain = JSON.parse(JSON.stringify({ ...Object.fromEntries(SIGNED.map((name) => [name, record[name]])), standard: { id, kind, edition } }));
  return sha256(written(plain));
}

// Of each photo, by its id: what it shows, of which part, and when it was taken.
export const digestsOf = async (photos) =>
  Object.fromEntries(await Promise.all(photos.map(async ({ id, part, at_ms, picture }) => [id, await sha256(written([part, at_ms, picture]))])));
