// The service worker: the whole site or nothing. Listed files come from this phone, never from the network beside them.
import { carried, clear, heal, holdings, install, kept, take } from "./carrying.js";
import { fleetAt, fleetPage, move } from "./fleet.js";
import { fileAt, folderOf, languageAt, place, scope } from "./release.js";

const OLDER = `workbox-precache-v2-${scope}`; // what an earlier worker of this very site kept

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => event.waitUntil(
  Promise.all([clear(), move(), caches.delete(OLDER)]).catch(() => {}).then(() => self.clients.claim()),
));

self.addEventListener("message", (event) => {
  const { ask, language } = event.data;
  const answer = ASKED[ask]?.(event, language);
  if (answer) event.waitUntil(answer.then((value) => event.ports[0]?.postMessage(value)));
});

const ASKED = {
  "take over": () => takeOver().then((taken) => ({ taken })),
  carry: (_event, language) => take(language),
  holdings: (event) => holdings().then((held) => {
    if (held.have < held.want) event.waitUntil(heal());
    return held;
  }),
};

// A page that holds a task (offline.js) shares this lock: while one does, this version goes on waiting.
async function takeOver() {
  return self.navigator.locks.request(`task ${scope}`, { ifAvailable: true }, async (lock) => {
    if (lock) await self.skipWaiting();
    return lock !== null;
  });
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(scope)) return;
  const isPage = request.mode === "navigate";
  const file = fileAt(request.url);
  const answer = file ? kept(file) : fleetAt(request.url) ? fleetPage(event) : isPage ? fetch(request) : null;
  if (answer) event.respondWith(answer.catch(() => (isPage ? elsewhere(request.url) : Response.error())));
});

// Where a page leads that is not here, with no signal to fetch it: the same page in a language that is, or the page that says so.
async function elsewhere(url) {
  const [plain] = url.split(/[?#]/);
  if (fileAt(`${plain}/`)) return Response.redirect(`${plain}/`); // an address typed without its last slash
  const page = place(url).slice(folderOf(languageAt(url)).length);
  const folders = (await carried()).map(folderOf);
  if (fleetAt(url)) return Response.redirect(new URL(`${folders.find((folder) => place(url).startsWith(`${folder}rigs/`)) ?? folders[0]}rig/away/`, scope));
  const others = folders.map((folder) => new URL(folder + page, scope).href).filter((other) => fileAt(other) && fileAt(other) !== fileAt(url));
  return Response.redirect(others[0] ?? new URL("404.html", scope));
}
