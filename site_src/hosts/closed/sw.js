// The worker of a closed site: in place of every page it shows the closed one, with a signal or without; the site's files go, what was
// entered stays. It waits for its turn as any version does.
const { scope } = registration;
const CLOSED = `closed ${scope}`;

self.addEventListener("install", (event) => event.waitUntil(
  caches.open(CLOSED).then((cache) => cache.addAll(["index.html", "closed.css", "closed.js"].map((name) => new Request(new URL(name, scope), { cache: "reload" })))),
));

self.addEventListener("activate", (event) => event.waitUntil(
  Promise.all([`files ${scope}`, `fleet ${scope}`, `fleet-kept ${scope}`].map((name) => caches.delete(name))).then(() => self.clients.claim()),
));

self.addEventListener("message", (event) => {
  if (event.data.ask !== "take over") return;
  event.waitUntil(self.navigator.locks.request(`task ${scope}`, { ifAvailable: true }, async (lock) => {
    if (lock) await self.skipWaiting();
    event.ports[0]?.postMessage({ taken: lock !== null });
  }));
});

const kept = (name) => caches.match(new URL(name, scope), { cacheName: CLOSED });

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (!request.url.startsWith(scope)) return;
  const part = ["closed.css", "closed.js"].find((name) => request.url === new URL(name, scope).href);
  if (part) event.respondWith(kept(part));
  else if (request.mode === "navigate") event.respondWith(request.url === scope ? kept("index.html") : Response.redirect(scope));
});
