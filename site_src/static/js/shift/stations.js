// The route of a card: how many steps there are, which is here, and where cab, ground and panel change. The done part is the way back.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { roomIn } from "../line/labels.js";
import { route } from "../line/route.js";
import { fill } from "../shared/site.js";

const isOnItsSide = matchMedia("(max-height: 34em) and (orientation: landscape)");
const BESIDE = 0.58; // of the width, where the keys stand beside the step

// The steps that are most likely still to come: those of the rig as it is known, with the first answer where nobody has said.
function ahead({ sequence, state }) {
  const usual = (question) => (state.rig[question] !== "unknown" && state.rig[question]) || sequence.rig[question][0];
  return sequence.steps.slice(state.position).filter(({ only_if: only = {}, asks, skip_if: skips }) =>
    !skips && Object.entries(only).every(([question, answers]) => answers.includes(usual(question))) && !(asks && state.rig[asks] !== "unknown"));
}

export function stationsView({ sequence, state, steps, words, send, isSecond }) {
  const { offer, confirmed } = state;
  const { shift, place } = words;
  const count = Math.max(offer.of ?? offer.about, offer.number);
  const here = Math.min(offer.number - 1, confirmed.length);
  const ids = [...confirmed.map(({ step }) => step), ...ahead({ sequence, state }).map(({ id }) => id)];
  const stations = Array.from({ length: count }, (_, at) => ({ label: "", place: at / Math.max(count - 1, 1), state: at < here ? "proven" : at === here ? "here" : at === count - 1 ? "end" : "todo" }));
  const places = ids.slice(0, count).map((id) => steps[id]?.place);
  const sections = places.flatMap((name, from) => (from === 0 || name !== places[from - 1] ? [{ from, label: from > here ? place[name] : "" }] : []));
  const said = offer.again ? shift.step_again : fill(offer.of ? shift.step_of : shift.step_about, offer);
  const label = `${offer.can_go_back ? "‹ " : ""}${said}${isSecond ? `, ${shift.step_second}` : ""}`;
  const width = roomIn(document.getElementById("card")) * (isOnItsSide.matches ? BESIDE : 1) - 2;
  return html`
    <div class="stations">
      ${route({ stations, name: said, label, sections, width })}
      ${offer.can_go_back ? html`
        <button type="button" class="stations-back" aria-label=${shift.back} .style=${`--here: ${count > 1 ? here / (count - 1) : 0}`} @click=${() => send({ kind: "back" })}></button>` : nothing}
    </div>`;
}
