// Loss of water: three gauges in one look, and the side to go to first. calc.diagnosis.water_loss reads the table.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { enterLink } from "../diagnose/enter.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { orderLine } from "../shared/order.js";
import { fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";

const DRAFT = "water-loss";
const GAUGES = ["intake", "master", "line"];
const place = document.getElementById("water");
const starting = calc.start();
const { answers, rows, shown, sides, orders, words } = await pageData();
let seen = {};

function put(next) {
  seen = next;
  keep(DRAFT, seen);
  change();
}

const { change } = answering(() => calc.ask("water_loss.side", { seen }, { rows }), (answer) => {
  const { sides: open, unread } = answer ?? { sides: [], unread: [] };
  const [side] = open;
  render(html`
    <div role="status">${!answer ? nothing : open.length === 1 ? sideView(side) : open.length ? openView(open, unread) : html`<p class="notice">${words.water.again}</p>`}</div>
    ${GAUGES.map((gauge) => chips({ name: gauge, legend: words.gauge[gauge], value: seen[gauge],
      choices: answers[gauge].map((id) => ({ id, label: words.gauge_answer[gauge][id] })),
      change: (answer) => put({ ...seen, [gauge]: answer }) }))}
    ${open.length === 1 ? html`<a class="key key-wide" href=${enterLink({ signs: { [sides[side].enters]: "seen" }, shown })}>${words.water.go_on}</a>` : nothing}
    <div class="rows"><button type="button" class="key key-wide" @click=${() => put({})}>${words.water.clear}</button></div>`, place);
});

const openView = (open, unread) => html`
  <p>${unread.length === GAUGES.length ? words.water.told : fill(words.water.open, {
    sides: open.map((side) => words.side[side].name).join(", "), gauges: unread.map((gauge) => words.gauge[gauge]).join(", ") })}</p>`;

const sideView = (side) => html`
  <section class="verdict">
    <p>${words.water.first_side}</p>
    <h2>${words.side[side].name}</h2>
    <div class="say"><b>${words.water.radio}</b><p>${words.side[side].say}</p></div>
    <ul class="listed">${words.side[side].do.map((line) => html`<li>${line}</li>`)}</ul>
    ${sides[side].warns.map((name) => orderLine(orders[name], words))}
  </section>`;

// What was kept, as far as this version still asks for it.
const known = (left) => Object.fromEntries(GAUGES.filter((gauge) => answers[gauge].includes(left?.[gauge])).map((gauge) => [gauge, left[gauge]]));

const [left] = await Promise.all([kept(DRAFT), starting]);
seen = known(left);
place.replaceChildren();
change();
