// What the bay's pages say the same way: a defect in a row, its class, a limit, whose rule it is.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { whatOf } from "../shared/rig_status.js";
import { fill } from "../shared/site.js";
import { day } from "../shared/times.js";
import { pageOf } from "./opened.js";

// The way back to the bay, as the one next act.
export const toBay = ({ bay }) => html`<a class="key key-act" href=${pageOf("")}>${bay.title}</a>`;

export const classOf = ({ state, class: rank }, words) => words.rank[state === "pump_out" ? "pump_out" : rank];

export const defectRow = (defect, words) => html`
  <li class="defect" data-class=${defect.class}>
    <a href=${`${pageOf("defect/")}#${defect.id}`}>
      <b>${classOf(defect, words)}</b> <span>${whatOf(defect)}</span>
      <small>${defect.decided_by ? fill(words.defect.decided, { by: defect.decided_by }) : words.defect.proposed} · ${day(defect.at_ms)}${defect.by ? ` · ${defect.by}` : ""}${defect.repaired_by ? ` · ${words.defect.repaired}` : ""}</small>
      ${defect.limits ? html`<small>${defect.limits}</small>` : nothing}
    </a>
  </li>`;

// What a release proves: a proof of the table, or an item of a check.
export const proofName = (id, { words, data }) => words.proof[id] ?? data.text[id]?.title ?? id;

// A limit in words: "22 inHg or more".
export const limitText = (limit, row, view) => fill(view.words.limit[limit.kind], { value: limit.value, to: limit.to ?? "", unit: unitOf(row, view) });

// A reading as it was written, in the unit that it was typed in.
export function asWritten(entry, { quantity, unit = null }, words) {
  const [text, system] = entry.split("@");
  return [text, quantity ? words.unit[system]?.[quantity] : words.bay_unit[unit]].filter(Boolean).join(" ");
}

export const unitOf = (row, { words, u }) => (row.limit.quantity ? u[`u_${row.limit.quantity}`] : words.bay_unit[row.unit]);

// A row of the due board: a list, a test or service, or an item that a department has its own interval for.
export const dueName = (id, { data, words }) => words.list[id] ?? words.due_name[id] ?? data.text[id]?.title ?? id;
