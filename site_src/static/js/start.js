// The start page: is this phone ready without a signal, are entries kept, day or night.
import { holdings } from "./offline.js";
import { fill } from "./site.js";
import { askToPersist } from "./store.js";

const readiness = document.getElementById("readiness");
const PATIENCE_MS = 120000;

function say(state, sentence, facts = {}) {
  readiness.dataset.state = state;
  readiness.textContent = fill(sentence, facts);
}

async function count(since = performance.now()) {
  const told = readiness.dataset;
  if (!("serviceWorker" in navigator) || !("caches" in window)) return say("no", told.unable);
  const held = await holdings();
  if (held && held.have === held.want) return say("yes", told.ready, held);
  if (held) say("partly", told.partly, held);
  else say("no", told.unready);
  if (performance.now() - since < PATIENCE_MS) setTimeout(() => count(since), 1000);
}

function lookChoice() {
  let chosen = "auto";
  try {
    chosen = localStorage.getItem("look") ?? "auto";
  } catch {
    // nothing kept: as the phone
  }
  const night = document.getElementById("night");
  const media = { auto: "(prefers-color-scheme: dark)", day: "not all", night: "all" };
  for (const input of document.querySelectorAll("#look input")) {
    input.checked = input.value === chosen;
    input.addEventListener("change", () => {
      night.media = media[input.value];
      try {
        localStorage.setItem("look", input.value);
      } catch {
        // it holds for this page only
      }
    });
  }
}

lookChoice();
count();
const keeping = document.getElementById("keeping");
askToPersist().then((answer) => {
  keeping.dataset.state = { kept: "yes", unpromised: "partly", unkept: "no" }[answer];
  keeping.textContent = keeping.dataset[answer];
});
