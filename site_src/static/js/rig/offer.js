// A rig that was brought in, before it is taken: how its hose figures stand to the handbook's, and what it changes of the
// rig whose place it would take.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { differences } from "./differences.js";
import { figureText } from "./hoses.js";
import { names } from "./travel.js";

const MOST_OPEN = 1; // of many rigs each opens on its own

export function offerView(travel, context) {
  const { words, offered } = travel;
  const isHere = offered.some(({ profile }) => travel.inPlaceOf(profile));
  const key = (label, press) => html`<button type="button" class="key key-wide" @click=${press}>${label}</button>`;
  return html`
    <section class="notice offer">
      <h2>${words.carry.take_title}</h2>
      ${offered.map(({ profile, figures }) => html`
        <details ?open=${offered.length <= MOST_OPEN}>
          <summary>${profile.name}</summary>
          ${figuresOf(figures, context)}
          ${changesOf(travel.inPlaceOf(profile), profile, context)}
        </details>`)}
      <div class="rows">
        ${isHere
          ? html`${key(words.carry.take_copy, () => travel.take(true))}${key(words.carry.take_replace, () => travel.take(false))}`
          : key(fill(words.carry.take, { name: names(offered) }), () => travel.take(false))}
        ${key(words.carry.take_leave, () => {
          travel.offered = null;
          travel.redraw();
        })}
      </div>
    </section>`;
}

function figuresOf(all, { data }) {
  const { words } = data;
  const figures = all.filter(({ origin }) => origin !== "handbook");
  if (!figures.length) return html`<p>${words.carry.figures_none}</p>`;
  const label = ({ hose }) => data.hoses.find(({ id }) => id === hose).label;
  return html`
    <h3>${words.carry.figures}</h3>
    <ul>${figures.map((figure) => html`<li class=${figure.is_large ? "large" : nothing}>${label(figure)}${colon} ${figureText(figure, data)}</li>`)}</ul>`;
}

function changesOf(before, after, context) {
  if (!before) return nothing;
  const { words } = context.data;
  const changes = differences(before, after, context);
  if (!changes.length) return html`<p>${fill(words.carry.changes_none, before)}</p>`;
  return html`
    <h3>${fill(words.carry.changes, before)}</h3>
    <ul>${changes.map(({ where, field, change }) => html`<li>${[where, field].filter(Boolean).join(", ")}${colon} ${change}</li>`)}</ul>`;
}
