// How a diagnosis ends: a cause that stands, a stop, or what stands in the way of the next look.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon } from "../shared/site.js";
import { orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";
import { afterwards, ordersOfAlarms } from "./order.js";
import { sayFirst } from "./start.js";

const MOST_LIKELY = 4;

export function endView({ end, ranked, data, state, setEngine, setRole, again, back }) {
  const { words } = data;
  const screen = {
    danger: () => ordersOfAlarms(state, data).map((name) => orderView({ order: lastTold(data.orders[name], state), words })),
    stands: () => stands({ cause: end.cause, ranked, data }),
    engine: () => otherEngine({ end, ranked, data, setEngine }),
    technician: () => html`${stop(words, end.kind)}${still({ end, ranked, data })}
      <button type="button" class="key key-wide" @click=${() => setRole("technician")}>${words.diagnose.as_technician}</button>`,
  }[end.kind] ?? (() => html`${stop(words, end.kind)}${still({ end, ranked, data })}`);
  return html`
    ${end.kind === "danger" || end.kind === "engine" || end.kind === "stands" ? nothing : afterwards(state, data)}
    ${screen()}
    ${end.kind === "stands" ? afterwards(state, data) : nothing}
    <div class="rows">
      ${end.kind !== "danger" && state.asked.length ? html`<button type="button" class="key key-wide" @click=${back}>${words.diagnose.back}</button>` : nothing}
      <button type="button" class="key key-wide" @click=${again}>${words.diagnose.again}</button>
    </div>`;
}

// An order whose one repeat was told before, or that comes from a rig out of service: its acts without that repeat.
const lastTold = (order, { isOut }) =>
  isOut && order.rig_final ? { ...order, do: order.safe, rig: order.rig_final, radio: order.radio_final } : order;

const stop = (words, kind) => html`
  <section class="halt" role="alert">
    <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
    <h2>${words.end[`${kind}_title`]}</h2>
    <p>${words.end[kind]}</p>
  </section>`;

const listed = (words, signs) => html`<ul class="listed">${signs.map((sign) => html`<li>${words.sees[sign]}</li>`)}</ul>`;

function stands({ cause, ranked, data }) {
  const { words } = data;
  const { out, radio, order, source, basis } = data.causes[cause];
  return html`
    <section class="verdict" role="status">
      <h2>${words.name[cause]}</h2>
      ${out ? html`<p class="out">${shape("stop")}<b>${words.diagnose.out}</b></p>` : nothing}
      ${sayFirst({ words, radio })}
      <h3>${words.diagnose.do}</h3>
      <p class="act">${words.act[cause]}</p>
      ${order ? orderView({ order: data.orders[order], words }) : nothing}
      <h3>${words.diagnose.why}</h3>
      ${listed(words, ranked.causes.find(({ id }) => id === cause).for)}
      <p>${words.diagnose.stands} ${words.diagnose.first}</p>
      <p class="smallprint"><span lang="en">${source}</span>. ${words.diagnose.basis}${colon} ${words.basis[basis]}.</p>
    </section>`;
}

// The likeliest of what nothing speaks against, each with what speaks for it and what was not looked at.
function still({ end, ranked, data }) {
  const { words } = data;
  const left = ranked.causes.filter(({ id }) => end.left.includes(id)).slice(0, MOST_LIKELY);
  return left.length ? html`
    <h2>${words.diagnose.likely}</h2>
    ${left.map((cause) => html`
      <section class="fault">
        <h3>${words.name[cause.id]} <span class="basis">${words.likelihood[data.causes[cause.id].likelihood]}</span></h3>
        <p><b>${words.diagnose.speaks_for}${colon}</b> ${cause.for.map((sign) => words.sees[sign]).join("; ")}</p>
        ${cause.open.length ? html`<p><b>${words.diagnose.still_open}${colon}</b> ${cause.open.map((sign) => words.sees[sign]).join("; ")}</p>` : nothing}
      </section>`)}` : nothing;
}

function otherEngine({ end, ranked, data, setEngine }) {
  const { words } = data;
  return html`
    <section>
      <h2 class="step-act">${words.end.engine_title}</h2>
      <p>${words.end.engine}</p>
      ${end.engine.map((engine) => html`
        <div class="change">
          <p>${words.end[`${engine}_how`]}</p>
          <button type="button" class="key key-wide" @click=${() => setEngine(engine)}>${words.engine_state[engine]}</button>
        </div>`)}
    </section>
    ${still({ end, ranked, data })}`;
}
