// The order that answers a hazard, the same on every page: its grade in word, shape and colour, then its acts by number.
import { html, nothing } from "../vendor/lit-html/lit-html.js";
import { colon } from "./site.js";
import { shape, warning } from "./warning.js";

const LEVEL = { danger: "stop", hold: "hold", note: "note" };

// words: of the view, the section `order`; here: where the controls are on this rig, if a page adds that.
export function orderView({ order, words, here, title = order.title }) {
  return html`
    <section class="order order-${order.grade}" role=${order.grade === "note" ? "note" : "alert"}>
      <p class="order-grade">${shape(LEVEL[order.grade])}<b>${words.order[order.grade]}</b></p>
      <h2>${title}</h2>
      <ol>${order.do.map((act) => html`<li>${act}</li>`)}</ol>
      ${here ? html`<p class="order-here"><b>${words.order.here}${colon}</b> ${here}</p>` : nothing}
      <p class="order-never">${order.never}</p>
      ${order.rig ? html`<p><b>${words.order.rig}${colon}</b> ${order.rig}</p>` : nothing}
      ${order.radio ? html`<p class="order-say"><b>${words.order.radio}${colon}</b> ${order.radio}</p>` : nothing}
    </section>`;
}

// Its one line, beside a step or an answer that it belongs to.
export const orderLine = (order, words) => warning(order.grade === "note" ? "note" : "caution", words.order[order.grade], order.short);

// An order as it is read aloud.
export const spokenOrder = (order, title = order.title) => [title, ...order.do, order.never, order.rig ?? ""].join(" ");
