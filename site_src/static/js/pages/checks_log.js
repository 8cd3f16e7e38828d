// The rig's log in the bay: its records, as a file to another phone and back, and emptying this phone.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { fill, home, pageData } from "../shared/site.js";
import { live } from "../shared/notice.js";
import { dayAndTime } from "../shared/times.js";
import { send } from "../shared/send.js";
import { field } from "../bay/item_forms.js";
import { SecondTouch } from "../shared/second_touch.js";
import { bring, emptied, filesOf } from "../bay/exchange.js";
import { isName } from "../bay/agreed.js";
import { Arriving, arrivedView, arrivingView } from "../bay/codes_in.js";
import { Codes, codesView } from "../bay/codes_out.js";
import { opened, pageOf, withoutRig } from "../bay/opened.js";
import { dueName } from "../bay/sentences.js";

const SHOWN = 60;
const HIDDEN = new Set(["answer"]);
const place = document.getElementById("bay");
/** @type {any} */
let page = null;
let isOpened = false;
const arriving = new Arriving({ redraw: () => isOpened && draw() }); // a code counts whether a rig is chosen or not
page = await opened(place);
isOpened = true;
/** @type {any} */
const state = { said: [], by: "", open: 0, shown: SHOWN, files: [] };
const second = new SecondTouch(() => draw());
const codes = page && new Codes(page, () => draw());

async function take(files) {
  state.said = [];
  for (const file of files) state.said.push(...(await bring(file, page)));
  await page.log.board(page.data);
  await look();
}

async function empty() {
  const count = await emptied(page.log, state.by.trim());
  state.by = "";
  state.said = [count === null ? page.words.log.unemptied : fill(page.words.log.emptied, { count })];
  await look();
}

async function look() {
  draw();
  state.open = (await page.log.standing()).defects.length;
  state.files = filesOf(page.log);
  draw();
}

const label = ({ kind, what, list, item, due, reason, replaces }) => {
  const { words, data, log } = page;
  const of = kind === "withdrawn" ? log.of("defect").find(({ id }) => replaces.includes(id)) : null;
  const name = what ?? (of && `${of.what}, ${reason}`) ?? words.list[list] ?? data.text[item]?.title ?? words.equipment[item] ?? (due && dueName(due, page)) ?? reason ?? "";
  return name ? `${words.kind[kind]}: ${name}` : words.kind[kind];
};

// Where a record is read whole: its check, its release, or its defect.
function pageOfRecord({ id, kind, round, defect, defects = [], replaces }) {
  const known = defect ?? (kind === "defect" ? id : [...defects, ...replaces].find((other) => page.log.of("defect").some((record) => record.id === other)));
  if (kind === "round" || kind === "ended" || kind === "release") return `${pageOf("record/")}#${round ?? id}`;
  return known && `${pageOf("defect/")}#${known}`;
}

function row(record) {
  const says = html`<b>${label(page.log.named(record))}</b><small>${dayAndTime(record.at_ms)}${record.by ? ` · ${record.by}` : ""}</small>`;
  const to = pageOfRecord(record);
  return html`<li>${to ? html`<a class="row" href=${to}><span>${says}</span></a>` : says}</li>`;
}

// One key a file; where the photos do not fit in one, what the first leaves out.
function sending() {
  const { words: { log: words }, log } = page;
  const { files } = state;
  const photos = files.reduce((count, part) => count + part.photos, 0);
  return html`
    ${files.length > 1 ? html`<p>${fill(words.left_out, { files: files.length, photos: files[0].photos, left: photos - files[0].photos })}</p>` : nothing}
    ${files.length > 1 ? files.map(({ file }, place) => html`<button type="button" class="key key-wide" @click=${() => send(file())}>${fill(words.part, { part: place + 1, files: files.length })}</button>`)
      : html`<button type="button" class="key key-wide" ?disabled=${!log.records.length} @click=${() => send(filesOf(log)[0].file())}>${words.file}</button>`}`;
}

// No rig here: the codes that came wait for it.
async function drawWithoutRig() {
  const { words } = await pageData(new URL("checks/", home));
  withoutRig(place, words, arrivedView(arriving, words));
}

function draw() {
  if (!page) return drawWithoutRig();
  const { words, log, rig } = page;
  const records = log.records.filter(({ kind }) => !HIDDEN.has(kind)).sort((one, other) => other.at_ms - one.at_ms);
  render(html`
    <p>${fill(words.log.count, { rig: rig.name, count: log.records.length })}${records.length < log.records.length ? ` ${fill(words.log.unlisted, { listed: records.length, answers: log.records.length - records.length })}` : ""}</p>
    ${arrivingView(arriving, words, take)}
    <div class="rows">
      ${sending()}
      <button type="button" class="key key-wide" aria-expanded=${codes.isOpen ? "true" : "false"} ?disabled=${!log.records.length} @click=${() => codes.turn()}>${words.codes.show}</button>
      ${codesView(codes)}
      <label class="key key-wide key-file"><span>${words.log.bring}</span><input type="file" accept=".json,application/json" multiple @change=${({ target }) => take([...target.files])}></label>
    </div>
    ${live(state.said.length ? html`<ul class="notice listed">${state.said.map((line) => html`<li>${line}</li>`)}</ul>` : nothing)}
    <ol class="bay-log">${records.slice(0, state.shown).map(row)}</ol>
    ${records.length > state.shown ? html`<button type="button" class="key key-wide" @click=${() => { state.shown += SHOWN; draw(); }}>${words.log.more}</button>` : nothing}
    <a class="key key-wide" href=${new URL("log/", home).href}>${words.run_log}</a>
    <section class="group"><h2>${words.log.empty}</h2><p>${words.log.empty_told}</p>
      ${state.open ? html`<p><b>${fill(words.log.open_stay, { count: state.open })}</b></p>` : nothing}
      ${field({ id: "by", label: words.bay.name, value: state.by, change: (by) => { second.lapse(); state.by = by; draw(); } })}
      <button type="button" class="key key-wide key-trouble" ?disabled=${!log.records.length || !isName(state.by)} @click=${() => second.touch(empty)}>${second.isAsked ? words.log.sure : words.log.empty}</button></section>`, place);
}

await (page ? look() : drawWithoutRig());
