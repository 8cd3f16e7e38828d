// Heat in the pump: what its power does to water shut in and sent round. It urges, and never says how long.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { stepper } from "../shared/controls.js";
import { calc, Refusal } from "../shared/engine.js";
import { fold } from "../shared/fold.js";
import { notices } from "../shared/notice.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { refusalOf } from "../shared/refusal.js";
import { shownIn } from "../shared/shown.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { tagged, unitsOnce } from "../shared/units.js";

const DRAFT = "heat";
const KINDS = { power: "power", trapped: "volume", tank: "volume", rise: "temperature_rise" };
const place = document.getElementById("heat");
const starting = calc.start();
const [data, draft, rig] = await Promise.all([pageData(), kept(DRAFT), chosenRig()]);
const { words } = data;
const page = { system: chosenSystem(data.systems), entries: { ...data.opening, ...(rig?.tank && { tank: rig.tank }), ...draft } };
const unitsOf = unitsOnce(data.systems);
const inputs = shownIn(page);
const orders = /** @type {HTMLDetailsElement} */ (document.getElementById("heat-orders"));
const asking = answering(question, draw);
let isOwn = Boolean(draft);

function type(name, text) {
  page.entries = { ...page.entries, [name]: tagged(text, page.system) };
  keep(DRAFT, page.entries);
  isOwn = true;
  asking.change();
}

// The page's one question; entries typed in other units are read once.
async function question() {
  const units = unitsOf(page.system);
  await inputs.read(Object.entries(KINDS).map(([name, kind]) => [kind, page.entries[name]]), units);
  try {
    return { answer: await calc.ask("warming.answer", { entries: page.entries }, { units }) };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refusal };
  }
}

function entry(name, u, refusal) {
  const step = data.systems[page.system].steps[KINDS[name]];
  return html`
    ${stepper({
      id: name, name, label: words.heat[name], unit: u[`u_${KINDS[name]}`], value: inputs.shown(KINDS[name], page.entries[name]), words,
      by: { kind: KINDS[name], step, least: step },
      type: (text) => type(name, text),
      refusal: refusal?.field === name ? refusalOf(words, refusal) : null,
    })}
    ${words.heat[`${name}_hint`] ? html`<p class="formula">${words.heat[`${name}_hint`]}</p>` : nothing}`;
}

function answerView(answer, u) {
  const said = (sentence) => fill(words.heat[sentence], { ...u, ...answer.terms, constant: answer.constant, shut: answer.shut, circulation: answer.circulation, tank_rise: answer.tank });
  const figure = (label, amount, unit, more) => html`
    <section class="answer answer-still ${isOwn ? "" : "hatched"}">
      <p class="answer-label">${label}</p>
      <output class="answer-figure"><b>${amount}</b> <span>${unit}</span></output>
      <p class="answer-sum">${more}</p>
    </section>`;
  return html`
    ${figure(words.heat.shut, answer.shut, u.u_temperature_rise, words.heat.shut_told)}
    ${figure(said("round"), answer.circulation, u.u_flow, words.heat.round_told)}
    <h2>${words.heat.tank_title}</h2>
    <p>${fill(words.heat.tank_told, { ...u, tank: answer.tank })}</p>
    <h2>${words.heat.workings}</h2>
    <div class="figures">${[["shut", answer.shut], ["round", answer.circulation], ["tank", answer.tank]].map(([name, amount]) => html`
      ${fold({ name, kind: "", summary: html`<span>${words.heat[`work_${name}`]}</span><b>${amount}</b>`, redraw: asking.redraw }, () => html`<p class="working">${said(`working_${name}`)}</p>`)}`)}
    </div>`;
}

function draw(answered) {
  const { answer, refusal } = answered ?? {};
  const u = unitWords(words, page.system);
  if (answer && isOwn) orders.open = answer.is_past_rise; // what to do shows when the person's own figure says so
  render(html`
    ${isOwn ? nothing : html`<p>${words.heat.opening}</p>`}
    ${answer ? answerView(answer, u) : nothing}
    ${notices(refusal ? fill(words.pressure.waiting, { entry: words.heat[refusal.field] }) : null)}
    <h2>${words.heat.entries}</h2>
    ${Object.keys(KINDS).map((name) => entry(name, u, refusal))}`, place);
}

await starting;
await asking.change();
