// The stop of a rig that moved, as another card shows it before it may begin.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill, home } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";
import { shape } from "../shared/warning.js";

export const outView = ({ out, words, order, isAsking, ask, go }) => html`
  <section class="step step-halt">
    <div class="step-body">
      <div class="halt hatched" role="alert">
        <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
        <h2>${words.shift.out_title}</h2>
        <p>${fill(words.shift.out_do, { title: out.title, time: dayAndTime(out.at_ms), what: order.title })}</p>
        ${isAsking ? html`<p><b>${words.shift.out_means}</b></p>` : ""}
      </div>
    </div>
    <div class="dock answers-halt">
      <a class="key key-act" href=${new URL(out.address, home).href}>${words.shift.out_open}</a>
      ${isAsking ? html`
        <button type="button" class="key" @click=${() => ask(false)}>${words.shift.out_not}</button>
        <button type="button" class="key" @click=${go}>${words.shift.out_sure}</button>`
        : html`<button type="button" class="key" @click=${() => ask(true)}>${words.shift.out_pass}</button>`}
    </div>
  </section>`;
