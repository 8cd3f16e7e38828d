// What a rig may be without, by its part of a test: what says so in the rig's entries. Such a part is not asked for, and the sheet says it is not there.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";

const NONE = { transfer: ["pump_stages", "1"], intake_relief: ["intake_relief", "none"], tank: ["tank", "0@US"], tank_level: ["tank", "0@US"], line_gauges: ["gauges", "0"], meters: ["meters", "0"], foam: ["foam", "none"] };

// Whether a part may be left out of a test so: the rig's profile says nothing of the thing, nor of its setting.
export const maySay = ({ rig }, id) => id in NONE && !rig[NONE[id][0]] && !(id === "intake_relief" && rig.relief_set);

export const withoutIt = (record, id) => ({ ...record, rig: { ...record.rig, [NONE[id][0]]: NONE[id][1] } });

export const withIt = (record, id) => ({ ...record, rig: { ...record.rig, [NONE[id][0]]: "" } });

// The parts that a test's standard asks for and its plan has not, since this rig has no such thing; a point that is no run of a pump this size is none.
export const absentIn = ({ record: { standard }, answer }) =>
  standard.tests.filter((id) => ![...answer.plan.tests, ...standard.runs].some((each) => each.id === id));

export const absentText = (view) => `${view.words.test.absent}${colon} ${absentIn(view).map((id) => view.words.test_name[id]).join(", ")}.`;

// Below the parts of a test: what is not asked for, and the way back where it was said by mistake.
export function absentView(view) {
  const { words, record, act } = view;
  const absent = absentIn(view);
  const said = absent.filter((id) => id in NONE && record.rig[NONE[id][0]] === NONE[id][1]);
  if (!absent.length) return nothing;
  return html`<p>${absentText(view)}</p>
    ${record.finished_ms !== null || !said.length ? nothing : html`<details class="section"><summary>${words.test.absent_undo}</summary><div class="rows">
      ${said.map((id) => html`<button type="button" class="key key-wide" @click=${() => act.withIt(id)}>${fill(words.test.fitted, { part: words.test_name[id] })}</button>`)}</div></details>`}`;
}
