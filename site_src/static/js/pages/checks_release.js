// Release: what was opened, if anything, what that must prove, what was done, and two names: repaired, and back in service.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { calc } from "../shared/engine.js";
import { limitsRig } from "../shared/rig_status.js";
import { fill, fragment } from "../shared/site.js";
import { draftOf, keepDraft } from "../shared/draft.js";
import { field } from "../bay/item_forms.js";
import { opened } from "../bay/opened.js";
import { prints } from "../bay/paper.js";
import { releaseSheet } from "../bay/paper_forms.js";
import { classOf, defectRow, proofName, toBay } from "../bay/sentences.js";

const NOTHING = "nothing"; // calc.bay.release
const SENTENCES = new Set(["happened"]); // what is lacking and takes more than a word
const EMPTY = { defects: [], opened: [], passed: [], done: "", parts: "", hours: "", repaired_by: "", by: "" };
const place = document.getElementById("bay");
const page = await opened(place);
/** @type {any} */
let entered = EMPTY;
let standing = null;
let proofs = [];
let lacks = [];
let released = false;

async function start() {
  standing = await page.log.standing();
  const wanted = fragment();
  const here = new Set(standing.defects.map(({ id }) => id));
  const draft = await draftOf(name());
  entered = { ...EMPTY, ...draft };
  if (here.has(wanted) && !entered.defects.includes(wanted)) entered = { ...entered, defects: [...entered.defects, wanted] };
  entered = { ...entered, defects: entered.defects.filter((id) => here.has(id)) };
  await judge();
}

const name = () => `release:${page.rig.id}`;

// What a person entered: kept at once. A defect that the address names is not, before something is.
function change(part) {
  entered = { ...entered, ...part };
  keepDraft(name(), entered);
  return judge();
}

async function judge() {
  draw();
  const held = { table: page.data.proofs };
  const { defects: _, parts, hours, ...typed } = entered;
  const asked = { ...typed, defects: repairedDefects() };
  const newest = entered;
  const answers = await Promise.all([calc.ask("release.proofs", { opened: entered.opened, defects: asked.defects }, held), calc.ask("release.lacks", { entered: asked }, held)]);
  if (newest !== entered) return;
  [proofs, lacks] = answers;
  draw();
}

const toggled = (list, id) => (list.includes(id) ? list.filter((other) => other !== id) : [...list, id]);
const repairOf = () => ({ defects: entered.defects, done: entered.done.trim(), parts: entered.parts.trim(), hours: entered.hours.trim() });

async function repaired() {
  await page.log.add("repair", repairOf(), { by: entered.repaired_by.trim() });
  standing = await page.log.standing();
  await judge();
}

// Whether what is entered stands in the log already, from "Only repaired".
function isRepaired() {
  const repair = Object.entries({ ...repairOf(), by: entered.repaired_by.trim() });
  return page.log.of("repair").some((record) => repair.every(([part, value]) => String(record[part]) === String(value)));
}

async function release() {
  const heads = chosen().flatMap((defect) => defect.heads);
  if (!isRepaired()) await page.log.add("repair", repairOf(), { by: entered.repaired_by.trim() });
  await page.log.add("release", { defects: entered.defects, repaired_by: entered.repaired_by.trim(), opened: entered.opened, proofs: entered.passed.filter((id) => proofs.includes(id)), limits: "" },
    { replaces: heads, by: entered.by.trim() });
  standing = await page.log.standing();
  released = true;
  await keepDraft(name(), null);
  draw();
}

const isLimited = () => limitsRig(standing);
const chosen = () => standing.defects.filter(({ id }) => entered.defects.includes(id));
// What a release knows of its defects: where they came from, the item of a check, and what of the table that is a part of.
const repairedDefects = () => chosen().map(({ origin, item }) => ({ origin, item: page.rows.has(item) ? item : null, system: page.rows.get(item)?.system ?? null }));

// Something was opened, or nothing: the one takes the other back.
const openedWith = (id) => toggled(entered.opened.filter((other) => other === id || (other === NOTHING) === (id === NOTHING)), id);

