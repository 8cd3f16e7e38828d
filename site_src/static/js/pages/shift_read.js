// A whole card: what the chosen rig's profile rules out is left away, on the screen and on paper.
import "../shared/print.js";
import { chosenRig } from "../rig/chosen.js";
import { inWords, known, mayFit } from "../shift/known.js";
import { fill, home, pageData } from "../shared/site.js";

const rig = await chosenRig();
if (rig) {
  const { questions, words } = await pageData(new URL("shift/", home));
  const answered = known(questions, rig);
  for (const step of document.querySelectorAll(".whole > li")) {
    step.hidden = step.dataset.asks in answered || !mayFit(JSON.parse(step.dataset.only ?? "{}"), answered);
  }
  for (const note of document.querySelectorAll(".whole-note")) note.hidden = !mayFit(JSON.parse(note.dataset.only), answered);
  const what = inWords(answered, words);
  const told = document.getElementById("for-rig");
  told.textContent = fill(what ? words.shift.for_rig : words.shift.for_unsaid, { name: rig.name, what });
  told.hidden = false;
}
