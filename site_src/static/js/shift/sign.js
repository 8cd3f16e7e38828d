// The thing to be seen at a step, drawn, where there is one: the step's data says which (`shows` in data/steps).
import { html } from "../../vendor/lit-html/lit-html.js";
import { display } from "../line/display.js";
import { gauge } from "../line/gauge.js";
import { lamp } from "../line/lamp.js";
import { colon, fill } from "../shared/site.js";

const DRAWN = {
  display: ({ asked, reached }, { sign }) => display({ asked, reached, words: sign, name: fill(sign.display, { asked, reached }) }),
  lamp: ({ lamp: name, state }, { sign, power }) => html`<span class="sign-lamp">${lamp({ state, label: power[`lamp_${name}`], word: sign[state] })}</span>`,
  needle: ({ of }, { sign }) => gauge({ value: 0, end: 4, step: 1, figures: [0], size: "small", name: `${sign[of]}${colon} 0` }),
};

export const signView = (shows, words) => DRAWN[shows.kind](shows, words);
