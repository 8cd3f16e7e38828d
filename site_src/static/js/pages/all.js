// All pages, and this phone: is it ready without a signal, are entries kept, units, day or night, language.
import { choose, chosen } from "../shared/choices.js";
import { chooseLook, look, onLook } from "../shared/look.js";
import { carryLanguage, watchHoldings } from "../shared/offline.js";
import { watchReadiness } from "../shared/readiness.js";
import { fill, pageData } from "../shared/site.js";
import { askToPersist } from "../shared/store.js";

// A group of radio buttons over what is chosen: `now()` is its value, `take(value, input)` chooses another.
function choice(id, now, take) {
  const inputs = [.../** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll(`#${id} input`))];
  const show = () => inputs.forEach((input) => { input.checked = input.value === now(); });
  for (const input of inputs) input.addEventListener("change", () => take(input.value, input));
  show();
  return show;
}

onLook(choice("looks", look, chooseLook));
const system = () => chosen("units", document.documentElement.dataset.system);
const showUnchosen = () => { document.getElementById("unchosen").hidden = chosen("units", null) !== null; };
function chooseSystem(name) {
  choose("units", name);
  showUnchosen();
}
choice("units", system, chooseSystem);
showUnchosen();
const readiness = document.getElementById("readiness");
const version = document.getElementById("version");
const stays = document.getElementById("stays"); // there is none where there is one language alone
const data = pageData(new URL("../", document.baseURI));

// Every page of the language comes to this phone first; a phone that cannot get all of it stays as it is.
async function chooseLanguage(language, address) {
  const { words } = await data;
  stays.textContent = language === "auto" ? "" : stays.dataset.comes;
  const fault = language === "auto" ? null : await carryLanguage(language);
  if (fault) {
    showLanguage();
    stays.textContent = fault.cause === "lost" ? stays.dataset.signal : `${stays.dataset.stays} ${fill(words.start.cause[fault.cause] ?? "", fault)}`;
    return;
  }
  chooseSystem(system()); // another language brings other words, never other units
  choose("language", language);
  if (language === "auto") location.reload();
  else location.assign(address);
}

// A language that is chosen holds on every page; the phone's own is found by theme.js.
const showLanguage = choice("language", () => chosen("language", "auto"), (language, { dataset }) => {
  chooseLanguage(language, dataset.address);
});

const keeping = document.getElementById("keeping");
askToPersist().then((answer) => {
  keeping.dataset.state = { kept: "yes", unpromised: "partly", unkept: "no" }[answer];
  keeping.textContent = keeping.dataset[answer];
});
watchHoldings(({ version: digest, date }) => {
  if (!digest) return;
  version.textContent = fill(version.dataset.version, { date, version: digest });
  version.hidden = false;
});
const { words } = await data;
watchReadiness(words.start, (state, sentence) => {
  readiness.dataset.state = state;
  readiness.textContent = sentence;
});
