// A card that is not for the rig this phone stands beside: the cards that are, and a way on for another rig.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { inWords, mayFit } from "./known.js";

// The cards for a rig, as links.
export const cardsFor = ({ cards, titles }, answered) => html`
  <div class="rows">
    ${cards.filter((card) => mayFit(card.fits, answered)).map(({ id }) => html`<a class="key key-wide" href="../${id}/">${titles[id]}</a>`)}
  </div>`;

export function unlikeView({ data, rig, answered, take }) {
  const { words, sequence } = data;
  const against = Object.keys(sequence.fits).filter((question) => question in answered && !sequence.fits[question].includes(answered[question]));
  const one = (question, answer) => inWords({ [question]: answer }, words);
  const told = {
    name: rig.name,
    wanted: against.map((question) => sequence.fits[question].map((answer) => one(question, answer)).join(` ${words.shift.only_or} `)).join(", "),
    what: against.map((question) => one(question, answered[question])).join(", "),
  };
  return html`
    <section role="alert">
      <p class="notice">${fill(words.shift.unlike, told)}</p>
      <h2>${fill(words.shift.unlike_take, rig)}</h2>
      ${cardsFor(data, answered)}
      <button type="button" class="key key-wide" @click=${take}>${words.shift.unlike_other}</button>
    </section>`;
}
