// The service worker: the whole site or nothing, file by file. build.py puts the list of files in place of FILES.
importScripts(
  "static/vendor/workbox/workbox-core.prod.js",
  "static/vendor/workbox/workbox-routing.prod.js",
  "static/vendor/workbox/workbox-strategies.prod.js",
  "static/vendor/workbox/workbox-precaching.prod.js",
);

const files = FILES;
const { precaching, routing } = workbox;

precaching.cleanupOutdatedCaches();
precaching.precacheAndRoute(files, { ignoreURLParametersMatching: [/./] });
// Pages of the fleet are not in the list: one is kept once it was opened, the last so many of them, and those that rigs.js put by.
const [OPENED, KEPT, MOST_OPENED] = ["fleet", "fleet-kept", 60];
const FLEET = /^([\w-]+\/)?rigs\//;
const place = (url) => (url.startsWith(registration.scope) ? url.slice(registration.scope.length) : "");
const fleet = {
  // One key for a page, whether its address ends in index.html or not.
  cacheKeyWillBeUsed: async ({ request }) => request.url.replace(/(index\.html)?([?#].*)?$/, ""),
  cachedResponseWillBeUsed: async ({ request, cachedResponse }) => cachedResponse ?? caches.match(request, { cacheName: KEPT, ignoreVary: true }),
  cacheDidUpdate: async ({ request, newResponse }) => {
    const kept = await caches.open(KEPT);
    if (await kept.match(request, { ignoreVary: true })) await kept.put(request, newResponse);
    const opened = await caches.open(OPENED);
    const keys = await opened.keys();
    await Promise.all(keys.slice(0, -MOST_OPENED).map((key) => opened.delete(key)));
  },
};
routing.registerRoute(
  ({ url }) => FLEET.test(place(url.href)),
  new workbox.strategies.NetworkFirst({ cacheName: OPENED, networkTimeoutSeconds: 4, matchOptions: { ignoreVary: true }, plugins: [fleet] }),
);
routing.registerRoute(
  ({ request }) => request.mode === "navigate",
  ({ request }) => fetch(request),
);
routing.setCatchHandler(async ({ request }) => {
  if (request.mode !== "navigate") return Response.error();
  const slashed = new URL(request.url.replace(/[?#].*$/, "") + "/"); // an address typed without its last slash
  if (!/[./]$|\.\w+$/.test(new URL(request.url).pathname) && precaching.getCacheKeyForURL(`${slashed}index.html`)) return Response.redirect(slashed);
  const [isFleet, language = ""] = FLEET.exec(place(request.url)) ?? [];
  return Response.redirect(new URL(isFleet ? `${language}rig/away/` : "404.html", registration.scope));
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  if (event.data.ask === "take over") event.waitUntil(takeOver().then((taken) => event.ports[0]?.postMessage({ taken })));
  if (event.data.ask === "holdings") event.waitUntil(countHoldings().then((told) => event.ports[0].postMessage(told)));
});

// A page that holds a task (offline.js) shares this lock: while one does, this version goes on waiting.
async function takeOver() {
  return self.navigator.locks.request(`task ${registration.scope}`, { ifAvailable: true }, async (lock) => {
    if (lock) await self.skipWaiting();
    return lock !== null;
  });
}

// Counted in the cache itself, not in the list.
async function countHoldings() {
  const cache = await caches.open(workbox.core.cacheNames.precache);
  const keys = new Set((await cache.keys()).map((request) => request.url));
  const have = files.filter(({ url }) => keys.has(precaching.getCacheKeyForURL(url)));
  return { have: have.length, want: files.length };
}
