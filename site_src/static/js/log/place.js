// Where a run is, and whether it is training: on the card, out of the way of its steps, and at the run in the log.
import { html } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/chips.js";
import { colon } from "../shared/site.js";

const PLACES = ["scene", "station", "ground"];

// Apart from the rig's record: what is run to learn.
export const isTraining = ({ kind, training }) => kind === "practice" || training === true;

// Answered faster than it can be read; an older version had that as an entry alone.
export const isUnseen = ({ unseen, entries }) => unseen ?? (entries ?? []).some(({ event }) => event === "hurried");

// What a run says of its place, in words; empty where nobody said.
export const placeWords = ({ place }, words) => (place ? words.place[place] : "");

// `change` takes what is said: the training ground is training too.
export const placeView = ({ run, words, change }) => html`
  <div class="run-place">
    ${chips({ legend: words.legend, name: `place-${run.id}`, value: run.place ?? "", choices: PLACES.map((id) => ({ id, label: words.place[id] })),
      change: (place) => change({ place, ...(place === "ground" && { training: true }) }) })}
    <button type="button" class="key" aria-pressed=${run.training === true} @click=${() => change({ training: !run.training })}>${words.training}${colon} ${run.training ? words.yes : words.no}</button>
  </div>`;
