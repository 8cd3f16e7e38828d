// The check-off sheet: a task a row on the screen, one table on paper.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { lasted } from "../shared/lasted.js";
import { beside } from "../shared/notice.js";
import { colon, fill } from "../shared/site.js";
import { day } from "../shared/times.js";

const text = ({ id, label, value, change, type = "text" }) => html`
  <div class="field"><label for=${id}>${label}</label>
    <span class="typed"><input id=${id} type=${type} autocomplete="off" maxlength="400" .value=${value} @input=${({ target }) => change(target.value)}></span></div>`;

// A day as a person reads it; what a date field holds is the day at noon.
const dayOf = (date) => (date ? day(new Date(`${date}T12:00`)) : "");
const took = (took_s, words) => (took_s === null ? words.checkoff.time_none : lasted({ took_s }, words));

export function statusOf({ signed, open }, { checkoff: c }) {
  const said = signed ? fill(signed.on_rig ? c.by : c.by_off_rig, { date: dayOf(signed.date), officer: signed.by_officer }) : c.todo;
  return open ? `${signed ? `${said}. ` : ""}${c.open}` : said;
}

// What must be seen before a task is signed.
const seeView = (see, { must }) => html`<p><b>${must}</b></p><ul class="listed">${see.map((sign) => html`<li>${sign}</li>`)}</ul>`;

// `change(part)` of what is typed; `save()` adds it; `refused`: why it did not, or null.
export function rowView({ row, see, form, times, words, change, save, refused, isOpen, toggle }) {
  const { checkoff: c } = words;
  const { task } = row;
  const typed = (name, type) => text({ id: `${task}-${name}`, label: c[name], value: form[name], type, change: (value) => change({ [name]: value }) });
  const offered = times.some(({ took_s }) => took_s === form.took_s) || form.took_s === null ? times : [{ took_s: form.took_s, began_ms: null }, ...times];
  return html`
    <details class="check-row" ?open=${isOpen} @toggle=${({ target }) => toggle(target.open)}>
      <summary><b>${c.task_name[task]}</b><span>${refused ?? statusOf(row, words)}</span></summary>
      <div class="check-form">
        ${seeView(see, c)}
        ${row.earlier ? html`<p>${fill(c.earlier, { count: row.earlier })}</p>` : nothing}
        ${typed("date", "date")}${typed("rig")}${typed("faults")}
        ${offered.length ? html`<div class="field"><label for="${task}-took">${c.time}</label>
          <select id="${task}-took" class="choice" @change=${({ target }) => change({ took_s: target.value === "" ? null : Number(target.value) })}>
            <option value="" .selected=${form.took_s === null}>${c.time_none}</option>
            ${offered.map(({ took_s, began_ms }) => html`<option value=${took_s} .selected=${took_s === form.took_s}>${
              began_ms === null ? took(took_s, words) : fill(c.time_of, { time: took(took_s, words), date: day(began_ms) })}</option>`)}
          </select></div>` : html`<p>${c.time}${colon} ${c.time_none}</p>`}
        ${chips({ name: `${task}-on-rig`, legend: c.on_rig, value: form.on_rig ? "yes" : "no", change: (id) => change({ on_rig: id === "yes" }),
          choices: ["yes", "no"].map((id) => ({ id, label: c[id] })) })}
        ${typed("by_trainee")}${typed("by_officer")}
        <button type="button" class="key key-wide" @click=${save}>${c.save}</button>
        ${beside(refused && { at: task, text: refused }, task)}
      </div>
    </details>`;
}

// One sheet: what both signed, or what stands open, and empty boxes to write in where there is neither.
export const paperView = ({ rows, see, trainee, words, words: { checkoff: c } }) => html`
  <section class="check-paper">
    <table><caption>${c.trainee}${colon} ${trainee}</caption>
      <thead><tr>${[c.task, c.date, c.rig, c.faults, c.time, c.on_rig, c.sign_trainee, c.sign_officer].map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
      <tbody>${rows.map(({ task, signed, open }) => {
        const row = signed ?? open;
        return html`<tr><th scope="row">${c.task_name[task]}${signed && !signed.on_rig ? html`<br>${c.off_rig}` : nothing}</th>${row
          ? [dayOf(row.date), row.rig, row.faults, took(row.took_s, words), c[row.on_rig ? "yes" : "no"], row.by_trainee, row.by_officer].map((cell) => html`<td>${cell}</td>`)
          : Array.from({ length: 7 }, () => html`<td></td>`)}</tr>`;
      })}</tbody></table>
    <h2>${c.must}</h2>
    ${rows.map(({ task }) => html`<p class="check-see"><b>${c.task_name[task]}</b> ${see[task].join(" · ")}</p>`)}
    <p>${fill(c.printed, { date: day(Date.now()) })}</p>
  </section>`;
