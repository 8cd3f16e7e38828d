// The orders of a diagnosis: what is done before any look where it opened with a hazard, and what the rig is after it.
import { html } from "../../vendor/lit-html/lit-html.js";
import { aftermathView, GRADES, orderView } from "../shared/order.js";

const RED = { moved: "moves", steam: "steam" }; // the hazards that a red key leads to at any time, with their signs

const REPEATS = ["repeat_clunk", "road_repeat_clunk"]; // signs of what the one repeat of a shift brought

const isLast = ({ isOut, signs }) => isOut || REPEATS.some((sign) => signs[sign] === "not_seen");

// Whether the one try that an order ends with was made here: its acts were carried out, and the cause is still looked for.
const isTried = ({ id, do: acts, safe }, { carriedOut }) => acts.length > safe.length && carriedOut?.includes(id);

// An order as this diagnosis tells it: once its one repeat failed, or the rig is out of service, without another try.
export function orderOf(name, state, data) {
  const order = data.orders[name];
  return order.rig_final && (isLast(state) || isTried(order, state)) ? { ...order, do: order.safe, rig: order.rig_final, radio: order.radio_final } : order;
}

// Orders of signs, the gravest first.
const ordersOf = (signs, data) => [...new Set(signs.map((sign) => data.signs[sign].order).filter(Boolean))]
  .sort((one, other) => GRADES.indexOf(data.orders[one].grade) - GRADES.indexOf(data.orders[other].grade));

// The orders of what a diagnosis opened with.
const ordersAtStart = (state, data) => ordersOf(state.complaints, data);

const seen = ({ signs }) => Object.keys(signs).filter((sign) => signs[sign] === "seen");

// The one that is still to be carried out before the next look, if any: of what it opened with, and of what a look brought
// to light. One that came from a card was shown there.
export const orderToDo = (state, data) => ordersOf(seen(state), data).find((name) => ![state.carriedOut, state.shown].some((names) => names?.includes(name)));

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

// What a hazard leaves the rig as, whatever the diagnosis ends in. remedy: of a cause that needs no technician: with that the
// rig has its last try, and nothing is called in once it was seen to work.
export const afterwards = (state, data, remedy = null) => ordersAtStart(state, data).map((name) => orderOf(name, state, data)).filter(({ rig }) => rig)
  .map((order) => (remedy && !isLast(state) ? { ...order, rig: data.orders[order.id].rig, radio: remedy.isDone ? null : order.radio } : order))
  .map((order) => aftermathView({ order, words: data.words }));
