// What only paper carries: which page, which rig, and when.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";

export const paperView = ({ rig, words }) => html`
  <p class="on-paper">${rig ? html`<b>${rig.name}</b> · ` : nothing}${fill(words.paper.printed, { date: dayAndTime(Date.now()) })}</p>`;
