// The short form of a card: what the chosen rig's profile rules out is left away, on the screen and on paper; what was seen in the
// card that is under way is marked.
import { startTerms } from "../help/touched.js";
import "../shared/print.js";
import { chosenRig } from "../rig/chosen.js";
import { chosen } from "../shared/choices.js";
import { inWords, known, mayFit } from "../shift/known.js";
import { stopsPump } from "../shared/rig_status.js";
import { fill, home, pageData } from "../shared/site.js";
import { kept } from "../shared/store.js";

startTerms();
// no steps into pump without the technician's name, which the card asks
if ("intoPump" in document.body.dataset && stopsPump({ id: chosen("rig", "") })) {
  for (const part of document.querySelectorAll("section")) part.remove();
  document.getElementById("out").hidden = false;
}
const rows = /** @type {HTMLElement[]} */ ([...document.querySelectorAll(".short > li")]);
const [rig, left] = await Promise.all([chosenRig(), kept(`shift:${document.body.dataset.card}`)]);
const run = left?.state;
const { questions, words } = rig ? await pageData(new URL("shift/", home)) : { questions: [], words: null };
// what the profile says, or what was answered in the card that is under way
const answered = rig ? known(questions, rig) : Object.fromEntries(Object.entries(run?.rig ?? {}).filter(([, answer]) => answer !== "unknown"));
for (const row of rows) {
  row.hidden = row.dataset.asks in answered || !mayFit(JSON.parse(row.dataset.only ?? "{}"), answered);
  const only = row.querySelector("small");
  if (only && row.dataset.only) only.hidden = Object.keys(JSON.parse(row.dataset.only)).every((question) => question in answered);
}
for (const part of document.querySelectorAll("section")) part.hidden = [...part.querySelectorAll("li")].every((row) => row.hidden);
if (rig) {
  const what = inWords(answered, words);
  document.getElementById("for-rig").textContent = fill(what ? words.shift.for_rig : words.shift.for_unsaid, { name: rig.name, what });
}
if (run && run.status !== "done") {
  const seen = new Set(run.confirmed.map(({ step }) => step));
  for (const row of rows) {
    if (row.dataset.step === run.offer?.step) row.dataset.state = "here";
    else if (seen.has(row.dataset.step)) row.dataset.state = "proven";
  }
}
