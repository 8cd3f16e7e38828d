// A department's own rows of the checks, read and taken out here; they come in with a file or a link. What they mean calc.bay.department says.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { departments } from "../bay/department.js";
import { colon, fill, home, pageData } from "../shared/site.js";
import { bare } from "../shared/units.js";
import { fieldId } from "./sentences.js";

let names = null; // of published items, lists and tests, once they are fetched
let judged = { of: "", faults: [] }; // the rows asked about last: another field's keystroke asks nothing

// What is wrong with the rows beyond their form: it takes the published list, which is fetched only where there are rows.
export async function checksFaults({ checks }, problems, units) {
  if (!checks || problems.some(({ field }) => field === "checks")) return [];
  const of = JSON.stringify([checks, units]);
  if (judged.of !== of) judged = { of, faults: await faultsIn(checks, units) };
  return judged.faults.filter(({ field, code }) => !problems.some((problem) => problem.field === field && problem.code === code));
}

async function faultsIn(checks, units) {
  const data = await pageData(new URL("checks/", home));
  const { text: says, words } = data;
  names = { ...words.due_name, ...words.list, ...Object.fromEntries(Object.entries(says).map(([id, { title }]) => [id, title])) };
  return (await departments(data, { checks }, units)).faults;
}

const text = (value) => (Array.isArray(value) ? value.join(", ") : bare(String(value)));

export function checksView({ profile, data: { words }, remove }) {
  const rows = Array.isArray(profile.checks) ? profile.checks : [];
  const says = (row) => ["good", "least", "most", "aim", "unit", "months", "days", "hours", "miles", "reason"].filter((name) => row?.[name])
    .map((name) => `${words.field[name]}${colon} ${text(row[name])}`).join(" · ");
  return html`
    <p>${words.rig.checks_told}</p>
    ${rows.map((row, place) => html`
      <fieldset class="rig-hose" id=${fieldId(`checks.${place}`)} tabindex="-1">
        <legend>${place + 1}. ${row?.name || (names ? names[row?.item] ?? row?.item : "")}</legend>
        <p>${words.option[row?.act] ?? nothing}${says(row) ? html`<br>${says(row)}` : nothing}</p>
        <button type="button" class="key" @click=${() => remove("checks", rows, place)}>${fill(words.rig.remove_check, { count: place + 1 })}</button>
      </fieldset>`)}`;
}
