// The drill: five questions from the chosen rig's own figures, one a screen. What was missed comes back; what is due stays on this phone.
import { render } from "../../vendor/lit-html/lit-html.js";
import { endView, questionView } from "../drill/view.js";
import { startTerms } from "../help/touched.js";
import { atHand } from "../rig/at_hand.js";
import { chosenRig, chosenSystem } from "../rig/chosen.js";
import { calc, Refusal } from "../shared/engine.js";
import { refusalOf } from "../shared/refusal.js";
import { fill, pageData, unitWords } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";
import { tagged, unitsOnce } from "../shared/units.js";

const MOST_SEED = 1e6;
const place = document.getElementById("numbers");
const terms = startTerms();
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const system = chosenSystem(data.systems);
const { family } = data.systems[system];
const u = unitWords(words, system);
const units = unitsOnce(data.systems)(system);
const draft = `drill:${rig?.id ?? ""}`;
const about = `${rig ? fill(words.drill.of_rig, rig) : words.drill.of_example} ${words.drill.private}`;
const page = { boxes: (await kept(draft)) ?? {}, sitting: null, at: null, judged: null, reply: null, refusal: null, missed: new Set(), standing: [] };

await starting;
const own = await atHand(rig ?? data.example, data.shelf, units);
const ground = { shelf: own.shelf, rig: own.rig, beds: own.beds, tips: data.tips.filter((tip) => tip.family === family), lights: data.lights, gauges: data.gauges };
const now = () => ({ on_ms: Date.now(), offset_min: -new Date().getTimezoneOffset() });

async function sit() {
  page.sitting = await calc.ask("drill.sitting", { boxes: page.boxes, ...now(), seed: Math.floor(Math.random() * MOST_SEED) }, { ground, units });
  if (page.at === null) place.replaceChildren(); // what stood there while the first were made
  Object.assign(page, { at: 0, judged: null, refusal: null, missed: new Set() });
  draw();
}

async function judge(reply) {
  const card = page.sitting.cards[page.at];
  const question = page.sitting.questions[page.at];
  try {
    page.judged = await calc.ask("drill.judged", { question, reply, boxes: page.boxes, card, ...now() }, { units });
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    page.refusal = refusalOf(words, refusal);
    return draw();
  }
  Object.assign(page, { refusal: null, reply });
  page.boxes = { ...page.boxes, [card]: page.judged.row };
  keep(draft, page.boxes);
  if (!page.judged.is_right) page.missed.add(words.kind[question.kind]);
  draw("drill-verdict");
}

function check(event) {
  event.preventDefault();
  judge(tagged(event.target.elements["drill-answer"].value, system));
}

async function next() {
  page.at += 1;
  page.judged = null;
  if (!page.sitting.questions[page.at]) page.standing = await calc.ask("drill.standing", { boxes: page.boxes, ...now() }, { ground, units });
  draw("drill-asked");
}

function draw(focused) {
  const { sitting, at, judged, refusal, missed } = page;
  const question = sitting.questions[at];
  const state = { question, place: at, count: sitting.questions.length, isLast: at + 1 === sitting.questions.length, judged, refusal, reply: page.reply, words, u, about: at === 0 ? about : null, check, choose: judge, next };
  render(question ? questionView(state) : endView({ missed: [...missed], standing: page.standing, words, again: sit }), place);
  if (focused) {
    document.getElementById(focused)?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }
}

await sit();
terms.then(() => draw());
