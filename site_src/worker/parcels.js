// What is fetched in one piece: a pack of files, or a file by itself.
import { digestOf, Failure } from "./fetching.js";
import { packs } from "./release.js";
import { unpacked } from "./unpacking.js";

// A file by itself costs about so much of its size, as hosts compress pages and scripts or what is compiled, and so many bytes of headers
// and waiting. An install takes every pack by that, an update of a few sentences none.
const [PART, EACH] = [0.3, 600];
const PARTS = { bin: 0.55, png: 1 };

const alone = (files) => files.reduce((sum, { name, size }) => sum + size * (PARTS[name.split(".").pop()] ?? PART) + EACH, 0);
const weight = (files) => files.reduce((sum, { size }) => sum + size, 0);

// `holds`: how many of its bytes, unpacked, are of files that are missing.
export const singles = (files) => files.map((file) => ({ ...file, files: [file], holds: file.size, isPack: false }));

// How to fetch what is missing with the fewest bytes.
export function parcels(missing) {
  const wanted = new Set(missing);
  const taken = packs.map((pack) => ({ ...pack, files: pack.files.filter((file) => wanted.has(file)), isPack: true }))
    .map((pack) => ({ ...pack, holds: weight(pack.files) }))
    .filter(({ size, files }) => files.length && size < alone(files));
  const inside = new Set(taken.flatMap(({ files }) => files));
  return [...taken, ...singles(missing.filter((file) => !inside.has(file)))];
}

// The files of a parcel that came, each with its bytes, as [file, bytes]. A pack's are compared one by one.
export async function contentsOf(parcel, bytes) {
  if (!parcel.isPack) return [[parcel.files[0], bytes]];
  const all = packs.find(({ name }) => name === parcel.name).files;
  const whole = unpacked(bytes, weight(all));
  const contents = [];
  let start = 0;
  for (const file of all) {
    const content = whole.subarray(start, start += file.size);
    if (!parcel.files.includes(file)) continue;
    if (await digestOf(content) !== file.digest) throw new Failure("changed", file.name);
    contents.push([file, content]);
  }
  return contents;
}
