// The one door to the service worker: registers it, counts what it holds, and offers a waiting version.
import { root } from "./site.js";

const bar = document.getElementById("update");
const WORKER = new URL("sw.js", root).href;
// Where the browser takes a script's address only from a policy, this one gives the worker's and no other.
const worker = window.trustedTypes?.createPolicy("worker", { createScriptURL: () => WORKER }).createScriptURL("") ?? WORKER;

// A page with a card, a test or a diagnosis holds this lock for as long as it is open, and no version replaces another meanwhile.
const TASK = `task ${root}`;
const holdsTask = "holdsTask" in document.body.dataset;
if (holdsTask) navigator.locks?.request(TASK, { mode: "shared" }, () => new Promise(() => {}));

// Nothing of one version is mixed with another's: a page whose worker was replaced begins anew with the new one.
if (navigator.serviceWorker?.controller) navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });

const registered = register();

async function register() {
  if (!("serviceWorker" in navigator)) return null;
  try {
    const registration = await navigator.serviceWorker.register(worker, { scope: root.href, updateViaCache: "none" });
    if (!registration) return null; // turned down without an error, as some do in a private window
    watch(registration);
    return registration;
  } catch {
    return null;
  }
}

// How many of the site's files this phone holds: { have, want }, or null before a worker answers.
export async function holdings() {
  const registration = await registered;
  const worker = registration?.active;
  if (!worker) return null;
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (message) => resolve(message.data);
    worker.postMessage({ ask: "holdings" }, [channel.port2]);
    setTimeout(() => resolve(null), 5000);
  });
}

function watch(registration) {
  offer(registration);
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", () => offer(registration));
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible") return;
    offer(registration); // a card may have been opened, or left, in the meantime
    if (navigator.onLine) registration.update().catch(() => {});
  });
}

// What the bar says of the waiting version. It is offered only while no page of the site holds a task.
async function offer(registration) {
  if (!registration.waiting || !navigator.serviceWorker.controller || !navigator.locks) return;
  if (holdsTask) return say("held");
  if (await isTaskOpen()) {
    say("elsewhere");
    navigator.locks.request(TASK, () => {}).then(() => offer(registration)); // granted once no page holds one
    return;
  }
  say("apply");
  bar.querySelector("button").onclick = () => takeOver(registration);
}

function say(what) {
  for (const part of bar.querySelectorAll("[data-update]")) part.hidden = part.dataset.update !== what;
  bar.hidden = false;
}

async function isTaskOpen() {
  const { held, pending } = await navigator.locks.query(); // pending: a card that is just being loaded again
  return [...held, ...pending].some(({ name, mode }) => name === TASK && mode === "shared");
}

// The worker itself has the last word: a card may have been opened since the offer was made.
function takeOver(registration) {
  const channel = new MessageChannel();
  channel.port1.onmessage = ({ data }) => !data.taken && offer(registration);
  registration.waiting?.postMessage({ ask: "take over" }, [channel.port2]);
}
