// Pump drives: where the power goes in each state, one drawing under the other, for the eye and for paper; of a split shaft, how its collar is moved.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { drawingView } from "../power/picture.js";
import { sideView } from "../power/side.js";
import { chosenRig } from "../rig/chosen.js";
import { chips } from "../shared/chips.js";
import { pageData } from "../shared/site.js";

const place = document.getElementById("drives");
const [{ families, states, split, words }, rig] = await Promise.all([pageData(), chosenRig()]);
const { drives } = words;
const FAMILIES = ["split", "pto", "front"];
const SHIFTS = ["air", "electric", "lever"];
const FULL = { road: "road", pump: "pump" }; // the side that air fills where the control stands
const linked = () => FAMILIES.find((each) => each === location.hash.slice(1));
let family = linked() ?? FAMILIES.find((each) => families[each].includes(rig?.drive)) ?? "split";
let shift = { electric: "electric", manual: "lever" }[rig?.shift_control] ?? "air";

const choice = (name, legend, value, ids, change) => chips({ name, legend, value, change, choices: ids.map((id) => ({ id, label: drives[id] })) });
const sides = (at) => ({ road: FULL[at] === "road" ? "full" : "empty", pump: FULL[at] === "pump" ? "full" : "empty" });
const drawn = (state) => (family === "split" ? drawingView({ ...state, shift, air: sides(state.selector) }, words) : sideView(state, family, words));

function draw() {
  render(html`
    ${choice("family", drives.which, family, FAMILIES, (id) => { family = id; draw(); })}
    ${family === "split" ? choice("shift", drives.shift, shift, SHIFTS, (id) => { shift = id; draw(); }) : nothing}
    <p class="on-paper"><b>${drives[family]}</b></p>
    ${family === "split" ? html`<p>${drives[`lost_${shift}`]}</p>` : nothing}
    ${(family === "split" ? split : states).map((state) => html`
      <section class="drive-state">
        <h2>${drives[state.id]}</h2>
        ${drawn(state)}
        <p>${drives[`${state.id}_${family}`]}</p>
      </section>`)}
    <p><b>${family === "split" ? drives.never_split : drives.never}</b></p>
    <p class="smallprint">${drives.basis}</p>`, place);
}

addEventListener("hashchange", () => {
  family = linked() ?? family;
  draw();
});
place.replaceChildren();
draw();