// A row to tick: what is done stands with its mark.
const tick = (id, label, isOn, act) => html`<li><button type="button" class="key key-wide bay-tick" aria-pressed=${isOn ? "true" : "false"} @click=${act}><span>${label}</span><b aria-hidden="true">${isOn ? "✓" : ""}</b></button></li>`;

function draw() {
  const { words, data } = page;
  if (released) return render(doneView(words), place);
  if (!standing.defects.length) return render(html`<p>${words.release.none}</p><div class="dock">${toBay(words)}</div>`, place);
  const said = (code) => (code.startsWith("proof:") ? proofName(code.slice(6), page) : words.lacks[code]);
  const missing = lacks.filter((code) => !SENTENCES.has(code));
  const isNothing = entered.opened.includes(NOTHING);
  render(html`
    <h2>${words.release.which}</h2>
    <ul class="ticks">${standing.defects.map((defect) => tick(defect.id, html`${classOf(defect, words)}: ${defect.what}`, entered.defects.includes(defect.id), () => change({ defects: toggled(entered.defects, defect.id) })))}</ul>
    <h2>${words.release.opened}</h2>
    <ul class="ticks ticks-two">${data.proofs.filter(({ opened: id }) => id).map(({ opened: id }) => tick(id, words.opened[id], entered.opened.includes(id), () => change({ opened: openedWith(id) })))}</ul>
    ${lacks.filter((code) => SENTENCES.has(code)).map((code) => html`<p class="refusal" role="alert">${words.lacks[code]}</p>`)}
    ${proofs.length ? html`<h2>${words.release.proofs}</h2><ul class="ticks">${proofs.map((id) => tick(id, html`${proofName(id, page)} <small>${data.text[id]?.look}</small>`, entered.passed.includes(id), () => change({ passed: toggled(entered.passed, id) })))}</ul>` : nothing}
    ${field({ id: "done", label: isNothing ? words.release.reason : words.release.done, value: entered.done, change: (done) => change({ done }) })}
    ${isNothing ? nothing : html`${field({ id: "parts", label: words.release.parts, value: entered.parts, change: (parts) => change({ parts }) })}
    ${field({ id: "hours", label: words.release.hours, value: entered.hours, mode: "decimal", change: (hours) => change({ hours }) })}`}
    ${field({ id: "repaired_by", label: isNothing ? words.release.looked_by : words.release.repaired_by, value: entered.repaired_by, change: (text) => change({ repaired_by: text }) })}
    ${field({ id: "by", label: words.release.by, value: entered.by, change: (by) => change({ by }) })}
    ${missing.length ? html`<p class="bay-rule">${words.release.lacks} ${missing.map(said).join(", ")}.</p>` : nothing}
    <div class="dock bay-dock">
      ${isNothing ? nothing : html`<button type="button" class="key" ?disabled=${!entered.defects.length || !entered.done.trim() || !entered.repaired_by.trim()} @click=${repaired}>${words.release.only_repaired}</button>`}
      <button type="button" class="key key-act" ?disabled=${!entered.defects.length || lacks.length > 0} @click=${release}>${words.release.release}</button></div>`, place);
}

// The tags come off only once nothing open limits the rig.
const doneView = (words) => html`
  <h2 class="bay-act">${isLimited() ? words.release.still : fill(words.release.back, { rig: page.rig.name })}</h2>
  <p>${fill(words.release.names, { repaired_by: entered.repaired_by, by: entered.by })}</p>
  ${isLimited() ? html`<p><b>${words.release.stays}</b></p><ul class="defects">${standing.defects.filter((defect) => limitsRig(defect)).map((defect) => defectRow(defect, words))}</ul>`
    : html`<ul class="listed">${words.release.then.map((line) => html`<li>${line}</li>`)}</ul>`}
  <div class="dock bay-dock"><button type="button" class="key" @click=${() => window.print()}>${words.bay.print}</button>${toBay(words)}</div>`;

function onPaper() {
  const defects = page.log.of("defect").filter(({ id }) => entered.defects.includes(id));
  return defects.length ? releaseSheet({ ...page, defects }, entered, { standing, proofNames: proofs.map((id) => ({ name: proofName(id, page), isOn: entered.passed.includes(id) })) }) : null;
}

if (page) prints(() => standing && onPaper());
if (page) await start();
