// The officer's check-off sheet: per trainee and task what was shown, signed by two, kept on this phone, sent as a file, printed.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { add, bring, drop, enter, plain, records, sendAll, timesOf } from "../log/checkoff.js";
import { paperView, rowView } from "../log/checkoff_view.js";
import { chosenRig } from "../rig/chosen.js";
import { chips } from "../shared/chips.js";
import { choose, chosen } from "../shared/choices.js";
import { calc } from "../shared/engine.js";
import { beside, live, toNotice } from "../shared/notice.js";
import { PaperSize } from "../shared/paper_size.js";
import { SecondTouch } from "../shared/second_touch.js";
import { fill, pageData } from "../shared/site.js";
import { dateField } from "../shared/times.js";

const place = document.getElementById("checkoff");
const starting = calc.start();
const [data, rig] = await Promise.all([pageData(), chosenRig()]);
const { words } = data;
const { checkoff: c } = words;
await starting;
const times = await timesOf(data);
const page = { records: await records(), trainee: chosen("trainee", ""), rows: [], forms: {}, open: null, said: "", refused: null, dropped: null };
const second = new SecondTouch(draw);
const paperSize = new PaperSize({ kind: "upright", sizes: ["a4", "letter"], words: c, redraw: draw });

const own = () => page.records.filter(({ trainee }) => plain(trainee) === plain(page.trainee));
const trainees = () => [...new Map(page.records.map(({ trainee }) => [plain(trainee), trainee])).values()].sort();

// What a task's form opens with: what was entered and is not signed by both, or an empty row.
const formOf = ({ task, open }) => page.forms[task] ?? (open
  ? Object.fromEntries(["date", "rig", "faults", "took_s", "on_rig", "by_trainee", "by_officer"].map((name) => [name, open[name]]))
  : { date: dateField(), rig: rig?.name ?? "", faults: "", took_s: null, on_rig: false, by_trainee: "", by_officer: "" });

async function renew() {
  page.records = await records();
  page.rows = page.trainee.trim() ? await calc.ask("checkoff.standing", { records: page.records, trainee: page.trainee }) : [];
  draw();
}

function say(text) {
  page.said = text;
  draw();
  toNotice(place);
}

async function save(row) {
  const form = formOf(row);
  const { record, refused } = await enter(row, { trainee: page.trainee.trim(), task: row.task, ...form });
  page.refused = refused ? { task: row.task, text: c.refused[refused] ?? c.refused.other } : null;
  if (refused) return say("");
  delete page.forms[row.task];
  if (record.by_trainee && record.by_officer) page.open = null;
  await renew();
  say(["by_trainee", "by_officer"].some((name) => form[name] && !record[name]) ? c.dropped : c.saved);
}

async function take(target) {
  const said = [];
  for (const file of target.files) said.push(await bring(file, c));
  target.value = "";
  await renew();
  const [first] = trainees();
  if (!page.trainee && first) await turnTo(first);
  say(said.join(" "));
}

// A trainee's sheet off this phone, and back at once.
async function remove() {
  const trainee = page.trainee.trim();
  const gone = await drop(trainee);
  page.dropped = { at: "drop", text: fill(c.removed, { trainee }), undo: async () => {
    await add(gone);
    page.dropped = null;
    await turnTo(trainee);
  } };
  page.forms = {};
  await renew();
  toNotice(place);
}

function turnTo(trainee) {
  if (plain(trainee) !== plain(page.trainee)) page.forms = {};
  second.lapse();
  page.trainee = trainee;
  page.refused = null;
  choose("trainee", trainee);
  return renew();
}

function draw() {
  const names = trainees();
  render(html`
    <div class="check-top">
      <div class="field"><label for="trainee">${c.trainee}</label>
        <span class="typed"><input id="trainee" autocomplete="off" maxlength="60" .value=${page.trainee} @input=${({ target }) => turnTo(target.value)}></span></div>
      ${names.some((name) => plain(name) !== plain(page.trainee)) ? chips({ name: "trainees", legend: c.other, value: names.find((name) => plain(name) === plain(page.trainee)) ?? "", choices: names.map((id) => ({ id, label: id })), change: turnTo }) : nothing}
      ${live(page.said ? html`<p class="notice" tabindex="-1">${page.said}</p>` : nothing)}
    </div>
    ${page.rows.map((row) => rowView({
      row, words, see: data.see[row.task], times: times[row.task], form: formOf(row), save: () => save(row), refused: page.refused?.task === row.task ? page.refused.text : null, isOpen: page.open === row.task,
      toggle: (isOpen) => {
        if (isOpen === (page.open === row.task)) return;
        page.open = isOpen ? row.task : null;
        draw();
      },
      change: (part) => {
        page.forms[row.task] = { ...formOf(row), ...part };
        page.refused = null;
        draw();
      },
    }))}
    <div class="rows">
      <label class="key key-wide key-file"><span>${c.bring}</span><input type="file" accept=".json,application/json" multiple @change=${({ target }) => take(target)}></label>
      ${own().length ? html`<button type="button" class="key key-wide" @click=${() => sendAll(page.trainee, own())}>${c.send}</button>` : nothing}
      ${own().length ? html`<button type="button" class="key key-wide" @click=${() => second.touch(remove)}>${second.isAsked ? fill(c.remove_sure, { count: own().length }) : c.remove}</button>` : nothing}
      ${beside(page.dropped, "drop", c)}
      ${page.rows.length ? html`
        ${paperSize.view()}
        <button type="button" class="key key-wide" @click=${() => window.print()}>${c.print}</button>` : nothing}
    </div>
    ${page.rows.length ? paperView({ rows: page.rows, see: data.see, trainee: page.trainee, words }) : nothing}`, place);
}

document.addEventListener("visibilitychange", () => document.hidden || renew()); // another tab may have added

await renew();
