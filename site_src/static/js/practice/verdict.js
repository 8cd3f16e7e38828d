// What a practice run was worth, and the record of it for the log.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { lasted } from "../shared/lasted.js";
import { colon, fill } from "../shared/site.js";
import { shape } from "../shared/warning.js";
import { SHAPES } from "./debrief.js";

const listed = (codes, words) => html`<ul class="listed">${codes.map((code) => html`<li>${termed(words.note[code])}</li>`)}</ul>`;

// What somebody named as the proof that contradicts, beside what did.
export function proofText({ proof, proofs, words }) {
  const way = !proofs.length ? "none" : proofs.includes(proof) ? "right" : "wrong";
  return fill(words.proof[way], { proof: words.proof[proof], proofs: proofs.map((id) => words.proof[id]).join(", ") });
}

export function verdictView({ run, proof, isKept, words, again }) {
  const { outcome, right, harm, took_s, faults } = run.verdict;
  const told = words.practice;
  return html`
    <section class="run-verdict" aria-live="polite">
      ${outcome in SHAPES ? shape(SHAPES[outcome]) : nothing}
      <h2>${told[`outcome_${outcome}`]}</h2>
      <p>${told[`outcome_${outcome}_told`]}</p>
      ${proof ? html`<p><b>${proof}</b></p>` : nothing}
      <p>${fill(told.took, { time: lasted({ took_s }, words) })}</p>
      ${harm.length ? html`<h3>${told.harm}</h3>${listed(harm, words)}` : nothing}
      ${right.length ? html`<h3>${told.right}</h3>${listed(right, words)}` : nothing}
      <h3>${told.planted}</h3>
      ${faults.length
        ? faults.map((fault) => html`<p><b>${told[`fault_${fault}`]}.</b> ${termed(told[`told_${fault}`])}</p>`)
        : html`<p>${told.not_planted}</p>`}
      ${isKept ? html`<p class="smallprint">${told.kept}</p>` : nothing}
    </section>
    <button type="button" class="key key-wide" @click=${again}>${told.again}</button>`;
}

// A run as the log keeps it: times of the day, and what was noted in words.
export function recordOf({ run, beganAt, endedAt, words, rig }) {
  const told = words.practice;
  return {
    id: `${beganAt.toISOString()}-practice`,
    kind: "practice",
    title: `${told.title}${colon} ${told[`task_${run.task}`]}`,
    rig: rig && { id: rig.id, name: rig.name },
    who: "",
    began_at: beganAt.toISOString(),
    ended_at: endedAt.toISOString(),
    took_s: run.verdict.took_s,
    outcome: told[`outcome_${run.verdict.outcome}`],
    notes: "",
    entries: run.notes.map(({ at_s, code }) => ({ at: new Date(beganAt.getTime() + at_s * 1000).toISOString(), code, told: words.note[code] })),
  };
}
