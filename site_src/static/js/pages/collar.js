// Where the collar can be: each proof as a row of chips, the places they allow above them. calc.diagnosis.collar does the weighing.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { enterLink } from "../diagnose/enter.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { orderView } from "../shared/order.js";
import { colon, fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { shape } from "../shared/warning.js";

const DRAFT = "collar";
const DOUBT = "pump_fails"; // what answers proofs that contradict each other
const place = document.getElementById("collar");
const acts = document.getElementById("acts");
const starting = calc.start();
const { proofs, orders, words } = await pageData();
let seen = {}; // answers by proof

function put(next) {
  seen = next;
  keep(DRAFT, seen);
  change();
}

const named = (list) => list.map((proof) => words.proof[proof]).join(", ");

const { change } = answering(() => calc.ask("collar.places", { seen }, { proofs }), (answer) => {
  render(html`
    <div role="status" class="collar-now">${answer ? placesView(answer) : nothing}</div>
    <p>${Object.keys(seen).length ? words.collar.lamps : words.collar.told}</p>
    ${proofs.map((proof) => chips({
      name: proof.id, legend: words.proof[proof.id], value: seen[proof.id],
      choices: proof.answers.map(({ id }) => ({ id, label: words.proof_answer[proof.id][id] })),
      change: (id) => put({ ...seen, [proof.id]: id }),
    }))}
    ${answer?.silent.length ? html`<p>${fill(words.collar.silent, { proofs: named(answer.silent) })}</p>` : nothing}`, place);
  render(html`
    <button type="button" class="key" @click=${() => put({})}>${words.collar.clear}</button>
    <a class="key ${answer?.contradictions.length ? "key-act" : ""}" href=${enterLink({ signs: answer ? signsOf(answer) : {} })}>${words.collar.find}</a>`, acts);
});

const placesView = (answer) => html`
      ${alarmOrders(answer).map((name) => orderView({ order: orders[name], words }))}
      ${answer.contradictions.length && !answer.alarms.length
        ? html`
          <section class="plate hatched shout" role="alert">
            <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
            <h2>${words.collar.shout}</h2>
            ${answer.contradictions.map(([one, other]) => html`<p>${said(one)} ✕ ${said(other)}</p>`)}
            <p>${words.collar.shout_do}</p>
            <p>${orders[DOUBT].short}</p>
          </section>`
        : nothing}
      <div class="shaft">${answer.places.map((spot) => spotView(spot, answer))}</div>
      ${answer.places.filter((spot) => answer.candidates.includes(spot.place)).map((spot) => html`
        <p class="spot-means"><b>${words.collar_place[spot.place]}${colon}</b> ${words.collar_meaning[spot.place]}</p>`)}
      <p class="never"><b>${words.collar.never}</b> ${words.collar.never_told}</p>`;

// What was answered, as signs of the diagnosis.
function signsOf(answer) {
  const denied = answer.contradictions.flat();
  const signs = proofs.map((proof) => {
    const said = proof.answers.find(({ id }) => id === seen[proof.id]);
    return said?.sign ?? (denied.includes(proof.id) ? said?.denied : undefined);
  });
  return Object.fromEntries(signs.filter(Boolean).map((sign) => [sign, "seen"]));
}

const said = (proof) => `${words.proof[proof]}${colon} ${words.proof_answer[proof][seen[proof]]}`;

// The orders of the proofs whose answer is a hazard's.
const alarmOrders = (answer) => [...new Set(answer.alarms.map((alarm) =>
  proofs.find(({ id }) => id === alarm).answers.find(({ id }) => id === seen[alarm]).order))];

function spotView(spot, answer) {
  const open = answer.candidates.includes(spot.place);
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

const [left] = await Promise.all([kept(DRAFT), starting]);
seen = known(left);
place.replaceChildren();
change();
