// The start page: what to set for each bed of the chosen rig, as it was last worked out and then anew; without a rig, four
// usual layouts as examples.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { calc } from "../shared/engine.js";
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";
import { watchReadiness } from "../shared/readiness.js";
import { overdue } from "../shared/rig_status.js";
import { fill, home, pageData, unitWords } from "../shared/site.js";
import { changedBed } from "../pressure/origin.js";
import { unitsOnce } from "../shared/units.js";
import { toDecision, undecided } from "../service/failed.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";

const place = document.getElementById("beds");
const checks = document.getElementById("checks");
const link = document.getElementById("rig");
const failed = /** @type {HTMLAnchorElement} */ (document.getElementById("failed"));
const readiness = document.getElementById("readiness");
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const system = chosenSystem(data.systems);
const u = unitWords(words, system);
const pressure = new URL("pressure/", home);
const basis = basisOf(rig, system, data.version);

const detail = (row) => [words.start[row.code], ...(row.card ? [words.start.card] : [])].map((says) => fill(says, { ...u, ...row })).join(" · ");

// A bed with a fault leads to the rig's profile, where it is named; what stops a bed, Pressure says.
const nameOf = (row) => [row.place, row.tip].filter((part) => part !== undefined).join(",");
const addressOf = (row) => (row.code.startsWith("faulty") ? new URL("rig/", home).href : `${pressure}#${row.link ?? `bed=${nameOf(row)}`}`);

// The bed whose layout was changed on Pressure says so, and leads to that layout as it was left.
let changed = rig && changedBed(rig);
const isChanged = (row) => row.pressure !== null && row.place !== undefined && nameOf(row) === changed;

let standing = null; // the answer that is on the screen
let stood = window.painted ?? null; // the rows that stood on the screen before the live answer

// What stood for a bed before, where that was another number.
const was = (row) => stood?.find(({ name, pressure }) => name === row.name && pressure !== null && pressure !== row.pressure)?.pressure;

const bed = (row) => html`
  <li><a class="bed" href=${isChanged(row) ? pressure.href : addressOf(row)}>
    <span>${row.name}<small>${row.pressure === null ? nothing : detail(row)}</small>${isChanged(row) ? html`<small class="bed-changed">${words.start.changed}</small>` : nothing}${was(row) ? html`<small class="bed-was">${fill(words.start.was, { was: was(row) })}</small>` : nothing}</span>
    ${row.pressure === null ? html`<b class="bed-none">${detail(row)}</b>` : html`<b class="bed-figure ${row.is_over ? "bed-over" : ""}">${row.pressure}</b>`}
  </a></li>`;

function draw({ rows, is_faulty: isFaulty }, isExample) {
  place.toggleAttribute("data-example", isExample);
  render(html`
    <div class="beds-head"><b>${isExample ? html`${words.start.example} · ` : nothing}${words.start.set}</b> <span>${u.u_pressure}</span></div>
    ${isFaulty ? html`<p class="notice">${words.start.faulty}</p>` : nothing}
    <ul>${rows.map(bed)}</ul>
    <a class="beds-more" href=${isExample || !rows.length ? new URL("rig/", home).href : pressure.href}>
      ${isExample ? words.start.put_in : rows.length ? words.start.another : words.start.no_beds}<span aria-hidden="true">›</span></a>`, place);
}

async function start() {
  if (!rig) return draw({ rows: data.examples[system], is_faulty: false }, true);
  link.textContent = rig.name;
  showOverdue();
  showFailed();
  const last = lastAnswer("start", basis);
  if (last) stand(last);
  const answer = await calc.ask("beds_page.answer", { profile: rig }, { shelf: data.shelf, units: unitsOnce(data.systems)(system) });
  stand(answer);
  performance.mark("live-answer");
  const rows = answer.rows.map((row) => ({ ...row, detail: detail(row), address: addressOf(row), bed: nameOf(row) }));
  const of = answer.is_faulty ? null : [rig.id, system, data.version, document.documentElement.lang]; // see first_answer.js
  keepAnswer("start", basis, { ...answer, rows, of, unit: u.u_pressure, rig: rig.name, more: { text: words.start.another, address: pressure.href }, changed: words.start.changed });
}

// The way to the checks says how many are overdue; what limits the rig stands above every page.
function showOverdue() {
  const count = overdue(rig.id);
  checks.classList.toggle("start-overdue", count > 0);
  checks.textContent = count ? fill(words.start.overdue, { count }) : words.start.checks;
}

// A pump that failed its test stands there until somebody decides what the rig may do.
async function showFailed() {
  const test = await undecided(rig);
  failed.hidden = !test;
  if (test) failed.href = toDecision(test);
}

// Where this page is gone back to as it was left.
addEventListener("pageshow", ({ persisted }) => {
  if (!persisted || !rig) return;
  showOverdue();
  showFailed();
  changed = changedBed(rig);
  if (standing) draw(standing, false);
});

function stand(answer) {
  standing = answer;
  draw(answer, false);
  stood ??= answer.rows;
  if (!performance.getEntriesByName("rig-answers").length) performance.mark("rig-answers");
}

watchReadiness(words.start, (state, sentence) => {
  readiness.hidden = false;
  readiness.dataset.state = state;
  render(state === "yes" ? sentence : html`<a class="on-hold" href=${new URL("all/#phone", home).href}>${sentence}</a>`, readiness);
}, "short_");
place.replaceChildren();
await start();
