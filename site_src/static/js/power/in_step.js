// The drawing under a step of a shift card; asked for only when somebody opens it.
import { html } from "../../vendor/lit-html/lit-html.js";
import { file, home, root } from "../shared/site.js";
import { pathAt } from "./of_step.js";
import { pictureView } from "./picture.js";

const { begin, changes, words } = await (await file(new URL("why/path.json", home))).json();
const style = new URL("static/css/power.css", root).href;

export const view = (sequence, state) => html`
  <link rel="stylesheet" href=${style}>
  ${pictureView(pathAt({ ...state, sequence, step: state.offer.step, begin, changes }), words)}
  <p>${words.power.on_card}</p>`;
