// A department's own list: what the `checks` of a rig's profile change in the data of the bay. calc.bay.department says what.
import { calc } from "../shared/engine.js";
import { faultsOf, faultsView } from "../rig/faults.js";
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";

// The bay's data as a rig has it: rows, lists, due rows and words, with what is left out and the faults of its rows.
export async function departments(data, rig, units) {
  if (!rig.checks) return { ...data, left_out: [], faults: [] };
  const { text, ...own } = await calc.ask("department.applied", { rows: data.rows, due: data.due, lists: data.lists, checks: rig.checks }, { units });
  const words = Object.fromEntries(Object.entries(text).map(([id, says]) => [id, { ...data.text[id], ...says }]));
  return { ...data, ...own, text: { ...data.text, ...words } };
}

// What of a department's rows cannot be used, in sight above the page, each leading to its row on the Rig page.
export async function faultsAbove(place, { faults }, rig, system) {
  if (!faults.length) return;
  const notice = document.createElement("div");
  render(faultsView(await faultsOf({ faults }, rig, { system })), notice);
  place.before(notice);
}

// Whose rule an item of a department is, or whose its limit is where it is not the list's; its reason with it.
export const whoseOf = (whose, reason, { words }) => `${words.department[whose]}${reason ? ` (${reason})` : ""}`;

// What is left out of a list, with the reason: by the department or the rig's own row, or set on the phone.
/** @param {any} page */
export function reasonsOf({ leftOut, data, words, settings, rows }) {
  const reasons = Object.fromEntries(data.left_out.map(({ id, reason, whose }) => [id, whoseOf(whose, reason, { words })]));
  return leftOut.flatMap(({ id, code }) => (code === "fits" || code === "after" ? [] : [{ title: data.text[id]?.title ?? id, reason: reasons[id] ?? settings[id]?.reason ?? settings[rows.get(id)?.equipment]?.reason ?? "" }]));
}

// The same, one tap away.
/** @param {any} page */
export function leftOutView(page) {
  const says = reasonsOf(page);
  return says.length ? html`
    <details class="record bay-out"><summary>${page.words.department.left_out} (${says.length})</summary>
      <ul class="listed">${says.map(({ title, reason }) => html`<li><b>${title}</b><br>${reason}</li>`)}</ul></details>` : nothing;
}
