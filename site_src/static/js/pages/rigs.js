// The Fleet page: keeps the department's rigs on this phone, all of them, or chosen ones where there are more than it keeps.
import { holdings } from "../shared/offline.js";
import { fill, root } from "../shared/site.js";

const KEPT = `fleet-kept ${root}`; // the worker answers from it
const here = new URL(".", document.baseURI).href;
const place = document.getElementById("keep");
const [key, status] = [place.querySelector("button"), place.querySelector("[role=status]")];
const boxes = [...place.querySelectorAll("input")];
const tiles = [...document.querySelectorAll("[data-rig]")];
const most = Number(place.dataset.most);
const say = (name, facts = {}) => fill(place.dataset[name], facts);

const pageOf = (name) => `${here}${encodeURIComponent(name)}/`;
const filesOf = (name) => [pageOf(name), `${pageOf(name)}rig.json`];
const isIn = async (name, cacheName) => !!(await caches.match(pageOf(name), { ignoreVary: true, cacheName }));
const isHere = async (name) => await isIn(name, KEPT) || isIn(name, `fleet ${root}`);
const wanted = () => (boxes.length ? boxes.filter((box) => box.checked).map((box) => box.value) : tiles.map((tile) => tile.dataset.rig));

async function put(cache, address) {
  const response = await fetch(address, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  await cache.put(address, response.redirected ? new Response(await response.blob(), { headers: response.headers }) : response);
}

// Keep these rigs and no others, and the list itself; a rig that cannot be fetched now leaves what is here of it.
async function keep(names) {
  const cache = await caches.open(KEPT);
  const lists = [here, `${here}rigs.json`];
  const keys = new Set([...lists, ...names.flatMap(filesOf)]);
  const gone = (await cache.keys()).filter(({ url }) => url.startsWith(here) && !keys.has(url));
  await Promise.all(gone.map((request) => cache.delete(request)));
  let isWhole = true;
  for (const [count, files] of [lists, ...names.map(filesOf)].entries()) {
    status.textContent = say("keeping", { have: count, want: names.length });
    try {
      await Promise.all(files.map((address) => put(cache, address)));
    } catch {
      isWhole = false; // no signal, or no room: said at the end by what is really here
    }
  }
  const have = (await Promise.all(names.map((name) => isIn(name, KEPT)))).filter(Boolean).length;
  const site = await holdings();
  status.textContent = [
    say(isWhole ? "held" : "partly", { have, want: names.length }),
    site && site.have === site.want ? "" : say("unready"),
  ].join(" ");
}

async function mark() {
  const held = await Promise.all(tiles.map((tile) => isHere(tile.dataset.rig)));
  tiles.forEach((tile, count) => { tile.querySelector("span").hidden = !held[count]; });
  return held.filter(Boolean).length;
}

function offer(sizes) {
  const names = wanted();
  const facts = { want: names.length, most, kb: Math.ceil(names.reduce((sum, name) => sum + (sizes[name] ?? 0), 0) / 1000) };
  const isTooMany = names.length > most;
  key.textContent = isTooMany ? say("tooMany", facts) : say(boxes.length ? "keepChosen" : "keep", facts);
  key.disabled = isTooMany || names.length === 0;
}

async function start() {
  if (!("caches" in window) || !navigator.serviceWorker) return;
  const have = await mark();
  if (have) status.textContent = say("held", { have, want: tiles.length });
  place.hidden = false;
  let sizes;
  key.hidden = true; // until it is known that there is a signal to fetch with
  try {
    sizes = await (await fetch(`${here}rigs.json`)).json();
  } catch {
    return;
  }
  for (const box of boxes) {
    box.checked = await isIn(box.value, KEPT);
    box.addEventListener("change", () => offer(sizes));
  }
  offer(sizes);
  key.hidden = !navigator.onLine;
  key.addEventListener("click", async () => {
    key.disabled = true;
    await keep(wanted());
    await mark();
    offer(sizes);
  });
}

start();
