// The log: every run this phone keeps, newest first, to be signed, noted, sent, printed and deleted.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { csvOf, jsonOf } from "../log/files.js";
import { runView } from "../log/run.js";
import { notices } from "../shared/notice.js";
import { send } from "../rig/carry.js";
import { pageData } from "../shared/site.js";
import { changeRecord, dropRecord, hasRoom, keep, kept, keptRecords } from "../shared/store.js";

const KINDS = ["card", "diagnosis", "practice"];
const SURE_MS = 5000;
const TYPED = "log-typed"; // what was typed and is not in its record yet: a page may go before the record is written
const place = document.getElementById("log");
const { words } = await pageData();
const page = { kind: "all", sure: null, notice: null, hasRoom: await hasRoom() };
let records = (await keptRecords("log")).sort((one, other) => new Date(other.began_at) - new Date(one.began_at));
const typed = (await kept(TYPED)) ?? {};

// Paper does not scroll: notes are as high there as what was written.
addEventListener("beforeprint", () => place.querySelectorAll("textarea").forEach((notes) => { notes.style.height = `${notes.scrollHeight + 4}px`; }));
addEventListener("afterprint", () => place.querySelectorAll("textarea").forEach((notes) => { notes.style.height = ""; }));

const shown = () => records.filter((record) => page.kind === "all" || record.kind === page.kind);

const entryOf = (record, name) => `${record.id} ${name}`;

// Keep what was typed at a run, at once; the page says where its record does not take it.
async function type(record, name, text) {
  record[name] = text;
  const entry = entryOf(record, name);
  typed[entry] = text;
  keep(TYPED, typed);
  try {
    await changeRecord("log", record.id, (there) => ({ ...(there ?? record), [name]: text }));
    if (typed[entry] === text) delete typed[entry];
    keep(TYPED, typed);
    tellRoom(true);
  } catch {
    tellRoom(false);
  }
}

function tellRoom(hasSome) {
  if (page.hasRoom === hasSome) return;
  page.hasRoom = hasSome;
  draw();
}

function say(notice) {
  page.notice = notice;
  draw();
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
  try {
    await dropRecord("log", record.id);
    records = records.filter((other) => other !== record);
    say(words.log.removed);
  } catch {
    say(words.log.unremoved);
  }
}

function printAll() {
  for (const details of place.querySelectorAll("details")) details.open = true;
  window.print();
}

function draw() {
  const kinds = KINDS.filter((kind) => records.some((record) => record.kind === kind));
  const listed = shown();
  render(html`
    ${notices(page.notice, !page.hasRoom && words.log.unkept)}
    ${kinds.length > 1
      ? chips({
        legend: words.log.show, name: "kind", value: page.kind, change: (kind) => { page.kind = kind; draw(); },
        choices: ["all", ...kinds].map((id) => ({ id, label: words.log[`kind_${id}`] })),
      }) : nothing}
    ${listed.length === 0
      ? page.hasRoom ? html`<p>${words.log.none}</p>` : nothing
      : html`
        <div class="rows">
          <button type="button" class="key key-wide" @click=${() => send(csvOf(listed, words.log))}>${words.log.file_csv}</button>
          <button type="button" class="key key-wide" @click=${() => send(jsonOf(listed))}>${words.log.file_json}</button>
          <button type="button" class="key key-wide" @click=${printAll}>${words.log.print}</button>
        </div>
        ${listed.map((record) => runView({ record, words, type, remove, isSure: page.sure === record.id }))}`}`, place);
}

for (const record of records) {
  for (const name of ["who", "notes"]) if (entryOf(record, name) in typed) type(record, name, typed[entryOf(record, name)]);
}
draw();
