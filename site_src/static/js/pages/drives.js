// PTO and front pumps: where the power goes in each state, one drawing under the other, for the eye and for paper.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { sideView } from "../power/side.js";
import { chosenRig } from "../rig/chosen.js";
import { chips } from "../shared/chips.js";
import { pageData } from "../shared/site.js";

const place = document.getElementById("drives");
const [{ families, states, words }, rig] = await Promise.all([pageData(), chosenRig()]);
const { drives } = words;
const FAMILIES = ["pto", "front"];
const linked = location.hash.slice(1);
let family = FAMILIES.find((each) => each === linked) ?? FAMILIES.find((each) => families[each].includes(rig?.drive)) ?? "pto";

function draw() {
  render(html`
    ${chips({ name: "family", legend: drives.which, value: family, choices: FAMILIES.map((id) => ({ id, label: drives[id] })),
      change: (id) => { family = id; draw(); } })}
    <p class="on-paper"><b>${drives[family]}</b></p>
    ${states.map((state) => html`
      <section class="drive-state">
        <h2>${drives[state.id]}</h2>
        ${sideView(state, family, words)}
        <p>${drives[`${state.id}_${family}`]}</p>
      </section>`)}
    <p><b>${drives.never}</b></p>
    <p class="smallprint">${drives.basis}</p>`, place);
}

addEventListener("hashchange", () => {
  family = FAMILIES.find((each) => each === location.hash.slice(1)) ?? family;
  draw();
});
place.replaceChildren();
draw();
