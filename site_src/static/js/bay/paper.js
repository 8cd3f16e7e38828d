// The bay on paper: drawn as it is printed, out of what the page has. Rig and date stand at the head of every sheet.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { colon } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";

const NUMBER = 8; // signs of a record's id: the way back from paper to the record

// Print what `sheet()` draws in place of the page, by its own key or the browser's; null prints the page.
export function prints(sheet) {
  const place = document.getElementById("paper");
  addEventListener("beforeprint", () => {
    render(sheet() ?? nothing, place);
    for (const copy of place.querySelectorAll("canvas")) copied(copy);
  });
}

// A picture as it stands on the page already.
function copied(copy) {
  const painted = /** @type {HTMLCanvasElement} */ (document.querySelector(`#bay canvas[data-photo="${copy.dataset.photo}"]`));
  if (!painted?.width) return;
  Object.assign(copy, { width: painted.width, height: painted.height });
  copy.getContext("2d").drawImage(painted, 0, 0);
}

export const numberOf = ({ id }) => id.slice(0, NUMBER).toUpperCase();

// A sheet's table: its head comes again on every sheet, and what is last is never alone.
/** @type {(sheet: any) => any} */
export const sheetView = ({ rig, title, when = Date.now(), columns = 1, heads = nothing, body, last }) => html`
  <table class="bay-paper"><thead><tr><td colspan=${columns}><div class="paper-head"><b>${rig.name}</b><span>${title}</span><span>${dayAndTime(when)}</span></div></td></tr>${heads}</thead>
    ${body}<tbody class="paper-last">${last}</tbody></table>`;

// A row over all columns.
export const wide = (content, columns = 1) => html`<tr><td colspan=${columns}>${content}</td></tr>`;

// What is known of a form's field, or a line to write it on.
export const fieldRow = (label, content) => html`<div class="paper-field"><b>${label}${colon}</b> ${content || html`<i class="paper-line"></i>`}</div>`;

// Names with their lines for a signature and a date.
export const signed = (people, { paper }) => html`
  <div class="paper-signed">${people.map(([label, name]) => html`<div><b>${label}${colon}</b> ${name}<p>${paper.signature}</p></div>`)}</div>`;
