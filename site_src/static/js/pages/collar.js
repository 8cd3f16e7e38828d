// Where the collar can be: each proof as a row of chips, the places they allow above them. calc.diagnosis.collar does the weighing.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { enterLink } from "../diagnose/enter.js";
import { engine } from "../shared/engine.js";
import { orderView } from "../shared/order.js";
import { colon, fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { shape } from "../shared/warning.js";

const DRAFT = "collar";
const DOUBT = "pump_fails"; // what answers proofs that contradict each other
const place = document.getElementById("collar");
const starting = engine();
const { proofs, orders, words } = await pageData();
let given = {};
let call = null;

function put(next) {
  given = next;
  keep(DRAFT, given);
  draw();
}

const named = (list) => list.map((proof) => words.proof[proof]).join(", ");

function draw() {
  const told = call("collar.places", { proofs, seen: given });
  render(html`
    <div role="status">
      ${alarmOrders(told).map((name) => orderView({ order: orders[name], words }))}
      ${told.contradictions.length && !told.alarms.length
        ? html`
          <section class="shout" role="alert">
            <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
            <h2>${words.collar.shout}</h2>
            ${told.contradictions.map(([one, other]) => html`<p>${said(one)} ✕ ${said(other)}</p>`)}
            <p>${words.collar.shout_do}</p>
            <p>${orders[DOUBT].short}</p>
          </section>`
        : nothing}
      <div class="shaft">${told.places.map((spot) => spotView(spot, told))}</div>
      ${told.places.filter((spot) => told.candidates.includes(spot.place)).map((spot) => html`
        <p class="spot-means"><b>${words.collar_place[spot.place]}${colon}</b> ${words.collar_meaning[spot.place]}</p>`)}
      <div class="spot spot-never"><b>${words.collar.never}</b><span>${words.collar.never_told}</span></div>
    </div>
    <p>${Object.keys(given).length ? words.collar.lamps : words.collar.told}</p>
    ${proofs.map((proof) => chips({
      name: proof.id, legend: words.proof[proof.id], value: given[proof.id],
      choices: proof.answers.map(({ id }) => ({ id, label: words.proof_answer[proof.id][id] })),
      change: (answer) => put({ ...given, [proof.id]: answer }),
    }))}
    <div class="rows">
      ${told.silent.length ? html`<p>${fill(words.collar.silent, { proofs: named(told.silent) })}</p>` : nothing}
      <a class="key key-wide" href=${enterLink({ signs: signsOf(told) })}>${words.collar.find}</a>
      <button type="button" class="key key-wide" @click=${() => put({})}>${words.collar.clear}</button>
    </div>`, place);
}

// What was answered, as signs of the diagnosis.
function signsOf(told) {
  const denied = told.contradictions.flat();
  const seen = proofs.map((proof) => {
    const answer = proof.answers.find(({ id }) => id === given[proof.id]);
    return answer?.sign ?? (denied.includes(proof.id) ? answer?.denied : undefined);
  });
  return Object.fromEntries(seen.filter(Boolean).map((sign) => [sign, "seen"]));
}

const said = (proof) => `${words.proof[proof]}${colon} ${words.proof_answer[proof][given[proof]]}`;

// The orders of the proofs whose answer is a hazard's.
const alarmOrders = (told) => [...new Set(told.alarms.map((alarm) =>
  proofs.find(({ id }) => id === alarm).answers.find(({ id }) => id === given[alarm]).order))];

function spotView(spot, told) {
  const open = told.candidates.includes(spot.place);
  return html`
    <div class="spot ${open ? "spot-open" : spot.against.length ? "spot-out" : ""}">
      <b>${words.collar_place[spot.place]}</b>
      <span>${fill(words.collar.count_for, { count: spot.for.length })}</span>
      <span>${fill(words.collar.count_against, { count: spot.against.length })}</span>
    </div>`;
}

// What was kept, as far as this version still asks for it.
const known = (left) => Object.fromEntries(proofs
  .filter((proof) => proof.answers.some(({ id }) => id === left?.[proof.id]))
  .map((proof) => [proof.id, left[proof.id]]));

const [started, left] = await Promise.all([starting, kept(DRAFT)]);
call = started;
given = known(left);
place.replaceChildren();
draw();
