// What a rig may do once its test failed: the tester decides, with a reason and a name, and the rig's log has it. When the next
// test is due does not hang on it.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { isName } from "../bay/agreed.js";
import { Log } from "../bay/log.js";
import { chips } from "../shared/chips.js";
import { chosen } from "../shared/choices.js";
import { fill, home } from "../shared/site.js";
import { day } from "../shared/times.js";
import { textView } from "./entries.js";
import { markOf } from "./failed.js";

// What may be decided, as calc.bay.records has it.
const STATES = { pump_out: { class: "out_of_service", scope: "pump" }, out_of_service: { class: "out_of_service", scope: "apparatus" }, restricted: { class: "restricted", scope: "pump" } };
const MOST_TEXT = 2000; // of a record's text, as calc.bay.records has it

// Whether somebody has to decide on the rig of a test.
export const wantsDecision = (test, verdict) => test.finished_ms !== null && verdict.status === "fail";

// What was written of a test in its rig's log: the defect, and the last decision on it; null where nothing was.
export async function decidedOn(test) {
  const log = await Log.open({ id: test.rig_id, name: test.rig_name });
  const defect = log.of("defect").find(({ item }) => item === markOf(test));
  if (!defect) return null;
  const open = (await log.standing()).defects.find(({ id }) => id === defect.id);
  return { defect, open: open ?? null };
}

// Write it: what failed, the reason and the figures are the defect, what the tester said is the decision on it.
export async function decide(test, { state, reason, limits, by }, { what, figures }) {
  const log = await Log.open({ id: test.rig_id, name: test.rig_name });
  const defect = await log.add("defect", { origin: "test", item: markOf(test), what, seen: reason.trim(), place: "", state: "", limit: figures.slice(0, MOST_TEXT), rule: "", ...STATES[state] }, { by: by.trim() });
  await log.add("decision", { defect: defect.id, limits: state === "restricted" ? limits.trim() : "", ...STATES[state] }, { by: by.trim(), replaces: [defect.id] });
  await log.standing();
}

const isWhole = ({ state, reason, limits, by }) => Boolean(state && reason.trim() && isName(by) && (state !== "restricted" || limits.trim()));

// The question, until it is answered; then what was decided, which is printed with the sheet.
export function decisionView({ words, form, decided, change, write }) {
  const { decision } = words;
  if (decided) return decidedView({ words, decided });
  return html`
    <section class="decision no-print"><h2 tabindex="-1">${decision.title}</h2>
      <p>${decision.told}</p>
      ${chips({ name: "status", legend: decision.status, value: form.state, choices: Object.keys(STATES).map((id) => ({ id, label: decision[id] })), change: (state) => change({ state }) })}
      ${form.state === "restricted" ? textView({ id: "limits", label: decision.limits, value: form.limits, change: (limits) => change({ limits }) }) : nothing}
      ${textView({ id: "reason", label: decision.reason, value: form.reason, change: (reason) => change({ reason }) })}
      ${textView({ id: "by", label: decision.name, value: form.by, change: (by) => change({ by }) })}
      <button type="button" class="key key-wide" ?disabled=${!isWhole(form)} @click=${write}>${decision.write}</button>
    </section>`;
}

function decidedView({ words: { decision }, decided: { defect, open } }) {
  const state = open?.state ?? "released";
  const said = open ?? defect;
  return html`
    <p class="decision"><b>${decision.status}: ${decision[state] ?? decision.open_items}</b>${open?.limits ? ` (${open.limits})` : nothing}. ${defect.seen}.
      <span>${fill(decision.set, { by: said.decided_by ?? defect.by, date: day(said.decided_ms ?? defect.at_ms) })}</span>
      ${chosen("rig", null) === defect.rig_id ? html`<a class="key key-wide no-print" href=${new URL(`checks/defect/#${defect.id}`, home).href}>${decision.see}</a>` : nothing}</p>`;
}
