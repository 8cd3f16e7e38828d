// The log: every run this phone keeps, newest first, to be signed, noted, sent, printed and deleted.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { csvOf, jsonOf } from "../log/files.js";
import { isTraining } from "../log/place.js";
import { runView } from "../log/run.js";
import { beside, toNotice } from "../shared/notice.js";
import { send } from "../shared/send.js";
import { pageData } from "../shared/site.js";
import { dropRecord, keepField, kept, keptRecords, tellRoom } from "../shared/store.js";

const KINDS = { // what is listed of the log; training is never among the rig's record
  all: (record) => !isTraining(record),
  card: (record) => record.kind === "card" && !isTraining(record),
  diagnosis: (record) => record.kind === "diagnosis" && !isTraining(record),
  training: isTraining,
};
const SURE_MS = 5000;
const place = document.getElementById("log");
const { words } = await pageData();
const page = { kind: "all", sure: null, notice: null, hasRoom: await tellRoom() };
let records = await newestFirst();
if (records.length && records.every(isTraining)) page.kind = "training";

// Paper does not scroll: notes are as high there as what was written.
addEventListener("beforeprint", () => place.querySelectorAll("textarea").forEach((notes) => { notes.style.height = `${notes.scrollHeight + 4}px`; }));
addEventListener("afterprint", () => place.querySelectorAll("textarea").forEach((notes) => { notes.style.height = ""; }));

async function newestFirst() {
  return (await keptRecords("log")).sort((one, other) => new Date(other.began_at).getTime() - new Date(one.began_at).getTime());
}

const shown = () => records.filter(KINDS[page.kind]);

// Keep what was typed or chosen at a run, unless another tab has changed it meanwhile.
async function type(record, name, text) {
  const seen = { ...record };
  record[name] = text;
  if (typeof text !== "string" || name === "place") draw();
  if ((await keepField("log", seen, name, text)) !== "conflict") return;
  records = await newestFirst();
  say(record.id, words.log.conflict);
}

// What is said, above the run it is of, or above the one that took the place of a run that is gone.
function say(at, text) {
  page.notice = { at, text };
  draw();
  toNotice(place);
}

// Two touches delete: the first asks, and the question lapses.
async function remove(record) {
  if (page.sure !== record.id) {
    page.sure = record.id;
    setTimeout(() => {
      if (page.sure !== record.id) return;
      page.sure = null;
      draw();
    }, SURE_MS);
    return draw();
  }
  page.sure = null;
  const after = shown()[shown().indexOf(record) + 1]?.id ?? "end";
  const isGone = await dropRecord("log", record.id);
  if (isGone) records = records.filter((other) => other !== record);
  say(isGone ? after : record.id, words.log[isGone ? "removed" : "unremoved"]);
}

function printAll() {
  for (const details of place.querySelectorAll("details")) details.open = true;
  window.print();
}

function draw() {
  const kinds = Object.keys(KINDS).filter((kind) => kind === "all" || kind === page.kind || records.some(KINDS[kind]));
  const listed = shown();
  const part = page.kind === "training" ? "training" : "log";
  render(html`
    ${kinds.length > 2 || kinds.includes("training")
      ? chips({
        legend: words.log.show, name: "kind", value: page.kind, change: (kind) => { page.kind = kind; draw(); },
        choices: kinds.map((id) => ({ id, label: words.log[`kind_${id}`] })),
      }) : nothing}
    ${listed.length === 0
      ? page.hasRoom ? html`<p>${records.length ? words.log.none_here : words.log.none}</p>` : nothing
      : html`
        ${records.some(isTraining) ? html`<p class="run-part">${words.log[page.kind === "training" ? "part_training" : "part_all"]}</p>` : nothing}
        ${listed.map((record) => html`
          ${beside(page.notice, record.id)}
          ${runView({ record, words, type, remove, isSure: page.sure === record.id })}`)}
        <div class="rows">
          <button type="button" class="key key-wide" @click=${() => send(csvOf(listed, words.log, part))}>${words.log.file_csv}</button>
          <button type="button" class="key key-wide" @click=${() => send(jsonOf(listed, part))}>${words.log.file_json}</button>
          <button type="button" class="key key-wide" @click=${printAll}>${words.log.print}</button>
        </div>`}
    ${beside(page.notice, "end")}`, place);
}

// What an older version of the site had of an entry that was not in its record yet.
for (const [entry, text] of Object.entries((await kept("log-typed")) ?? {})) {
  const record = records.find(({ id }) => id === entry.split(" ")[0]);
  if (record) type(record, entry.split(" ")[1], text);
}
dropRecord("drafts", "log-typed");
draw();
