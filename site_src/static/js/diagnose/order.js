// The orders of a diagnosis: what is done before any look where it opened with a hazard, and what the rig is after it.
import { html } from "../../vendor/lit-html/lit-html.js";
import { aftermathView, GRADES, orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";

const RED = { moved: "moves", steam: "steam" }; // the hazards that a red key leads to at any time, with their signs

// An order as this diagnosis tells it: once its one repeat is used, or the rig is out of service, without another try.
export function orderOf(name, { isOut }, data) {
  const order = data.orders[name];
  return isOut && order.rig_final ? { ...order, do: order.safe, rig: order.rig_final, radio: order.radio_final } : order;
}

// Orders of signs, the gravest first.
const ordersOf = (signs, data) => [...new Set(signs.map((sign) => data.signs[sign].order).filter(Boolean))]
  .sort((one, other) => GRADES.indexOf(data.orders[one].grade) - GRADES.indexOf(data.orders[other].grade));

// The orders of what a diagnosis opened with.
const ordersAtStart = (state, data) => ordersOf(state.complaints, data);

// The one that is still to be carried out before the first look, if any. One that came from a card was shown there.
export const orderToDo = (state, data) => ordersAtStart(state, data).find((name) => !state.carriedOut?.includes(name));

// The orders of the danger signs that were seen: they end every diagnosis.
export const ordersOfAlarms = (state, data) =>
  ordersOf(Object.keys(state.signs).filter((sign) => state.signs[sign] === "seen" && data.signs[sign].alarm), data);

// Whether no look may move the shift any more.
export const noShift = (state, data) => Boolean(state.isOut) || ordersOf(Object.keys(state.signs).filter((sign) => state.signs[sign] === "seen"), data).includes("grinding");

export const redKeys = ({ data, danger, isWide = false }) => Object.entries(RED).map(([name, sign]) => html`
  <button type="button" class="key key-danger ${isWide ? "key-wide" : ""}" @click=${() => danger(sign)}>${shape("stop")}${data.orders[name].title}</button>`);

export const firstView = ({ name, state, data, done, danger, again }) => html`
  ${orderView({ order: orderOf(name, state, data), words: data.words })}
  <div class="rows">
    <button type="button" class="key key-wide key-act" @click=${() => done(name)}>${data.words.diagnose.carried_out}</button>
    ${redKeys({ data, danger, isWide: true })}
    <button type="button" class="key key-wide" @click=${again}>${data.words.diagnose.again}</button>
  </div>`;

// What a hazard leaves the rig as, whatever the diagnosis ends in.
export const afterwards = (state, data) =>
  ordersAtStart(state, data).map((name) => orderOf(name, state, data)).filter(({ rig }) => rig).map((order) => aftermathView({ order, words: data.words }));
