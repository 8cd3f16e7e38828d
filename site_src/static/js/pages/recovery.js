// The recovery card of the chosen rig, in the size of the paper. What the profile does not hold is a line to fill in by hand.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { ordersFor } from "../shared/order.js";
import { PaperSize } from "../shared/paper_size.js";
import { chosenRig } from "../rig/chosen.js";
import { inWords, known as answersOf, mayFit, signOf } from "../shift/known.js";
import { colon, fill, pageData } from "../shared/site.js";

const NEEDLESS = { before_drive: "light_later", after_drive: "light_first" };
const OWN_LINES = 8;
const SAID_AFTER = ["road_fails"]; // of this the card also has room to say what the rig is afterwards
const place = document.getElementById("recovery");
const dock = document.getElementById("acts");
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const answered = answersOf(data.questions, rig);
const orders = ordersFor(data.orders, answered.drive);
const acts = data.steps.filter((step) => mayFit(step.only_if, answered) && step.id !== NEEDLESS[rig?.pump_light]);
// Whether the profile says which of the acts are this rig's.
const isSettled = acts.every((step) => Object.keys(step.only_if).every((question) => question in answered));
const mayShift = mayFit(data.split, answered);
const paper = new PaperSize({ kind: "paper", sizes: ["pocket", "a4", "letter"], words: words.card, redraw: draw });

const blank = html`<span class="blank">${words.recovery.blank}</span>`;
const known = (value) => value || blank;
const fact = (name, value) => html`<dt>${name}</dt><dd>${known(value)}</dd>`;

function draw() {
  render(html`
    <div class="no-print">${paper.view()}</div>
    ${rig ? card() : html`<p class="notice">${words.recovery.nobody}</p>`}`, place);
  dock.hidden = !rig;
  render(html`<button type="button" class="key key-act" @click=${() => window.print()}>${words.recovery.print}</button>`, dock);
}

const card = () => html`
  <article class="recovery">
    <h2>${rig.name}</h2>
    ${whole("moved")}
    <section class="first"><h3>${words.recovery.order}</h3>${order()}</section>
    ${mayShift ? shiftFacts() : nothing}
    <section><h3>${words.recovery.stops}</h3><dl><dd>${known(rig.stop_controls)}</dd></dl></section>
    ${whole("pump_fails", html`${blank}${blank}`)}
    <section>${["steam", "line_lost", "dead_throttle", ...(mayShift ? ["grinding"] : []), "road_fails"].map(line)}</section>
    ${mayFit(data.override, answered) ? override() : nothing}
    <p class="recovery-filled">${fill(words.recovery.filled, { name: rig.name, dated: rig.dated || words.recovery.undated })} ${words.recovery.first}</p>
  </article>`;

// Of a pump that a collar joins to the driveshaft.
const shiftFacts = () => html`
    <section>
      <dl>
        ${fact(words.recovery.gear, rig.pump_gear)}
        ${fact(words.recovery.light, words.option[rig.pump_light])}
        ${fact(words.recovery.speed, rig.speed_in_pump)}
      </dl>
      <p>${words.recovery.lights}</p>
    </section>`;

// An order in all its acts, and one in its one line; on paper the grade is said in its word alone.
const whole = (name, more) => html`
    <section class="recovery-order ${orders[name].grade === "danger" ? "recovery-danger hatched" : ""}">
      <h3>${words.order[orders[name].grade]}${colon} ${orders[name].title}</h3>
      <ol>${orders[name].do.map((act) => html`<li>${act}</li>`)}</ol>
      <p><b>${orders[name].never}</b> ${orders[name].rig}</p>
      ${more ?? nothing}
    </section>`;

const line = (name) => html`<p><b>${words.order[orders[name].grade]}${colon}</b> ${orders[name].short} ${SAID_AFTER.includes(name) ? orders[name].rig : nothing}</p>`;

const override = () => html`
    <section class="recovery-override">
      <h3>${orders.override.title}</h3>
      <p>${orders.override.when} ${orders.override.do.join(" ")} <b>${orders.override.never}</b> ${orders.override.rig}</p>
      <dl>
        ${fact(words.recovery.place, rig.override_place)}
        ${fact(words.recovery.way, rig.override_way)}
        ${fact(words.recovery.tool, rig.override_tool)}
      </dl>
    </section>`;

// The acts with their proofs where the profile settles them; else lines for what the makers' manuals say.
function order() {
  if (!isSettled) {
    return html`<p>${words.recovery.order_other}</p><ol>${Array.from({ length: OWN_LINES }, () => html`<li>${blank}</li>`)}</ol>`;
  }
  const { drive, shift_control, transmission } = answered;
  const what = inWords({ drive, ...(mayShift && { shift_control }), transmission }, words);
  return html`
    <p>${fill(words.recovery.order_for, { what })}</p>
    <ol>${acts.map((step) => html`<li><b>${step.act}</b> <i aria-hidden="true"></i> <span>${signOf(step, answered)}</span></li>`)}</ol>`;
}

place.replaceChildren();
draw();
