// What only paper carries: which page, which rig, and when.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";

// The date is there from the first print on: to write one takes a slow phone as long as drawing the page.
export const paperView = ({ rig, words, printed }) => html`
  <p class="on-paper">${rig ? html`<b>${rig.name}</b> · ` : nothing}${printed ? fill(words.paper.printed, { date: dayAndTime(printed) }) : nothing}</p>`;
