// How a diagnosis ends: a cause that stands, a stop, or what stands in the way of the next look.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { defectLink, scopeOf } from "../shared/defect_link.js";
import { colon } from "../shared/site.js";
import { orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";
import { afterwards, orderOf, ordersOfAlarms } from "./order.js";
import { remedyOf } from "./remedy.js";
import { askedOf, saidList, sayFirst } from "./said.js";

const MOST_LIKELY = 4;

export function endView({ end, ranked, data, state, setEngine, lookAt }) {
  const { words } = data;
  if (end.kind === "danger") return ordersOfAlarms(state, data).map((name) => orderView({ order: orderOf(name, state, data), words }));
  if (end.kind === "engine") return otherEngine({ end, ranked, data, state, setEngine });
  if (end.kind === "stands") {
    return html`${stands({ cause: end.cause, ranked, data, state })}${afterwards(state, data, data.causes[end.cause].out ? null : remedyOf(end.cause, state, data))}`;
  }
  return handOver({ end, ranked, data, state, lookAt });
}

export const endActs = ({ end, data, state, setRole, again, back }) => html`
  ${end.kind === "engine" ? nothing : defectKey({ end, data, state })}
  ${end.kind === "technician" ? html`<button type="button" class="key key-row" @click=${() => setRole("technician")}>${data.words.diagnose.as_technician}</button>` : nothing}
  ${end.kind !== "danger" && state.asked.length ? html`<button type="button" class="key key-half" @click=${back}>${data.words.diagnose.back}</button>` : nothing}
  <button type="button" class="key ${end.kind === "danger" || state.asked.length ? "key-half" : "key-row"}" @click=${again}>${data.words.diagnose.again}</button>`;

// After a red key: the way back for a slip of the finger takes a second touch.
export function slipActs({ end, data, state, isAsked, ask, takeBack, again }) {
  const { diagnose } = data.words;
  return html`${isAsked ? html`
    <button type="button" class="key key-row key-act" @click=${() => ask(false)}>${diagnose.slip_not}</button>
    <button type="button" class="key key-row" @click=${takeBack}>${diagnose.slip_sure}</button>`
    : html`
    <button type="button" class="key key-row" @click=${() => ask(true)}>${diagnose.slip}</button>
    ${defectKey({ end, data, state })}
    <button type="button" class="key key-half" @click=${again}>${diagnose.again}</button>`}`;
}

// A danger leaves its order as much room as there is.
const defectKey = ({ end, data, state }) => html`<a class="key ${end.kind === "danger" ? "key-half" : "key-row"}" href=${defectLink(defectOf({ end, data, state }))}>${data.words.rig_status_acts.write}</a>`;

// What a diagnosis leaves behind as a defect: the cause that stands, the danger, or what it began with, and what else was seen.
function defectOf({ end, data, state }) {
  const { words, causes, orders } = data;
  const [alarm] = ordersOfAlarms(state, data);
  const what = words.name[end.cause] ?? orders[alarm]?.title ?? words.sees[state.complaints[0]];
  return {
    origin: "diagnosis", what, scope: scopeOf(alarm ?? causes[end.cause]?.order),
    seen: [...new Set([...state.complaints, ...state.asked.flatMap(({ settles }) => settles).filter((sign) => state.signs[sign] === "seen")])]
      .map((sign) => words.sees[sign]).filter((seen) => seen && seen !== what).join("; "),
    rank: end.kind === "stands" && !causes[end.cause].out ? "report" : "out_of_service",
  };
}

const hold = (words) => html`<p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>`;

// Nobody may be hurt, and nothing more is to be told from here: what the next person needs, and what the rig may do meanwhile.
function handOver({ end, ranked, data, state, lookAt }) {
  const { words } = data;
  const orders = afterwards(state, data);
  return html`
    <section class="plate hatched hand-over" role="alert">
      ${hold(words)}
      <h2>${words.end[`${end.kind}_title`]}</h2>
      <p>${words.end[end.kind]}</p>
      <h3>${words.diagnose.hand_over}</h3>
      ${saidList({ state, words })}
    </section>
    ${orders.length ? orders : html`
      <p>${words.end.may}</p>
      <p><b>${words.end.may_not}</b></p>
      <div class="say"><b>${words.order.radio}${colon}</b><p>${words.end.radio}</p></div>`}
    ${["technician", "maker"].includes(end.kind) ? lookAgain({ end, ranked, data, state, lookAt }) : nothing}
    ${still({ end, ranked, data, state })}`;
}

// What an operator could not tell the first time can be looked at once more, before the rest goes to a technician.
function lookAgain({ end, ranked, data, state, lookAt }) {
  const { words } = data;
  const unsure = new Set(ranked.causes.filter(({ id }) => end.left.includes(id)).flatMap((cause) => cause.unsure));
  const looks = state.asked.filter(({ said, settles }) => said === "unknown" && settles.some((sign) => unsure.has(sign)));
  return looks.length ? html`
    <h2>${words.diagnose.look_again}</h2>
    <div class="rows">${looks.map((entry) => html`<button type="button" class="key key-wide key-told" @click=${() => lookAt(entry)}>${askedOf(entry, words)}</button>`)}</div>` : nothing;
}

const listed = (words, signs) => html`<ul class="listed">${signs.map((sign) => html`<li>${words.sees[sign]}</li>`)}</ul>`;

function stands({ cause, ranked, data, state }) {
  const { words } = data;
  const { out, source, basis } = data.causes[cause];
  const { isDone, act, radio, order } = remedyOf(cause, state, data);
  return html`
    <section class="plate verdict ${out ? "hatched" : ""}" role="status">
      ${out ? hold(words) : nothing}
      <h2>${words.name[cause]}</h2>
      ${out ? html`<p class="out"><b>${words.diagnose.out}</b></p>` : nothing}
      ${sayFirst({ words, radio })}
      <h3>${isDone ? words.diagnose.done : words.diagnose.do}</h3>
      <p class="act">${act}</p>
    </section>
    ${order ? orderView({ order: orderOf(order, state, data), words }) : nothing}
    <h3>${words.diagnose.why}</h3>
    ${listed(words, ranked.causes.find(({ id }) => id === cause).for)}
    <h3>${words.diagnose.so_far}</h3>
    ${saidList({ state, words })}
    <p>${words.diagnose.stands} ${words.diagnose.first}</p>
    <p class="smallprint"><span lang="en">${source}</span>. ${words.diagnose.basis}${colon} ${words.basis[basis]}.</p>`;
}

// The likeliest causes that something speaks for, whether or not one fits whole, each with what speaks for it and against it, and what was not looked at.
function still({ end, ranked, data, state }) {
  const { words } = data;
  const likeliest = ranked.causes.filter((cause) => cause.for.length).slice(0, MOST_LIKELY);
  const against = ({ against: signs }, said) => signs.filter((sign) => (state.signs[sign] === "seen") === (said === "seen"));
  return likeliest.length ? html`
    <h2>${end.left.length ? words.diagnose.likely : words.diagnose.nearest}</h2>
    ${likeliest.map((cause) => html`
      <section class="fault">
        <h3>${words.name[cause.id]} <span class="basis">${words.likelihood[data.causes[cause.id].likelihood]}</span></h3>
        <p><b>${words.diagnose.speaks_for}${colon}</b> ${cause.for.map((sign) => words.sees[sign]).join("; ")}</p>
        ${["seen", "not_seen"].map((said) => against(cause, said).length ? html`<p><b>${words.diagnose[`against_${said}`]}${colon}</b> ${against(cause, said).map((sign) => words.sees[sign]).join("; ")}</p>` : nothing)}
        ${["unsure", "unasked"].map((kind) => cause[kind].length ? html`<p><b>${words.diagnose[`still_${kind}`]}${colon}</b> ${cause[kind].map((sign) => words.sees[sign]).join("; ")}</p>` : nothing)}
      </section>`)}` : nothing;
}

function otherEngine({ end, ranked, data, state, setEngine }) {
  const { words } = data;
  return html`
    <section>
      <h2 class="ask">${words.end.engine_title}</h2>
      <p>${words.end.engine}</p>
      ${end.engine.map((engine) => html`
        <div class="change">
          <p>${words.end[`${engine}_how`]}</p>
          <button type="button" class="key key-wide" @click=${() => setEngine(engine)}>${words.engine_state[engine]}</button>
        </div>`)}
    </section>
    ${still({ end, ranked, data, state })}`;
}
