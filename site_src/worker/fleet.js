// Pages of the fleet are not in the list: one is kept once it was opened, the last so many of them, and those that rigs.js put by.
import { place, scope } from "./release.js";

const [OPENED, TAKEN, MOST_OPENED] = [`fleet ${scope}`, `fleet-kept ${scope}`, 60];
const PATIENCE_MS = 4000;
const FLEET = /^([\w-]+\/)?rigs\//;

// Whether an address is of a fleet's page, and the folder of its language: [whole, folder], or null.
export const fleetAt = (url) => FLEET.exec(place(url));

// One key for a page, whether its address ends in index.html or not.
const keyOf = (url) => url.replace(/(index\.html)?([?#].*)?$/, "");

async function noteOpened(key, response) {
  const [opened, taken] = await Promise.all([caches.open(OPENED), caches.open(TAKEN)]);
  if (await taken.match(key, { ignoreVary: true })) await taken.put(key, response.clone());
  await opened.put(key, response);
  const keys = await opened.keys();
  await Promise.all(keys.slice(0, -MOST_OPENED).map((request) => opened.delete(request)));
}

async function noted(key) {
  for (const name of [OPENED, TAKEN]) {
    const response = await caches.match(key, { cacheName: name, ignoreVary: true });
    if (response) return response;
  }
  return null;
}

// The host's page, or after a while, or with no signal, the one that is here.
export async function fleetPage(event) {
  const key = keyOf(event.request.url);
  const asked = fetch(event.request).then((response) => {
    if (response.ok) event.waitUntil(noteOpened(key, response.clone()).catch(() => {}));
    return response;
  });
  const late = new Promise((done) => setTimeout(done, PATIENCE_MS)).then(() => noted(key));
  const first = await Promise.race([asked.catch(() => noted(key)), late]);
  return first ?? asked;
}

// Up to version 1 these two caches were one for all sites of an origin: what is this site's moves over.
export async function move() {
  for (const [older, newer] of [["fleet", OPENED], ["fleet-kept", TAKEN]]) {
    if (!(await caches.has(older))) continue;
    const from = await caches.open(older);
    for (const request of (await from.keys()).filter(({ url }) => fleetAt(url))) {
      await (await caches.open(newer)).put(request.url, await from.match(request, { ignoreVary: true }));
      await from.delete(request);
    }
    if (!(await from.keys()).length) await caches.delete(older);
  }
}
