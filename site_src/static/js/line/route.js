// Stations on a line: where one is, what is done, what is still to come.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { percent, withRoom } from "./labels.js";
import { station } from "./signs.js";

const HIGH = 16; // of the line in its strip, px
const NEAR = 1.05; // rem from one station to the next, under which they would touch: those to do are dots then, and the done ones the thick line alone

// stations: [{ state, label, place }] from the first to the end; state as in signs.js; place from 0 to 1, evenly where none has one.
// at: how far the line is thick, from 0 to 1: to the station where one is, where it is left out. name: what the picture says.
// label: text under the place where one is ("7 of 15"). sections: [{ from, label }], from the station with that index. width: rem there are.
export function route({ stations, at = undefined, name, label = "", sections = [], width = 20 }) {
  const places = stations.map(({ place }, count) => place ?? count / Math.max(stations.length - 1, 1));
  const isNear = width / Math.max(stations.length - 1, 1) < NEAR;
  const here = stations.findIndex(({ state }) => state === "here" || state === "overdue");
  const done = at ?? places[here === -1 ? stations.findLastIndex(({ state }) => state === "proven") : here] ?? 0;
  const named = stations.map((each, count) => ({ text: each.label, place: places[count], kind: "route-name" })).filter(({ text }) => text);
  const labels = withRoom([
    ...(label ? [{ text: label, place: here === -1 ? done : places[here], kind: "route-name" }] : []),
    ...named.filter(({ place }) => place === places[here]), ...named.filter(({ place }) => place !== places[here]),
    ...sections.filter((section) => section.label).map((section) => ({ text: section.label, place: places[section.from], kind: "route-section" })),
  ], width);
  return html`
    <svg class="route" role="img" aria-label=${name} ?data-bare=${!labels.length}>
      <line class="line-waits" stroke-width="3" x1=${percent(done)} x2="100%" y1=${HIGH} y2=${HIGH}/>
      <line class="line-flows" stroke-width="8" x1="0%" x2=${percent(done)} y1=${HIGH} y2=${HIGH}/>
      ${sections.slice(1).map(({ from }) => svg`<line class="line-cut" x1=${percent(between(places, from))} x2=${percent(between(places, from))} y1="3" y2="29"/>`)}
      ${stations.map(({ state }, count) => (count === here || (isNear && state === "proven") ? nothing : station(percent(places[count]), HIGH, isNear && state === "todo" ? "dot" : state)))}
      ${here === -1 ? nothing : station(percent(places[here]), HIGH, stations[here].state)}
      ${labels.map(({ text, place, anchor, kind }) => svg`<text class=${kind} x=${percent(place)} text-anchor=${anchor}>${text}</text>`)}
    </svg>`;
}

// The same as a list down the page: a sign before each row; rows: [{ state, content }].
export const routeList = (rows) => html`
  <ol class="route-list">${rows.map(({ state, content }) => html`
    <li data-state=${state}><svg class="route-sign" viewBox="-14 -14 28 28" aria-hidden="true">${station(0, 0, state)}</svg>${content}</li>`)}
  </ol>`;

const between = (places, from) => (places[from - 1] + places[from]) / 2;
