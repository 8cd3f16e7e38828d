// A rig's log in files that another phone can read: the first has all that is written and the newest photos, the next the older ones.
import { inOrder } from "./arrivals.js";

const MOST_BYTES = 12_000_000; // of one file, some fifty photos: a phone reads it and has room left

const encoder = new TextEncoder();
const byId = (one, other) => (one.id < other.id ? -1 : 1);
const newestFirst = (one, other) => other.at_ms - one.at_ms || byId(one, other);

// [{ texts: records as text, photos }], the same on every phone that has the same records, each a log of its own.
export function partsOf(records, most = MOST_BYTES) {
  const isPhoto = ({ kind }) => kind === "photo";
  const written = records.filter((record) => !isPhoto(record)).sort(byId);
  const parts = [{ texts: [], photos: 0 }];
  let size = 0;
  for (const record of [...written, ...records.filter(isPhoto).sort(newestFirst)]) {
    const text = JSON.stringify(inOrder(record));
    const bytes = isPhoto(record) ? text.length : encoder.encode(text).length;
    if (size && size + bytes > most) {
      parts.push({ texts: [], photos: 0 });
      size = 0;
    }
    const part = parts[parts.length - 1];
    part.texts.push(text);
    part.photos += Number(isPhoto(record));
    size += bytes;
  }
  return parts;
}
