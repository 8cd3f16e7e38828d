// The start page: the tour of a first visit, is this phone ready without a signal, are entries kept, day or night.
import { choose, chosen } from "../shared/choices.js";
import { holdings } from "../shared/offline.js";
import { chosenRig } from "../rig/chosen.js";
import { fill } from "../shared/site.js";
import { askToPersist } from "../shared/store.js";
import { offerTour } from "../start/tour.js";

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

// Whose figures and steps the other pages take.
async function sayRig() {
  const line = document.getElementById("beside");
  const rig = await chosenRig();
  line.textContent = rig ? fill(line.dataset.beside, rig) : line.dataset.none;
}

function lookChoice() {
  const look = chosen("look", "auto");
  const night = document.getElementById("night");
  const media = { auto: "(prefers-color-scheme: dark)", day: "not all", night: "all" };
  for (const input of document.querySelectorAll("#look input")) {
    input.checked = input.value === look;
    input.addEventListener("change", () => {
      night.media = media[input.value];
      choose("look", input.value);
    });
  }
}

// A language that is chosen holds on every page; the phone's own is found by theme.js.
function languageChoice() {
  const language = chosen("language", "auto");
  for (const input of document.querySelectorAll("#language input")) {
    input.checked = input.value === language;
    input.addEventListener("change", () => {
      choose("language", input.value);
      if (input.value === "auto") location.reload();
      else location.assign(input.dataset.address);
    });
  }
}

offerTour();
lookChoice();
languageChoice();
sayRig();
count();
const keeping = document.getElementById("keeping");
askToPersist().then((answer) => {
  keeping.dataset.state = { kept: "yes", unpromised: "partly", unkept: "no" }[answer];
  keeping.textContent = keeping.dataset[answer];
});
