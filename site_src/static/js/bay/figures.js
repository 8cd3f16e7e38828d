// The figures that an item asks to be written with its answer: hours and miles, what a gauge shows at idle. Each is kept as it was typed.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { calc, Refusal } from "../shared/engine.js";
import { live } from "../shared/notice.js";
import { refusalOf } from "../shared/refusal.js";
import { fill } from "../shared/site.js";
import { bare, isAsTyped, tagged } from "../shared/units.js";
import { field } from "./item_forms.js";
import { asWritten, unitOf } from "./sentences.js";

const METERS = ["miles", "engine_h", "pump_h"];

const nameOf = (name, { meter, figure }) => meter[name] ?? figure[name];

// What a meter showed last, or null.
const lastOf = (name, log) => log.of("meters").filter((record) => typeof record[name] === "number").sort((one, other) => other.at_ms - one.at_ms)[0]?.[name] ?? null;

// What was typed of an item's figures: { name, entry, amount in calc's unit, refused: why it is none }, nothing of what is empty.
export const judgedFigures = ({ reads }, typed, page) => Promise.all(reads.filter(({ name }) => typed[name]?.trim()).map(async ({ name, quantity }) => {
  const [entry, least] = [tagged(typed[name].trim(), page.system), lastOf(name, page.log) ?? 0];
  const kind = /** @type {"target" | "min"} */ (quantity === "temperature" ? "target" : "min");
  try {
    const { amount, is_good: isGood } = await calc.ask("limits.judged", { limit: { kind, value: least, to: null, quantity }, text: entry, own: null, earlier: [] }, { units: page.units });
    return { name, entry, amount, refused: isGood === false ? fill(page.words.due.meter_refused, { name: nameOf(name, page.words), least }) : "" };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { name, entry, amount: null, refused: `${nameOf(name, page.words)}: ${refusalOf(page.words, refusal)}` };
  }
}));

export const areFigures = (figures) => figures.length > 0 && figures.every(({ refused }) => !refused);

// As an answer's record holds them, and its figures back as they were typed.
export const recordOf = (figures) => figures.map(({ name, entry }) => `${name} ${entry}`);
const entryIn = (record, name) => record.find((part) => part.startsWith(`${name} `))?.slice(name.length + 1);
export const typedOf = (record, { reads }, system) => Object.fromEntries(reads.map(({ name }) => [name, entryIn(record, name)])
  .filter(([, entry]) => entry && isAsTyped(entry, system)).map(([name, entry]) => [name, bare(entry)]));

// Each by its name, a dash for what was not written.
export const figuresText = (record, { reads }, words) => reads.map(({ name, quantity }) => {
  const entry = entryIn(record, name);
  return `${nameOf(name, words)} ${entry ? asWritten(entry, { quantity }, words) : "–"}`;
}).join("; ");

// The meters that a check read, for Due, once it ends: until then they may be put right.
export async function metersRead(page) {
  const answered = Object.entries(page.answers).filter(([id, { figures }]) => figures && page.rows.get(id)?.reads.some(({ name }) => METERS.includes(name)));
  const read = await Promise.all(answered.map(([id, { figures }]) => judgedFigures(page.rows.get(id), typedOf(figures, page.rows.get(id), page.system), page)));
  return read.filter(areFigures).map((figures) => Object.fromEntries(METERS.map((name) => [name, figures.find((figure) => figure.name === name)?.amount ?? null])));
}

export function figuresView(view, { reads }) {
  const { state, words, u, log, act } = view;
  const label = (name, quantity) => {
    const last = lastOf(name, log);
    if (quantity) return `${nameOf(name, words)} (${u[`u_${quantity}`]})`;
    return last === null ? nameOf(name, words) : fill(words.due.meter, { name: nameOf(name, words), last });
  };
  const refused = state.figures.filter((figure) => figure.refused);
  return html`<div class="bay-figures">${reads.map(({ name, quantity }) => field({ id: name, label: label(name, quantity), value: state.typed[name] ?? "", mode: "decimal", change: (text) => act.figure(name, text) }))}</div>
    ${live(refused.length ? html`<p class="refusal">${refused.map((figure) => figure.refused).join(" ")}</p>` : nothing)}`;
}

// What a defect is about, where its item was left without it.
export const missingFigure = (view, row) => (row.limit
  ? field({ id: "figure", label: `${view.words.round.reading} (${unitOf(row, view)})`, value: bare(view.state.entry), mode: "decimal", change: view.act.enter })
  : row.reads.length ? figuresView(view, row) : nothing);
