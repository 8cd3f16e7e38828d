// The one door to the service worker: registers it, has it go on where it stopped, says what it holds, and offers a waiting version.
import { chosen, drop, jot } from "./choices.js";
import { root } from "./site.js";

const bar = document.getElementById("update");
const WORKER = new URL("sw.js", root).href;
// Where the browser takes a script's address only from a policy, this one gives the worker's and no other.
const worker = window.trustedTypes?.createPolicy("worker", { createScriptURL: () => WORKER }).createScriptURL("") ?? WORKER;
const { lang, dataset: { wanted = lang } } = document.documentElement; // of this page, and what theme.js would have sent it to

// A page with a card, a test or a diagnosis holds this lock for as long as it is open, and no version replaces another meanwhile.
const TASK = `task ${root}`;
const holdsTask = "holdsTask" in document.body.dataset;
if (holdsTask) navigator.locks?.request(TASK, { mode: "shared" }, () => new Promise(() => {}));

// Nothing of one version is mixed with another's: a page whose worker was replaced begins anew with the new one.
if (navigator.serviceWorker?.controller) navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });

// After a failure it goes on by itself, later each time.
const AGAIN_MS = { lost: [5000, 60000], missing: [60000, 600000], changed: [60000, 600000], room: [60000, 600000] };
let failures = 0;
let timer = null; // while it waits to go on

let registration = null;
let held = null; // the last count: { have, want, bytes, size, cause, ... } of a worker, or { unable: why }
let isWhole = false; // the worker that answers holds all of its version, this page's language with it
const listeners = new Set();

// Hear each count: { have, want, bytes, size, cause, file, isWhole, version, date }, or { unable } with "insecure", "private" or "unable".
export function watchHoldings(listen) {
  listeners.add(listen);
  if (held) listen(held);
}

function tell(what) {
  held = { ...what, isWhole };
  for (const listen of listeners) listen(held);
}

let registered = register();

async function register() {
  if (!navigator.serviceWorker) return tell({ unable: isSecureContext ? "unable" : "insecure" });
  try {
    const found = await navigator.serviceWorker.register(worker, { scope: root.href, updateViaCache: "none" });
    if (!found) return tell({ unable: "private" }); // turned down without an error, as some do in a private window
    if (found !== registration) watch(found);
    registration = found;
    if (found.active) look();
    else drop("carried"); // until a worker answers, every language's pages come from the host
  } catch (fault) {
    if (fault.name === "SecurityError" || fault.name === "NotSupportedError") return tell({ unable: "private" });
    fail("lost");
  }
}

// Ask the worker that answers. Resolves to its answer, or null where there is none.
async function ask(question, patienceMs = 0) {
  await registered;
  const active = registration?.active;
  if (!active) return null;
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (message) => resolve(message.data);
    active.postMessage(question, [channel.port2]);
    if (patienceMs) setTimeout(() => resolve(null), patienceMs);
  });
}

// What this phone holds, counted and compared; null before a worker answers.
export const holdings = () => ask({ ask: "holdings" }, 20000);

async function look(mayCarry = true) {
  const told = await holdings();
  if (!told) return;
  jot("carried", told.languages.join(" "));
  const spoken = [lang, wanted].every((language) => told.languages.includes(language));
  isWhole = told.have === told.want && told.languages.includes(lang);
  if (isWhole) failures = 0;
  tell(told);
  if (mayCarry && told.have === told.want && !spoken) carryLanguage(told.languages.includes(lang) ? wanted : lang);
}

let carrying = null;
// Have the phone carry one more language: all of it, or none. Resolves to null, or to why it does not: { cause, file }.
export async function carryLanguage(language) {
  await registered;
  if (!navigator.onLine && !chosen("carried")?.split(" ").includes(language)) return { cause: "lost" };
  if (!registration?.active) return null; // its pages come from the host, and are carried once a worker is there
  carrying = language;
  const fault = await ask({ ask: "carry", language });
  carrying = null;
  await look(false);
  return fault;
}

// What came stays counted, whoever did not get further.
function fail(cause, count = held ?? { have: 0, want: 0, bytes: 0, size: 0 }) {
  tell({ ...count, cause });
  const [first, longest] = AGAIN_MS[cause];
  timer ??= setTimeout(goOn, Math.min(first * 2 ** failures++, longest));
}

// Take up what stopped: the files that came are there.
function goOn() {
  clearTimeout(timer);
  timer = null;
  if (!registration?.active) {
    registered = register();
    return;
  }
  if (navigator.onLine) registration.update().catch(() => {});
  if (!isWhole) look();
}

// A worker says how far it is, whichever page began it.
navigator.serviceWorker?.addEventListener("message", ({ data: { scope, version, carrying: count } }) => {
  if (scope !== root.href || !count) return;
  if (count.isMore && isWhole) return; // a language that is added is not of this page: what this one needs is all here
  if (isWhole && version !== held.version) return count.cause && fail(count.cause); // a later version is fetched: what is here serves on
  isWhole = false; // files of this version were cleared, or another language is to come
  if (count.cause && !carrying) fail(count.cause, count);
  else tell(count);
  if (count.have === count.want && registration?.active && !carrying) look();
});
navigator.serviceWorker?.startMessages?.();
addEventListener("online", goOn);

function watch(found) {
  const follow = (installing) => installing?.addEventListener("statechange", () => {
    offer(found);
    if (installing.state === "activated") look();
    if (installing.state === "redundant" && !found.active && !timer) fail("lost"); // put to an end by the browser
  });
  offer(found);
  follow(found.installing);
  found.addEventListener("updatefound", () => follow(found.installing));
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || found !== registration) return;
    offer(found); // a card may have been opened, or left, in the meantime
    goOn();
  });
}

// What the bar says of the waiting version. It is offered only while no page of the site holds a task.
async function offer(found) {
  if (!bar) return; // the page for an unknown address
  if (!found.waiting) bar.hidden = true; // taken, in this tab or in another
  if (!found.waiting || !navigator.serviceWorker.controller || !navigator.locks) return;
  if (holdsTask) return say("held");
  if (await isTaskOpen()) {
    say("elsewhere");
    navigator.locks.request(TASK, () => {}).then(() => offer(found)); // granted once no page holds one
    return;
  }
  if (!found.waiting) return;
  say("apply");
  bar.querySelector("button").onclick = () => takeOver(found);
}

function say(what) {
  for (const part of bar.querySelectorAll("[data-update]")) part.hidden = part.dataset.update !== what;
  bar.hidden = false;
}

async function isTaskOpen() {
  const { held: locks, pending } = await navigator.locks.query(); // pending: a card that is just being loaded again
  return [...locks, ...pending].some(({ name, mode }) => name === TASK && mode === "shared");
}

// The worker itself has the last word: a card may have been opened since the offer was made.
function takeOver(found) {
  const channel = new MessageChannel();
  channel.port1.onmessage = ({ data }) => !data.taken && offer(found);
  found.waiting?.postMessage({ ask: "take over" }, [channel.port2]);
}
