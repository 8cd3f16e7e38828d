// The order that answers a hazard, the same on every page: its grade in word, shape and colour, then its acts by number.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon } from "./site.js";
import { shape } from "./warning.js";

export const GRADES = ["danger", "hold", "note"];
const LEVEL = { danger: "stop", hold: "hold", note: "note" };
const KIND = { danger: "stop", hold: "caution", note: "note" };

// Orders by id as they are told to a rig of this drive; where it is not known, to any rig.
export const ordersFor = (orders, drive) =>
  Object.fromEntries(Object.entries(orders).map(([name, order]) => [name, { ...order, ...order.by_drive?.[drive] }]));

// words: of the view, the section `order`; here: where the controls are on this rig, if a page adds that; isStop: it stops what
// a person does, whatever its grade.
export function orderView({ order, words, here = null, isStop = false }) {
  return html`
    <section class="order order-${order.grade} ${order.grade === "hold" ? "hatched" : ""}" role=${order.grade === "note" && !isStop ? "note" : "alert"}>
      ${gradeView(order, words)}
      <h2>${order.title}</h2>
      <ol>${order.do.map((act) => html`<li>${act}</li>`)}</ol>
      ${here ? html`<p class="order-here"><b>${words.order.here}${colon}</b> ${here}</p>` : nothing}
      <p class="order-never">${order.never}</p>
      ${order.rig ? html`<p><b>${words.order.rig}${colon}</b> ${order.rig}</p>` : nothing}
      ${sayView(order, words)}
    </section>`;
}

// The order once no try is left: out of service, without the act that would offer another.
export const finalOf = (order, { shift }) => ({
  ...order, title: shift.twice_title, do: [...order.safe, shift.twice_do], never: `${shift.twice_never} ${order.never}`, rig: order.rig_final, radio: order.radio_final,
});

const gradeView = ({ grade }, words) => html`<p class="order-grade">${shape(LEVEL[grade])}<b>${words.order[grade]}</b></p>`;

const sayView = ({ radio }, words) => (radio ? html`<p class="order-say"><b>${words.order.radio}${colon}</b> ${radio}</p>` : nothing);

// Once its acts are done: what the rig is after it.
export const aftermathView = ({ order, words }) => html`
  <section class="order order-${order.grade}">
    ${gradeView(order, words)}
    <h3>${order.title}</h3>
    <p class="order-never">${order.rig}</p>
    ${sayView(order, words)}
  </section>`;

// Its one line, beside a step or an answer that it belongs to.
export const orderLine = ({ grade, short }, words) => html`
  <div class="warning warning-${KIND[grade]}">${shape(LEVEL[grade])}<p><b>${words.order[grade]}</b> ${short}</p></div>`;

// Several of them, the gravest first.
export const orderLines = (orders, words) => Object.values(orders)
  .sort((one, other) => GRADES.indexOf(one.grade) - GRADES.indexOf(other.grade)).map((order) => orderLine(order, words));

// An order as it is read aloud.
export const spokenOrder = (order) => [order.title, ...order.do, order.never, order.rig ?? ""].join(" ");
