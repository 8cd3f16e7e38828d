// How a diagnosis ends: a cause that stands, a stop, or what stands in the way of the next look.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon } from "../shared/site.js";
import { orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";
import { afterwards, orderOf, ordersOfAlarms } from "./order.js";
import { sayFirst } from "./start.js";

const MOST_LIKELY = 4;

export function endView({ end, ranked, data, state, setEngine, setRole, again, back, lookAt }) {
  const { words } = data;
  const screen = {
    danger: () => ordersOfAlarms(state, data).map((name) => orderView({ order: orderOf(name, state, data), words })),
    stands: () => stands({ cause: end.cause, ranked, data, state }),
    engine: () => otherEngine({ end, ranked, data, setEngine }),
    technician: () => html`${stop(words, end.kind)}${lookAgain({ end, ranked, data, state, lookAt })}${still({ end, ranked, data })}
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

const stop = (words, kind) => html`
  <section class="halt" role="alert">
    <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
    <h2>${words.end[`${kind}_title`]}</h2>
    <p>${words.end[kind]}</p>
  </section>`;

// What an operator could not tell the first time can be looked at once more, before the rest goes to a technician.
function lookAgain({ end, ranked, data, state, lookAt }) {
  const { words } = data;
  const unsure = new Set(ranked.causes.filter(({ id }) => end.left.includes(id)).flatMap((cause) => cause.unsure));
  const looks = state.asked.map(({ sign }) => sign).filter((sign) => unsure.has(sign));
  return looks.length ? html`
    <h2>${words.diagnose.look_again}</h2>
    <div class="rows">${looks.map((sign) => html`<button type="button" class="key key-wide key-told" @click=${() => lookAt(sign)}>${words.sees[sign]}</button>`)}</div>` : nothing;
}

const listed = (words, signs) => html`<ul class="listed">${signs.map((sign) => html`<li>${words.sees[sign]}</li>`)}</ul>`;

function stands({ cause, ranked, data, state }) {
  const { words } = data;
  const { out, radio, order, source, basis } = data.causes[cause];
  return html`
    <section class="verdict" role="status">
      <h2>${words.name[cause]}</h2>
      ${out ? html`<p class="out">${shape("stop")}<b>${words.diagnose.out}</b></p>` : nothing}
      ${sayFirst({ words, radio })}
      <h3>${words.diagnose.do}</h3>
      <p class="act">${words.act[cause]}</p>
      ${order ? orderView({ order: orderOf(order, state, data), words }) : nothing}
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
        ${["unsure", "unasked"].map((kind) => cause[kind].length ? html`<p><b>${words.diagnose[`still_${kind}`]}${colon}</b> ${cause[kind].map((sign) => words.sees[sign]).join("; ")}</p>` : nothing)}
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
