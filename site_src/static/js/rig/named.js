// Whose figures a page uses: the chosen rig by name with what is wrong with it, or that none is chosen.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill, home } from "../shared/site.js";
import { faultsView } from "./faults.js";

export const rigNamed = (rig, faults, words) => html`
  <p class="rig-named"><a href=${new URL("rig/index.html", home)}>${rig ? fill(words.pressure.for_rig, rig) : words.pressure.for_no_rig}</a></p>
  ${faultsView(faults)}`;
