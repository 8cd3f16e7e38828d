// One run of the log on the screen.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { lasted } from "../shared/lasted.js";
import { fill } from "../shared/site.js";
import { clockTime, dayAndTime } from "../shared/times.js";
import { isTraining, isUnseen, placeView, placeWords } from "./place.js";
import { entryWords, outcomeWords } from "./told.js";

const isStop = (outcome) => ["danger", "not_seen", "repeat", "failed_twice", "time_up", "stopped", "contradiction", "unlisted"].includes(outcome);

const open = new Map(); // by run: whether its notes were written when it was first drawn; what is cleared while it is open stays open

function beganOpen({ id, who, notes }) {
  if (!open.has(id)) open.set(id, Boolean(who || notes));
  return open.get(id);
}

export function runView({ record, words, type, remove, isSure }) {
  const { log } = words;
  const entries = record.entries ?? [];
  return html`
    <article class="run">
      ${isTraining(record) && record.kind !== "practice" ? html`<span class="run-kind">${log.is_training}</span>` : nothing}
      ${record.kind === "card" ? nothing : html`<span class="run-kind">${log[`is_${record.kind}`]}</span>`}
      <h2>${record.title}</h2>
      <p class="run-facts">${dayAndTime(record.began_at)} · ${lasted(record, words)} · ${[record.rig?.name ?? log.no_rig, placeWords(record, log.run_place)].filter(Boolean).join(" · ")}<br>
        <span class="run-outcome ${isStop(record.outcome) ? "run-outcome-stop" : ""}">${outcomeWords(record, log)}</span></p>
      ${isUnseen(record) ? html`<p class="run-unseen hatched">${log.unseen}</p>` : nothing}
      ${record.act ? html`<p>${record.act}</p>` : nothing}
      <details>
        <summary>${fill(log.entries, { count: entries.length })}</summary>
        <ol>${entries.map(entryView(log))}</ol>
      </details>
      <details class="run-notes" ?open=${beganOpen(record)}>
        <summary>${log.notes_fold}</summary>
        ${record.kind === "practice" ? nothing
          : placeView({ run: record, words: log.run_place, change: (said) => Object.entries(said).forEach(([name, value]) => type(record, name, value)) })}
        <div class="field">
          <label for="who-${record.id}">${log.who}</label>
          <input id="who-${record.id}" maxlength="40" autocomplete="off" .value=${record.who ?? ""} @input=${(event) => type(record, "who", event.target.value)}>
        </div>
        <div class="field">
          <label for="notes-${record.id}">${log.notes}</label>
          <textarea id="notes-${record.id}" maxlength="2000" .value=${record.notes ?? ""} @input=${(event) => type(record, "notes", event.target.value)}></textarea>
        </div>
      </details>
      <button type="button" class="key ${isSure ? "key-sure" : ""}" @click=${() => remove(record)}>${isSure ? log.remove_sure : log.remove}</button>
    </article>`;
}

// The entries of a run in their order; each new try of a card that was started over is told apart.
function entryView(log) {
  let tries = 1;
  return (entry) => {
    const isTry = entry.event === "start_over";
    if (isTry) tries += 1;
    return html`
      <li class=${isTry ? "run-try" : ""}><time datetime=${new Date(entry.at).toISOString()}>${clockTime(entry.at)}</time>
        <span>${isTry ? fill(log.try, { number: tries }) : entryWords(entry, log)}</span></li>`;
  };
}
