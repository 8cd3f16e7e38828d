// The bar and the strip of every page: day or night by one tap, what runs on another page, and what the rig may not do.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chosen } from "./choices.js";
import { door } from "./door.js";
import { chooseLook, isNight, onLook } from "./look.js";
import { showStatus } from "./rig_status.js";
import { running } from "./running.js";
import { fill, home, pageData } from "./site.js";
import { minutes } from "./times.js";

const TICK_MS = 1000;
const MINUTE_MS = 60000;
const units = () => chosen("units", null);
const unitsThen = units();
const LONGEST_MS = 24 * 3600 * 1000; // what began before that is no longer run
const key = document.getElementById("look");
const strip = document.getElementById("strip");

// A skip to the page changes no address: what stands in it says what the page shows.
document.querySelector(".skip")?.addEventListener("click", (event) => {
  event.preventDefault();
  document.getElementById("page").focus();
});

const showLook = () => key.setAttribute("aria-pressed", String(isNight()));
key.addEventListener("click", () => chooseLook(isNight() ? "day" : "night"));
onLook(showLook);

const page = (address) => new URL(address, home).pathname.replace(/index\.html$/, "");
const isHere = (address) => page(address) === page(location.href);

// A clock where a reading falls due by it; else how many minutes ago it was begun, which no one takes for the time of day.
const time = (age, due) => (due === undefined ? fill(strip.dataset.since, { n: Math.floor(age / MINUTE_MS) }) : minutes(age / 1000));

const titles = new Map(); // of what was begun in another language, by where its words are

function titleOf({ title, said, lang }) {
  const name = JSON.stringify(said);
  if (!said || !lang || lang === document.documentElement.lang) return title;
  if (!titles.has(name)) {
    titles.set(name, title);
    const [of, ...path] = said;
    pageData(new URL(of, home)).then((data) => {
      titles.set(name, path.reduce((part, key) => part?.[key], data) ?? title);
      show();
    }, () => {}); // not on this phone: it stays as it was written
  }
  return titles.get(name);
}

function line(what) {
  const { address, began_at: began, due_at: due } = what;
  const now = Date.now();
  const isDue = due !== undefined && now >= due;
  const age = now - began;
  return html`<a class="strip-line ${isDue ? "strip-due" : ""}" href=${new URL(address, home).href}>
    <b>${titleOf(what)}${age >= 0 ? html` <span class="strip-clock">${time(age, due)}</span>` : nothing}</b>
    <span>${isDue ? strip.dataset.read : strip.dataset.back} ›</span></a>`;
}

let ticking = 0;

// While something runs elsewhere its clock goes on; else nothing is drawn.
function show() {
  const others = Object.values(running()).filter(({ address, began_at: began }) => !isHere(address) && Date.now() - began < LONGEST_MS);
  strip.hidden = !others.length;
  render(others.length ? html`<div class="strip-lines">${others.map(line)}</div>${door(strip.dataset.danger)}` : nothing, strip);
  clearTimeout(ticking);
  if (others.length) ticking = setTimeout(show, TICK_MS);
}

function showAll() {
  show();
  showStatus();
}

showLook();
showAll();
addEventListener("storage", showAll);
addEventListener("pageshow", ({ persisted }) => {
  if (persisted && units() !== unitsThen) location.reload(); // chosen on All pages while this page lay behind it
  else showAll();
});
