// The files this phone carries: all of its languages' or none, many at a time; what is there already is compared with its digest.
import { digestOf, Failure, fetched } from "./fetching.js";
import { contentsOf, parcels, singles } from "./parcels.js";
import { CACHE, filesOf, headersOf, languageAt, pages, release, scope } from "./release.js";

const AT_ONCE = 12;
const LONGEST_MS = 240000; // a browser ends an event after five minutes: what came by then stays, and a page begins the next
const TOLD_EACH_MS = 150;
const CHOICE = new URL("languages", scope).href; // in the same cache: the languages this phone carries

const sound = new Set(); // keys of the files that were compared, for as long as this worker lives

// The languages that this phone is to carry: those that were chosen on it, or else those of its open pages.
export async function carried() {
  const chosen = await (await caches.open(CACHE)).match(CHOICE);
  const spoken = chosen ? await chosen.json() : (await pages()).map(({ url }) => languageAt(url));
  const known = release.languages.filter((language) => spoken.includes(language));
  return known.length ? known : release.languages.slice(0, 1);
}

const choose = async (languages) => (await caches.open(CACHE)).put(CHOICE, new Response(JSON.stringify(languages)));

async function put(cache, file, bytes) {
  try {
    await cache.put(file.key, new Response(bytes, { headers: headersOf(file) }));
  } catch {
    throw new Failure("room", file.name);
  }
  sound.add(file.key);
}

// Whether a file is in the cache, and is what the list says. One with another type or policy than it should have gets the right one.
async function isSound(cache, file) {
  if (sound.has(file.key)) return !!(await cache.match(file.key));
  const kept = await cache.match(file.key);
  if (!kept) return false;
  const bytes = await kept.arrayBuffer();
  if (await digestOf(bytes) !== file.digest) return false;
  if (Object.entries(headersOf(file)).some(([name, value]) => kept.headers.get(name) !== value)) await put(cache, file, bytes);
  sound.add(file.key);
  return true;
}

// How far it is: files and bytes, of how many, and what it failed on. isMore: a language is added to what is carried.
function progress(wanted, isMore) {
  const state = { have: 0, want: wanted.length, bytes: 0, size: wanted.reduce((sum, { size }) => sum + size, 0), cause: null, file: null };
  let last = 0;
  const tell = async (isLast = false) => {
    if (!isLast && Date.now() - last < TOLD_EACH_MS) return;
    last = Date.now();
    for (const page of await pages()) page.postMessage({ scope, version: release.version, carrying: { ...state, bytes: Math.round(state.bytes), isMore } });
  };
  return { state, tell };
}

// What is kept of some languages' files: those that are not, and the count. What is there and wrong is taken out.
async function counted(languages, isMore = false) {
  const cache = await caches.open(CACHE);
  const wanted = filesOf(languages);
  const { state, tell } = progress(wanted, isMore);
  const checks = await Promise.all(wanted.map((file) => isSound(cache, file)));
  const missing = wanted.filter((_, at) => !checks[at]);
  await Promise.all(missing.map(({ key }) => cache.delete(key)));
  state.have = wanted.length - missing.length;
  state.bytes = state.size - missing.reduce((sum, { size }) => sum + size, 0);
  return { cache, missing, state, tell };
}

// Fetch what is not here yet. Rejects with a Failure where one file cannot be had; those that came stay for the next time.
async function carry(languages, isMore = false) {
  const { cache, missing, state, tell } = await counted(languages, isMore);
  const until = Date.now() + LONGEST_MS;
  // From both ends: of the short ones each waits for the way there and back, and meanwhile the long ones fill the link.
  const queue = parcels(missing).sort((one, other) => other.size - one.size);
  let fault = null;
  const bring = async (parcel) => {
    let counted = 0;
    const count = (bytes) => {
      counted += bytes;
      state.bytes += bytes * parcel.holds / parcel.size;
      tell();
    };
    const bytes = await fetched(parcel, count, until);
    const contents = await contentsOf(parcel, bytes).catch((thrown) => {
      count(-counted);
      throw thrown;
    });
    await Promise.all(contents.map(async ([file, content]) => {
      await put(cache, file, content);
      state.have += 1;
    }));
  };
  const fetchFrom = async (isLong) => {
    while (queue.length && !fault) {
      const parcel = isLong ? queue.shift() : queue.pop();
      try {
        if (Date.now() > until) throw new Failure("lost", parcel.name);
        await bring(parcel);
      } catch (thrown) {
        if (parcel.isPack && ["missing", "changed"].includes(thrown.cause)) queue.unshift(...singles(parcel.files)); // the files have the last word
        else fault ??= thrown;
      }
      tell();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, (_, at) => fetchFrom(at % 4 === 0)));
  if (fault) Object.assign(state, { cause: fault.cause ?? "lost", file: fault.file ?? null });
  await tell(true);
  if (fault) throw fault;
}

export async function install() {
  const languages = await carried();
  await carry(languages);
  await choose(languages);
}

// Take one more language, carried once all of it is here. Resolves to null then, or to why it could not be: { cause, file }.
export async function take(language) {
  const languages = [...new Set([...await carried(), language])].filter((one) => release.languages.includes(one));
  try {
    await carry(languages, true);
  } catch ({ cause, file }) {
    return { cause, file };
  }
  await choose(languages);
  return null;
}

// What is kept, counted in the cache itself and compared.
export async function holdings() {
  const languages = await carried();
  const { state } = await counted(languages);
  return { ...state, languages, version: release.version, date: release.date };
}

let healing = null;
// Fetch what is not here or wrong; once at a time.
export function heal() {
  healing ??= carried().then(carry).catch(() => {}).finally(() => { healing = null; });
  return healing;
}

// A listed file as it is kept; one that is not there is fetched, and kept where its language is.
export async function kept(file) {
  const cache = await caches.open(CACHE);
  const here = await cache.match(file.key);
  if (here) return here;
  const bytes = await fetched(file, undefined, Date.now());
  const response = new Response(bytes, { headers: headersOf(file) });
  if (file.language === null || (await carried()).includes(file.language)) await put(cache, file, bytes).catch(() => {});
  return response;
}

// Once this version has taken over: what was kept for another goes.
export async function clear() {
  const cache = await caches.open(CACHE);
  const wanted = new Set([CHOICE, ...filesOf(await carried()).map(({ key }) => key)]);
  for (const { url } of await cache.keys()) if (!wanted.has(url)) await cache.delete(url);
}
