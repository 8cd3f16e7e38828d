// The list of shift cards: those that are not for the chosen rig go behind the rest.
import { chosenRig } from "../rig/chosen.js";
import { inWords, known, mayFit } from "../shift/known.js";
import { fill, pageData } from "../shared/site.js";

const [{ questions, cards, words }, rig] = await Promise.all([pageData(), chosenRig()]);
if (rig) {
  const answered = known(questions, rig);
  const what = inWords(answered, words);
  document.querySelector("#for-rig b").textContent = fill(what ? words.shift.for_rig : words.shift.for_unsaid, { name: rig.name, what });
  const others = document.getElementById("others");
  others.querySelector("h2").textContent = fill(words.shift.others, rig);
  for (const card of cards) {
    if (mayFit(card.fits, answered)) continue;
    others.append(document.querySelector(`[data-card="${card.id}"]`));
    others.hidden = false;
  }
}
