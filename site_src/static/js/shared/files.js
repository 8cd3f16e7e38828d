// Where the site lies, whatever path it is served under, and its files; for pages and for the interpreter's thread.
export const root = new URL("../../../", import.meta.url);

// A file of the site that did not arrive; guard.js says so.
export class Missing extends Error {
  name = "Missing";

  constructor(url) {
    super(`did not arrive: ${url}`);
  }
}

// A file of the site, as a response.
export async function file(url) {
  let response = null;
  try {
    response = await fetch(url);
  } catch {
    // no signal, and not on this phone
  }
  if (!response?.ok) throw new Missing(url);
  return response;
}
