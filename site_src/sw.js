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
// Pages of the fleet are not in the list: each is kept once it was opened.
routing.registerRoute(
  ({ url }) => /^([a-z]{2}\/)?rigs\//.test(url.href.slice(registration.scope.length)) && url.href.startsWith(registration.scope),
  new workbox.strategies.NetworkFirst({ cacheName: "fleet", networkTimeoutSeconds: 4 }),
);
routing.registerRoute(
  ({ request }) => request.mode === "navigate",
  ({ request }) => fetch(request),
);
routing.setCatchHandler(async ({ request }) =>
  request.mode === "navigate" ? Response.redirect(new URL("404.html", registration.scope)) : Response.error(),
);

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
