// The recovery card of the chosen rig, in the size of the paper. What the profile does not hold is a line to fill in by hand.
import { html, nothing, render } from "../vendor/lit-html/lit-html.js";
import { choose, chosen } from "./choices.js";
import { chips } from "./chips.js";
import { chosenRig } from "./rig/chosen.js";
import { fill, pageData } from "./site.js";

const SIZES = ["pocket", "a4", "letter"];
const NEEDLESS = { before_drive: "light_later", after_drive: "light_first" };
const OWN_LINES = 8;
const place = document.getElementById("recovery");
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
let size = chosen("paper", "letter");

const blank = html`<span class="blank">${words.recovery.blank}</span>`;
const known = (value) => value || blank;
const fact = (name, value) => html`<dt>${name}</dt><dd>${known(value)}</dd>`;

function draw() {
  for (const each of SIZES) document.getElementById(`paper-${each}`).media = each === size ? "all" : "not all";
  render(html`
    <div class="no-print">
      ${chips({ name: "size", legend: words.card.size, value: size, choices: SIZES.map((id) => ({ id, label: words.card[id] })),
        change: (id) => { size = id; choose("paper", size); draw(); } })}
      <button type="button" class="key key-wide" @click=${() => window.print()}>${words.recovery.print}</button>
    </div>
    ${rig ? card() : html`<p class="notice">${words.recovery.nobody}</p>`}`, place);
}

const card = () => html`
  <article class="recovery">
    <h2>${rig.name}</h2>
    <section class="recovery-danger"><h3>${words.recovery.danger}</h3><p>${words.recovery.danger_do}</p></section>
    <section class="first"><h3>${words.recovery.order}</h3>${order()}</section>
    <section>
      <dl>
        ${fact(words.recovery.gear, rig.pump_gear)}
        ${fact(words.recovery.light, words.option[rig.pump_light])}
        ${fact(words.recovery.speed, rig.speed_in_pump)}
      </dl>
      <p>${words.recovery.lights}</p>
    </section>
    <section>
      <h3>${words.recovery.refused}</h3>
      <ol>${words.recovery.refused_do.map((line) => html`<li>${line}</li>`)}</ol>
      ${blank}${blank}
      <p><b>${words.recovery.refused_say}</b></p>
    </section>
    <section>
      <h3>${words.recovery.override}</h3>
      <p>${words.recovery.override_when}</p>
      <dl>
        ${fact(words.recovery.place, rig.override_place)}
        ${fact(words.recovery.way, rig.override_way)}
        ${fact(words.recovery.tool, rig.override_tool)}
      </dl>
    </section>
    <section><h3>${words.recovery.stops}</h3><dl><dd>${known(rig.stop_controls)}</dd></dl></section>
    <p>${fill(words.recovery.filled, { name: rig.name, dated: rig.dated || words.recovery.undated })} ${words.recovery.first}</p>
  </article>`;

// The acts with their proofs where the profile says that this card is for its drive; else lines for the rig's own.
function order() {
  if (!Object.entries(data.fits).every(([name, value]) => rig[name] === value)) {
    return html`<p>${words.recovery.order_other}</p><ol>${Array.from({ length: OWN_LINES }, () => html`<li>${blank}</li>`)}</ol>`;
  }
  const steps = data.steps.filter(({ id }) => id !== NEEDLESS[rig.pump_light]);
  return html`<ol>${steps.map(({ act, see }) => html`<li><b>${act}</b>${see}</li>`)}</ol>`;
}

place.replaceChildren();
draw();
