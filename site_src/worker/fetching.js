// One file from the host: whole, and with the digest of the list, or a reason why not.

// Why a file could not be fetched or kept: "lost" (no answer, or it broke off), "missing", "changed", "room".
export class Failure extends Error {
  constructor(cause, name) {
    super(`${cause}: ${name}`);
    this.cause = cause;
    this.file = name;
  }
}

const STALLED_MS = 30000; // without one byte more
const WAITS_MS = [500, 1000, 2000, 4000, 8000, 8000, 8000]; // between tries after a lost connection

const wait = (ms) => new Promise((done) => setTimeout(done, ms));

export async function digestOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)).slice(0, 16); // as build.py writes it
  return btoa(String.fromCharCode(...digest)).replace(/=+$/, "").replace(/\+/g, "-").replace(/\//g, "_");
}

// The body of an address; `tell(bytes)` hears of each piece that came, and of all of them taken back.
async function body(file, cache, tell) {
  const stop = new AbortController();
  let timer = setTimeout(() => stop.abort(), STALLED_MS);
  let length = 0;
  try {
    const response = await fetch(file.url, { cache, credentials: "same-origin", signal: stop.signal });
    if (response.status >= 500 || response.status === 429) throw new Failure("lost", file.name);
    if (!response.ok) throw new Failure("missing", file.name);
    const reader = response.body.getReader();
    const parts = [];
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      clearTimeout(timer);
      timer = setTimeout(() => stop.abort(), STALLED_MS);
      parts.push(part.value);
      length += part.value.length;
      tell(part.value.length);
    }
    return new Uint8Array(await new Blob(parts).arrayBuffer());
  } catch (fault) {
    tell(-length);
    throw fault instanceof Failure ? fault : new Failure("lost", file.name);
  } finally {
    clearTimeout(timer);
  }
}

// The bytes of a listed file. What the browser has of it already is good enough where its digest is; where it is not, or
// something on the way held an older one, it is fetched past all of them.
export async function fetched(file, tell = (_bytes) => {}, until = Infinity) {
  let mode = /** @type {RequestCache} */ ("force-cache");
  for (const ms of [...WAITS_MS, null]) {
    let cause;
    try {
      const bytes = await body(file, mode, tell);
      if (await digestOf(bytes) === file.digest) return bytes;
      tell(-bytes.length);
      cause = "changed";
    } catch (fault) {
      ({ cause } = fault);
    }
    if (cause !== "lost" && mode === "reload") throw new Failure(cause, file.name);
    if (cause !== "lost") mode = "reload";
    else if (ms === null || Date.now() + ms > until) throw new Failure("lost", file.name);
    else await wait(ms);
  }
  throw new Failure("lost", file.name);
}
