// Signatures of a finished test: drawn or only named, each with the digest of what was signed; and the way to a new version.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { day, dayTime } from "../shared/times.js";
import { textView } from "./entries.js";

const ROLES = ["tester", "witness"];
const WIDE = 300, HIGH = 90, MOST_STROKES = 1900; // of a signature's lines as text; calc.service.file takes 2,000
const SHORT = 16; // figures of a digest that are read out

const drawing = (strokes) => svg`<path d=${strokes} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/>`;

// The lines that stand at the foot of the sheet: a signature where there is one, a line to sign on where not.
export const linesView = (view) => html`<div class="signs-off">${ROLES.map((role) => lineView(view, role))}</div>${versionsView(view)}`;

function lineView({ record, words, digest }, role) {
  const signed = (record.signed ?? []).find((each) => each.role === role);
  const name = signed?.name || record.people[role] || "—";
  return html`<div><b>${words.condition[role]}${colon}</b> ${name}${!signed ? nothing : html`
    ${signed.strokes ? html`<svg class="signature" viewBox="0 0 ${WIDE} ${HIGH}" role="img" aria-label=${fill(words.sign_off.by, { name })}>${drawing(signed.strokes)}</svg>` : nothing}
    <small>${fill(words.sign_off.signed, { date: `${day(signed.wall)}, ${dayTime(signed.wall)}`, digest: signed.digest.slice(0, SHORT) })} <b>${signed.digest === digest ? words.sign_off.same : words.sign_off.changed}</b></small>`}
    ${signed ? nothing : html`<p>${words.sheet.signature}</p>`}</div>`;
}

const versionsView = ({ record, words }) => !record.versions?.length ? nothing : html`
  <h3>${words.sign_off.versions}</h3>
  <ul>${record.versions.map((each, place) => html`<li>${fill(words.sign_off.version, { ...each, count: place + 1, digest: each.digest.slice(0, SHORT), signed: each.signed.join(", "), date: `${day(each.wall)}, ${dayTime(each.wall)}` })}${each.status ? html` <b>${words.sign_off.came_to}${colon} ${words.status[each.status]}.</b>` : nothing}</li>`)}</ul>`;

// What is asked below the sheet: who signs, or, once somebody has, what a new version is for. `form`: what is typed; `act`: change, sign, reopen.
export function signView({ record, words, form, act }) {
  if (record.finished_ms === null) return nothing;
  const left = ROLES.filter((role) => !(record.signed ?? []).some((each) => each.role === role));
  return html`
    ${ROLES.map((role) => (!left.includes(role) ? nothing : html`
      <details class="no-print section signing"><summary>${fill(words.sign_off.as, { role: words.condition[role] })}</summary>
        ${textView({ id: `sign-${role}`, label: words.condition[role], value: form[role]?.name ?? record.people[role], change: (name) => act.change(role, { name }) })}
        <svg class="pad" viewBox="0 0 ${WIDE} ${HIGH}" role="img" aria-label=${words.sign_off.pad}
          @pointerdown=${(event) => begin(event, form[role]?.strokes ?? "", (strokes) => act.change(role, { strokes }))} @pointermove=${move}>${drawing(form[role]?.strokes ?? "")}</svg>
        <p>${words.sign_off.told}</p>
        <div class="rows"><button type="button" class="key" @click=${() => act.change(role, { strokes: "" })}>${words.sign_off.clear}</button>
          <button type="button" class="key key-act" ?disabled=${!(form[role]?.name ?? record.people[role])?.trim()} @click=${() => act.sign(role)}>${words.sign_off.sign}</button></div></details>`))}
    ${record.signed?.length ? html`
      <details class="no-print section"><summary>${words.sign_off.reopen}</summary><p>${words.sign_off.reopen_told}</p>
        ${["what", "why", "by"].map((name) => textView({ id: `version-${name}`, label: name === "by" ? words.decision.name : words.sign_off[name], value: form[name] ?? "", change: (text) => act.change(name, text) }))}
        <button type="button" class="key key-wide" ?disabled=${!["what", "why", "by"].every((name) => form[name]?.trim())} @click=${act.reopen}>${words.sign_off.reopen_key}</button></details>` : nothing}`;
}

// A stroke that is being drawn, on the pad's own grid.
let stroke = null;

const spot = ({ currentTarget, clientX, clientY }) => {
  const { left, top, width, height } = currentTarget.getBoundingClientRect();
  return [Math.round((clientX - left) / width * WIDE), Math.round((clientY - top) / height * HIGH)];
};

function begin(event, strokes, change) {
  event.preventDefault();
  event.currentTarget.setPointerCapture?.(event.pointerId);
  const at = spot(event);
  stroke = { change, at, strokes: `${strokes}M${at.join(" ")}l0 0` };
  change(stroke.strokes);
}

function move(event) {
  if (!stroke || !event.buttons) return;
  const at = spot(event);
  const moved = [at[0] - stroke.at[0], at[1] - stroke.at[1]];
  if (Math.hypot(...moved) < 4 || stroke.strokes.length > MOST_STROKES) return;
  stroke.strokes += `l${moved.join(" ")}`;
  stroke.at = at;
  stroke.change(stroke.strokes);
}
