// A check on paper: its whole list in the order it is walked, each limit and whose it is, what was answered or a place to write it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { whatOf } from "../shared/rig_status.js";
import { calc } from "../shared/engine.js";
import { colon, fill } from "../shared/site.js";
import { day } from "../shared/times.js";
import { reasonsOf } from "./department.js";
import { numberOf, sheetView, signed, wide } from "./paper.js";
import { limitOf } from "./reading.js";
import { figuresText } from "./figures.js";
import { isWhole } from "./agreed.js";
import { isDriven } from "./log.js";
import { asWritten, classOf, limitText } from "./sentences.js";

const COLUMNS = 5;
const LAST = 3; // items that stand with the signature

// The limit of each item that has one, as its page shows it, by its id.
/** @param {any} page */
export async function limitsOf({ items, rows, settings, units }) {
  const limited = items.filter((id) => rows.get(id)?.limit);
  const shown = await Promise.all(limited.map((id) => calc.ask("limits.shown", { limit: rows.get(id).limit, own: settings[id]?.limit ?? null }, { units })));
  return new Map(limited.map((id, place) => [id, shown[place]]));
}

/** @param {any} page */
export function checkSheet(page) {
  const { words, items, rows, rig, round, list, defects } = page;
  const gone = items.filter((id) => !rows.has(id)).map((id) => ({ id })); // asked then, no item of the rig's lists today
  let before = "";
  const drawn = [...items.filter((id) => rows.has(id)).map((id) => rows.get(id)), ...gone].map((row) => {
    const station = row.place ? `${words.place[row.place]} · ${words.engine_state[row.state]}` : words.record.gone;
    const isNew = station !== before;
    before = station;
    return html`${isNew ? html`<tr class="paper-station"><th colspan=${COLUMNS} scope="colgroup">${station}</th></tr>` : nothing}${itemRow(page, row)}`;
  });
  return sheetView({
    rig, title: words.list[list], when: round?.at_ms, columns: COLUMNS,
    heads: html`<tr class="paper-columns"><th></th><th>${words.round.good_sign}</th><th>${words.round.good}</th><th>${words.round.not_good}</th><th>${words.paper.remark}</th></tr>`,
    body: html`
      <tbody>${hurriedView(page)}${defects.length ? wide(html`<b>${words.round.read_first}</b><ul>${defects.map((defect) => html`<li>${classOf(defect, words)}${colon} ${whatOf(defect)} (${numberOf(defect)}, ${day(defect.at_ms)})</li>`)}</ul>`, COLUMNS) : nothing}</tbody>
      <tbody>${drawn.slice(0, -LAST)}</tbody>`,
    last: html`${drawn.slice(-LAST)}${leftOut(page)}${wide(signed([[words.paper.checked, namesOf(page)]], words), COLUMNS)}`,
  });
}

/** @param {any} page */
function itemRow(page, row) {
  const { words, data, answers, isPast } = page;
  const answer = answers[row.id];
  const defect = defectOf(page, row, answer);
  const text = data.text[row.id] ?? { title: defect?.what ?? row.id, good: "" };
  const isSo = (says) => (says === "good" ? answer && isWhole(answer) : answer?.answer === says); // good by what nobody read or timed has no tick
  const box = (says, mark) => html`<td class="paper-box" data-label=${words.round[says]} ?data-on=${isSo(says)}><i>${isSo(says) ? mark : ""}</i></td>`;
  return html`
    <tr><th scope="row">${text.title}</th>
      <td>${text.good}${isPast && defect?.limit ? html`${text.good ? html`<br>` : nothing}<b>${defect.limit}</b>` : limitView(page, row, answer)}</td>
      ${box("good", "✓")}${box("not_good", "✕")}<td class="paper-remark">${remark(page, row, answer, defect)}</td></tr>`;
}

// The limit of an item and whose it is: of a check that is over as it was written with the answer; where that is of before such was written, today's.
function limitView(page, row, answer) {
  const { words, limits, settings, isPast } = page;
  if (isPast && answer?.limit) return html`<br><b>${answer.limit}</b>`;
  const limit = limits?.get(row.id);
  const own = settings[row.id]?.limit;
  return limit ? html`<br><b>${limitText(limit, row, page)}</b> <small>${limitOf({ own, words }, row)}${isPast && !own ? html`, ${words.record.today}` : nothing}</small>` : nothing;
}

// The newest defect of an item that was not good.
const defectOf = ({ log }, { id }, answer) => (answer?.answer === "not_good" ? log.of("defect").filter(({ item }) => item === id).sort((one, other) => other.at_ms - one.at_ms)[0] : null);

// The reading, what was seen where it was not good, why it does not belong to the rig, or why an ended check has no answer to what is driven.
function remark(page, row, answer, defect) {
  const { words } = page;
  if (!answer) return endsOf(page).length ? html`<b>${row.place === "road" && !isDriven(page.defectsAtEnd ?? page.defects) ? words.round.held_paper : words.round.undone}</b>` : nothing;
  if (answer.answer === "not_here") return words.round.not_here;
  const reading = answer.entry ? asWritten(answer.entry, { ...row, ...row.limit }, words) : "";
  return [reading, answer.figures && row.reads ? figuresText(answer.figures, row, words) : "", doubtOf(answer, words), defect && `${words.defect.title} ${numberOf(defect)}${defect.seen ? `${colon} ${defect.seen}` : ""}`].filter(Boolean).join("; ");
}

// What was neither read nor timed, said beside a good that has no tick.
function doubtOf({ answer, clock, reading }, { round, clock: timed }) {
  const isGood = answer === "good";
  return reading === "not_read" ? round[isGood ? "only_unread" : "not_read"] : clock === "not_run" ? (isGood ? round.untimed : timed.not_run) : "";
}

// The records that ended a check: more than one where two phones did.
const endsOf = ({ log, round }) => log.of("ended").filter((record) => record.round === round?.id);

// An ended check says at its head, as the screen did, how many of its items were answered too fast.
/** @param {any} page */
function hurriedView(page) {
  const count = Math.max(0, ...endsOf(page).map(({ hurried }) => hurried));
  return count ? wide(html`<b>${fill(page.words.round.hurried, { count })}</b>`, COLUMNS) : nothing;
}

/** @param {any} page */
function leftOut(page) {
  const says = reasonsOf(page);
  return says.length ? wide(html`<b>${page.words.department.left_out}${colon}</b> ${says.map(({ title, reason }) => (reason ? `${title} (${reason})` : title)).join(", ")}`, COLUMNS) : nothing;
}

// Everybody who answered an item of it.
function namesOf({ round, answers, log }) {
  if (!round) return "";
  const ids = new Set(Object.values(answers).map(({ id }) => id));
  return [...new Set([round.by, ...log.of("answer").filter(({ id }) => ids.has(id)).map(({ by }) => by)].filter(Boolean))].join(", ");
}
