// The file that the page of a closed site hands out (hosts/closed/closed.js): all entries of a phone, by store and key. Whatever reads a
// file of its own kind takes its part out of that one too.
const MARK = /^\s*\{\s*"format":\s*"entries"/;
const LARGEST = 64_000_000;

// What such a file has in a store, as a file that holds a list; any other file as it came.
export const partOf = async (file, store) => (await partAnd(file, store, null)).part;

// The same, and all that such a file has in another store.
export async function partAnd(file, store, beside) {
  try {
    if (file.size > LARGEST || !MARK.test(await file.slice(0, 60).text())) return { part: file, others: [] };
    const all = JSON.parse(await file.text());
    return { part: new File([JSON.stringify(Object.values(all[store] ?? {}))], file.name, { type: file.type }), others: Object.values(all[beside] ?? {}) };
  } catch {
    return { part: file, others: [] }; // whoever reads it says that it is damaged
  }
}
