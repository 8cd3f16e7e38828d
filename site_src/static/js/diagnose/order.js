// The orders of a diagnosis: what is done before any look where it opened with a hazard, and what the rig is after it.
import { html } from "../../vendor/lit-html/lit-html.js";
import { aftermathView, GRADES, orderView } from "../shared/order.js";

const RED = { moved: "moves", steam: "steam" }; // the hazards that a red key leads to at any time, with their signs

const REPEATS = ["repeat_clunk", "road_repeat_clunk"]; // signs of what the one repeat of a shift brought

// An order as this diagnosis tells it: once its one repeat failed, or the rig is out of service, without another try.
export function orderOf(name, { isOut, signs }, data) {
  const order = data.orders[name];
  const isLast = isOut || REPEATS.some((sign) => signs[sign] === "not_seen");
  return isLast && order.rig_final ? { ...order, do: order.safe, rig: order.rig_final, radio: order.radio_final } : order;
}

// Orders of signs, the gravest first.
const ordersOf = (signs, data) => [...new Set(signs.map((sign) => data.signs[sign].order).filter(Boolean))]
  .sort((one, other) => GRADES.indexOf(data.orders[one].grade) - GRADES.indexOf(data.orders[other].grade));

// The orders of what a diagnosis opened with.
const ordersAtStart = (state, data) => ordersOf(state.complaints, data);

const seen = ({ signs }) => Object.keys(signs).filter((sign) => signs[sign] === "seen");

// The one that is still to be carried out before the next look, if any: of what it opened with, and of what a look brought
// to light. One that came from a card was shown there.
export const orderToDo = (state, data) => ordersOf(seen(state), data).find((name) => !state.carriedOut?.includes(name));

// The orders of the danger signs that were seen: they end every diagnosis.
export const ordersOfAlarms = (state, data) =>
  ordersOf(seen(state).filter((sign) => data.signs[sign].alarm), data);

// Whether no look may move the shift any more.
export const noShift = (state, data) => Boolean(state.isOut) || ordersOf(seen(state), data).includes("grinding");

export const redKeys = ({ data, danger }) => Object.entries(RED).map(([name, sign]) => html`
  <button type="button" class="key key-danger" @click=${() => danger(sign)}>${data.orders[name].title}</button>`);

export const firstView = ({ name, state, data }) => html`${orderView({ order: orderOf(name, state, data), words: data.words })}`;

export const firstActs = ({ name, data, again, done, danger }) => html`
  <button type="button" class="key key-half" @click=${again}>${data.words.diagnose.again}</button>
  <button type="button" class="key key-half key-act" @click=${() => done(name)}>${data.words.diagnose.carried_out}</button>
  ${redKeys({ data, danger })}`;

// What a hazard leaves the rig as, whatever the diagnosis ends in.
export const afterwards = (state, data) =>
  ordersAtStart(state, data).map((name) => orderOf(name, state, data)).filter(({ rig }) => rig).map((order) => aftermathView({ order, words: data.words }));
