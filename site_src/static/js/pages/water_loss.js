// Loss of water: three gauges in one look, and the side to go to first. calc.diagnosis.water_loss reads the table.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { enterLink } from "../diagnose/enter.js";
import { gauge as dial } from "../line/gauge.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { orderLine } from "../shared/order.js";
import { colon, fill, pageData } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";

const DRAFT = "water-loss";
const GAUGES = ["intake", "master", "line"];
// Where a needle is drawn for what is said of it: a picture, and no figure of any rig.
const FACES = { intake: { least: -30, end: 150, step: 30 }, master: { end: 400, step: 100 }, line: { end: 400, step: 100 } };
const NEEDLES = { steady: 60, zero: 0, vacuum: -20, flutters: 40, usual: 200, low: 80, none: 0 };
const SWAY = 20;
const place = document.getElementById("water");
const acts = document.getElementById("acts");
const starting = calc.start();
const { answers, rows, sees, shown, sides, orders, words } = await pageData();
let seen = {};

function put(next) {
  seen = next;
  keep(DRAFT, seen);
  change();
}

const { change } = answering(() => calc.ask("water_loss.side", { seen }, { rows }), (answer) => {
  const { sides: open, unread } = answer ?? { sides: [], unread: [] };
  const [side] = open;
  const isOne = open.length === 1;
  render(html`
    ${GAUGES.map(gaugeView)}
    <div role="status" class="side">${!answer ? nothing : isOne ? sideView(side) : open.length ? openView(open, unread) : html`<p class="notice">${words.water.again}</p>`}</div>`, place);
  render(html`
    <button type="button" class="key" @click=${() => put({})}>${words.water.clear}</button>
    <a class="key ${isOne ? "key-act" : ""}" href=${enterLink({ signs: { [isOne ? sides[side].enters : sides.supply.enters]: "seen", ...read() }, shown })}>${words.water.go_on}</a>`, acts);
});

// What the gauges already said, as signs of a diagnosis.
const read = () => Object.assign({}, ...GAUGES.map((gauge) => sees[gauge]?.[seen[gauge]]));

// Where the needle of a gauge is drawn: the line's beside the master's, of which it is said.
function needleOf(gauge) {
  if (gauge !== "line") return NEEDLES[seen[gauge]] ?? null;
  const master = NEEDLES[seen.master] ?? NEEDLES.usual;
  return { with: master, below: master / 3, above: master + 100 }[seen.line] ?? null;
}

const gaugeView = (gauge) => html`
  <div class="gauge-row">
    ${dial({ ...FACES[gauge], value: needleOf(gauge), sway: seen[gauge] === "flutters" ? SWAY : 0, size: "small",
      name: [words.gauge[gauge], words.gauge_answer[gauge][seen[gauge]]].filter(Boolean).join(`${colon} `) })}
    ${chips({ name: gauge, legend: words.gauge[gauge], value: seen[gauge],
      choices: answers[gauge].map((id) => ({ id, label: words.gauge_answer[gauge][id] })),
      change: (answer) => put({ ...seen, [gauge]: answer }) })}
  </div>`;

const openView = (open, unread) => html`
  <p>${unread.length === GAUGES.length ? words.water.told : fill(words.water.open, {
    sides: open.map((side) => words.side[side].name).join(", "), gauges: unread.map((gauge) => words.gauge[gauge]).join(", ") })}</p>`;

const sideView = (side) => html`
  <section>
    <h2>${words.water.first_side}${colon} ${words.side[side].name}</h2>
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
