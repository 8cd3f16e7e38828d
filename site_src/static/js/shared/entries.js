// The file that the page of a closed site hands out (hosts/closed/closed.js): all entries of a phone, by store and key. Whatever reads a
// file of its own kind takes its part out of that one too.
const MARK = /^\s*\{\s*"format":\s*"entries"/;
const LARGEST = 64_000_000;

// What such a file has in a store, as a file that holds a list; any other file as it came.
export async function partOf(file, store) {
  try {
    if (file.size > LARGEST || !MARK.test(await file.slice(0, 60).text())) return file;
    const part = JSON.parse(await file.text())[store];
    return new File([JSON.stringify(Object.values(part ?? {}))], file.name, { type: file.type });
  } catch {
    return file; // whoever reads it says that it is damaged
  }
}
