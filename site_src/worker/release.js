// What this version is made of, as build.py wrote it: version and date; the languages, the first of them at the root; the files,
// each with its digest, its size, its language (null for what all of them use) and its pack, where it has one; the packs, each
// with its digest and size as it is fetched; types by ending, and the headers of a page.
export const release = RELEASE;

export const scope = registration.scope;
export const CACHE = `files ${scope}`;

export const files = release.files.map(([name, digest, size, language, pack = null]) => ({
  name, digest, size, language, pack,
  url: new URL(name, scope).href,
  key: new URL(`${name}?${digest}`, scope).href, // two versions of a file lie side by side until the later one takes over
}));

// Many files in one (unpacking.js), in the list's order.
export const packs = release.packs.map(([name, digest, size], at) => ({
  name, digest, size, url: new URL(name, scope).href, files: files.filter(({ pack }) => pack === at),
}));

const byAddress = new Map(files.map((file) => [file.url, file]));

// The address of a request within the site; empty where it is of another.
export const place = (url) => (url.startsWith(scope) ? url.slice(scope.length).replace(/[?#].*$/, "") : "");

// The listed file that answers an address, or undefined.
export function fileAt(url) {
  const [plain] = url.split(/[?#]/);
  return byAddress.get(plain.endsWith("/") ? `${plain}index.html` : plain);
}

export const filesOf = (languages) => files.filter(({ language }) => language === null || languages.includes(language));

// The folder of a language's pages, with its slash; empty for the one at the root.
export const folderOf = (language) => (language === release.languages[0] ? "" : `${language}/`);

// The language of the page at an address.
export const languageAt = (url) => release.languages.find((language) => place(url).startsWith(`${language}/`)) ?? release.languages[0];

// The headers that a kept file is answered with, whatever its host sent.
export function headersOf({ name }) {
  const type = release.types[/\.\w+$/.exec(name)?.[0]] ?? "application/octet-stream";
  return { "Content-Type": type, ...(/^text\/(html|javascript)/.test(type) ? release.headers : { "X-Content-Type-Options": "nosniff" }) };
}

// The open pages of this site, and of none that lies below or beside it.
export async function pages() {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  return open.filter(({ url }) => url.startsWith(scope));
}
