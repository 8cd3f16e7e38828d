// The bay: the rig's status, its open defects, and the lists of checks with when each was last done.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { limitsRig, sentenceOf, statusFrom } from "../shared/rig_status.js";
import { fill } from "../shared/site.js";
import { day } from "../shared/times.js";
import { nameField } from "../bay/item_forms.js";
import { opened, pageOf } from "../bay/opened.js";
import { defectRow } from "../bay/sentences.js";
import { toDecision, undecided } from "../service/failed.js";

const place = document.getElementById("bay");
const page = await opened(place);
if (page) await start();

async function start() {
  const { data, words, log, rig } = page;
  const standing = await log.standing();
  const board = await log.board(data);
  const due = new Map(board.rows.map((row) => [row.id, row]));
  const isLimited = limitsRig(standing);
  const failed = await undecided(rig);
  const states = { ...words.rig_status, in_service: words.bay.in_service, open_items: words.bay.open_items };
  const last = (list) => {
    const begun = log.openRound(list);
    if (begun) return html`<small class="due-soon">${fill(words.bay.begun, { date: day(begun.at_ms) })}</small>`;
    const row = due.get(list);
    if (!row) return nothing;
    if (row.done_ms === null) return html`<small>${words.bay.never}</small>`;
    return html`<small class=${row.standing === "overdue" ? "due-over" : nothing}>${fill(words.bay[row.standing === "overdue" ? "over" : "done"], { date: day(row.done_ms) })}</small>`;
  };
  render(html`
    <section class="plate bay-status" data-state=${standing.state}><p><b>${rig.name}</b></p>${failed ? html`<a class="key key-wide bay-known hatched" href=${toDecision(failed)}>${words.undecided}</a>` : nothing}
      ${failed && !isLimited ? nothing : html`<p class="bay-sentence">${sentenceOf(statusFrom(standing), states)}</p>`}
      ${isLimited ? html`<a class="key" href=${pageOf("tag/")}>${words.bay.tag}</a>` : nothing}</section>
    ${standing.defects.length ? html`<h2>${words.bay.open_defects}</h2><ul class="defects">${standing.defects.map((defect) => defectRow(defect, words))}</ul>` : nothing}
    ${nameField(words)}
    <nav class="group" aria-labelledby="lists"><h2 id="lists">${words.bay.lists}</h2>
      <ul>${data.lists.map((list) => html`<li><a class="row" href=${`${pageOf("round/")}#${list}`}><span>${words.list[list]}${last(list)}</span></a></li>`)}
      <li><a class="row" href=${pageOf("board/")}>${words.board.title}</a></li></ul></nav>
    <nav class="dock" aria-label=${words.bay.acts}>
      <a class="key" href=${pageOf("log/")}>${words.bay.log}</a>
      <a class="key" href=${pageOf("due/")}>${words.bay.due}</a>
      <a class="key key-act" href=${pageOf("defect/")}>${words.bay.write}</a>
    </nav>`, place);
}
