// A dump site from above: the pumper at tank 1, the tanks in a row, a jet siphon over each wall with its feed from the pumper, tenders that dump.
import { html, nothing, svg } from "../../../vendor/lit-html/lit-html.js";
import { pipe } from "../../line/signs.js";
import { fill } from "../../shared/site.js";
import { PUMP, WIDE, figure, name, pump } from "./parts.js";

const [TOP, HIGH, GAP] = [56, 60, 26];
const HIGHEST = 172;

function drawing(site, { picture }, u) {
  const left = PUMP + 34;
  const wide = Math.min(HIGH, (WIDE - 4 - left - GAP * (site.tanks - 1)) / site.tanks);
  const x = (place) => left + place * (wide + GAP);
  const middle = TOP + HIGH / 2;
  const places = Array.from({ length: site.tanks }, (_, place) => place);
  const dumped = places.slice(Math.min(1, site.tanks - 1));
  return svg`
    ${pipe(`M${PUMP} ${middle}H${left + wide / 2}`, { wide: 12 })}
    ${places.map((place) => svg`
      <path class="picture-water" d="M${x(place)} ${TOP}h${wide}v${HIGH}h${-wide}z"/>
      <rect class="picture-axis" x=${x(place)} y=${TOP} width=${wide} height=${HIGH} rx="6"/>
      ${figure(x(place) + wide / 2, TOP + 20, place + 1)}`)}
    ${places.slice(1).map((place) => svg`
      ${pipe(`M${x(place) + 8} ${middle + 8}H${x(place) - GAP - 8}`, { wide: 8 })}
      ${pipe(`M${8 + PUMP / 2} ${middle - 16}V30H${x(place) + 8}V${middle + 8}`, { state: "waits" })}`)}
    ${pump(0, middle)}
    ${dumped.map((place) => svg`<rect class="picture-tender" x=${x(place) + wide / 2 - 11} y=${TOP + HIGH + 8} width="22" height="16" rx="3"/>`)}
    ${name(0, 16, fill(picture.site_drafts, { ...u, ...site }), "start")}
    ${name(WIDE - 4, 16, fill(picture.site_tanks, { ...u, ...site }), "end")}
    ${site.siphons ? name(0, HIGHEST - 10, fill(picture.site_siphons, site), "start") : null}`;
}

export const siteView = ({ answer, data: { words }, u }) => (answer?.picture.site ? html`
  <section><h2>${words.picture.site_title}</h2>
  <svg class="picture" viewBox="0 0 ${WIDE} ${HIGHEST}" role="img" aria-label=${words.picture.site}>${drawing(answer.picture.site, words, u)}</svg></section>` : nothing);
