// The page's language and where its pages lie, the JSON it brings with it, and its sentences.
import { Missing, file, root } from "./files.js";

export { Missing, file, root } from "./files.js";

// The name in local storage of what belongs to this site alone: an origin may carry several, each under a path of its own.
export const scoped = (name) => (root.pathname === "/" ? name : `${root.pathname} ${name}`);

// Where the pages of this page's language lie.
const { lang } = document.documentElement;
export const home = lang === "en" ? root : new URL(`${lang}/`, root);

// What this page's address says after its mark, or null where that cannot be read.
export function fragment() {
  try {
    return decodeURIComponent(location.hash.slice(1));
  } catch {
    return null;
  }
}

// A file of data; what stands in its place and is none, such as the page of a network that wants a sign-in, is as if it had not come.
const dataOf = async (url) => (await file(url)).json().catch(() => { throw new Missing(url); });

// The data of a page, with the parts of it that pages share: site_src/sharing.py took them apart.
/** @param {string | URL} [page] */
export async function pageData(page = document.baseURI) {
  const place = new URL("page.json", page);
  const { shared = {}, ...data } = await dataOf(place);
  const urls = Object.keys(shared).map((name) => new URL(name, place));
  const files = await Promise.all(urls.map(dataOf));
  const parts = Object.values(shared).flatMap((named, at) => Object.entries(named).map(([path, name]) => {
    if (!(name in files[at])) throw new Missing(urls[at]); // of another version
    return [path.split("/"), files[at][name]];
  }));
  for (const [[key, row], value] of parts.sort(([one], [other]) => one.length - other.length)) { // a table before its rows
    if (row === undefined) data[key] = value;
    else data[key][row] = value;
  }
  return data;
}

// The names of a system's units, as sentences take them: { u_pressure: "psi", ... }.
export const unitWords = (words, system) =>
  Object.fromEntries(Object.entries(words.unit[system]).map(([kind, unit]) => [`u_${kind}`, unit]));

// A colon as this page's language sets it.
export const { colon } = document.documentElement.dataset;

// The decimal mark of this page's language, and the longest text that is taken as an entry, see calc.base.entry.
export const decimal = /** @type {"." | ","} */ (document.documentElement.dataset.decimal);
export const longest = Number(document.documentElement.dataset.longest);

// A count of this phone's own with so many decimals, as this language sets it: megabytes, a share. Trade figures come written from calc.
export const decimals = (number, places) => number.toFixed(places).replace(".", decimal);

// A number that calc wrote for this page, as a number: never for what a person typed, which calc reads.
export const numberOf = (text) => Number(text.replace(decimal, "."));

// A name that reads from the right, or turns what comes after it about, stands by itself in a sentence: of marks that turn text it has those alone that close it in.
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;
const FROM_RIGHT = /[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc]/;
const closedIn = (value) => (FROM_RIGHT.test(value) ? `\u2068${String(value).replace(TURNING, "")}\u2069` : value);

// A sentence with its {names} filled in.
export function fill(sentence, facts) {
  return sentence.replace(/\{(\w+)\}/g, (whole, name) => (name in facts ? closedIn(facts[name]) : whole));
}
