// Every rig of this phone, the worst first: its status in one sentence, open defects, what is due next. A touch works for that rig.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { calc } from "../shared/engine.js";
import { limitsRig, sentenceOf, statusFrom } from "../shared/rig_status.js";
import { fill } from "../shared/site.js";
import { keptRecords } from "../shared/store.js";
import { day } from "../shared/times.js";
import { chooseRig } from "../rig/chosen.js";
import { departments } from "../bay/department.js";
import { Log } from "../bay/log.js";
import { opened, pageOf } from "../bay/opened.js";
import { dueName } from "../bay/sentences.js";
import { undecided } from "../service/failed.js";

const place = document.getElementById("bay");
const page = await opened(place);

async function look(profile) {
  const data = await departments(page.published, profile, page.units);
  const log = await Log.open(profile, data.text);
  const standing = await log.standing();
  const { rows } = await log.board(data);
  return { profile, standing, failed: await undecided(profile), nameOf: namesIn(data), late: rows.filter((row) => row.standing === "overdue"), next: rows.find(({ due_date: date }) => date) ?? null };
}

const namesIn = (data) => (id) => dueName(id, { data, words: page.words });

function dueText({ late, next, nameOf }) {
  const { board } = page.words;
  if (late.length) return fill(board.overdue, { count: late.length, name: nameOf(late[0].id) });
  if (!next) return board.no_date;
  const [year, month, date] = next.due_date;
  return fill(board.next, { name: nameOf(next.id), date: day(new Date(year, month - 1, date)) });
}

function rigView(rig) {
  const { words } = page;
  const { profile, standing, failed, late } = rig;
  const states = { ...words.rig_status, in_service: words.bay.in_service, open_items: words.bay.open_items };
  return html`
    <li class="defect" data-class=${standing.defects[0]?.class ?? nothing}><a href=${pageOf("")} @click=${() => chooseRig(profile)}>
      <b>${profile.name}</b> ${failed ? html`<span><b>${words.undecided}</b></span>` : nothing} ${failed && !limitsRig(standing) ? nothing : html`<span>${sentenceOf(statusFrom(standing), states)}</span>`}
      ${standing.defects.length ? html`<small>${fill(words.board.open, { count: standing.defects.length })}</small>` : nothing}
      <small class=${late.length ? "due-overdue" : nothing}>${dueText(rig)}</small></a></li>`;
}

async function start() {
  const rigs = [];
  for (const profile of await keptRecords("rigs")) rigs.push(await look(profile));
  const order = await calc.ask("standing.worst_first", { rigs: rigs.map(({ profile: { id }, standing, late, next }) =>
    ({ id, state: standing.state, overdue: late.length, open: standing.defects.length, next_day: next?.due_day ?? null })) });
  rigs.sort((one, other) => order.indexOf(one.profile.id) - order.indexOf(other.profile.id));
  render(html`<ul class="defects">${rigs.map(rigView)}</ul>`, place);
}

if (page) await start();
