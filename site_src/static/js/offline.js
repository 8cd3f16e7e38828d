// The one door to the service worker: registers it, counts what it holds, and offers a waiting version.
import { root } from "./site.js";

const bar = document.getElementById("update");
const WORKER = new URL("sw.js", root).href;
// Where the browser takes a script's address only from a policy, this one gives the worker's and no other.
const worker = window.trustedTypes?.createPolicy("worker", { createScriptURL: () => WORKER }).createScriptURL("") ?? WORKER;

export const registered = register();

async function register() {
  if (!("serviceWorker" in navigator)) return null;
  try {
    const registration = await navigator.serviceWorker.register(worker, { scope: root, updateViaCache: "none" });
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
  const offer = () => {
    if (registration.waiting && navigator.serviceWorker.controller) show(registration);
  };
  offer();
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", offer);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && navigator.onLine) registration.update().catch(() => {});
  });
}

function show(registration) {
  const held = "holdsTask" in document.body.dataset;
  for (const part of bar.querySelectorAll("[data-update]")) part.hidden = (part.dataset.update === "held") !== held;
  bar.hidden = false;
  bar.querySelector("button").onclick = () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    registration.waiting?.postMessage({ ask: "take over" });
    setTimeout(() => location.reload(), 4000);
  };
}
