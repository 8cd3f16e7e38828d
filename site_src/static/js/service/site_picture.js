// The site of a test as it stands: open water, lift, suction hose with its strainer, the pump, and hose to the gauge and the pitots.
import { svg, html } from "../../vendor/lit-html/lit-html.js";
import { nozzle, pipe } from "../line/signs.js";
import { figure, hydrant, name, pump, PUMP, WIDE } from "../reckon/pictures/parts.js";

const [LINE, WATER, BED, STRAINER] = [44, 118, 178, 148]; // heights: the pump's line, the water, its bed, the strainer
const AT = { lift: 20, hose: 92, pump: 150, gauge: 232, tip: 296 };

// Each amount stands where it is; what nobody entered, or cannot be used, is a dash.
export function sitePicture({ words, record: { conditions }, shown, u, answer }, isDraft) {
  const figureOf = (kind, entry) => (answer.problems.some(({ place }) => place === `conditions.${entry}`) ? "" : shown(kind, conditions[entry] ?? ""));
  const amount = (entry) => `${figureOf("length", entry) || "–"} ${u.u_length}`;
  const size = figureOf("diameter", "suction_size_in");
  const bore = parseFloat(conditions.suction_size_in) || null;
  return html`
    <svg class="picture site-picture" viewBox="0 0 ${WIDE} ${isDraft ? 190 : 92}" role="img" aria-label=${words.condition.picture}>
      ${isDraft ? draft({ words, amount, bore, size, u }) : pressurised(bore)}
      ${pump(AT.pump, LINE)}
      ${pipe(`M${AT.pump + PUMP} ${LINE}H${AT.tip}`, { wide: 10 })}
      <circle class="line-junction" cx=${AT.gauge} cy=${LINE - 22} r="11"/><path class="picture-tick" d="M${AT.gauge} ${LINE - 11}v6M${AT.gauge} ${LINE - 22}l6 -5"/>
      ${nozzle(AT.tip, LINE)}
      ${name(WIDE, LINE + 30, words.condition[conditions.flow_by === "meter" ? "meter" : "pitot"], "end")}
    </svg>`;
}

const draft = ({ words, amount, bore, size, u }) => svg`
  <path class="picture-water-line" d="M4 ${WATER}q11 -8 22 0t22 0 22 0 22 0 22 0 22 0"/><path class="picture-axis" d="M4 ${BED}H${AT.pump + PUMP}"/>
  ${pipe(`M${AT.hose} ${STRAINER}V${LINE + 16}q0 -16 16 -16H${AT.pump}`, { bore, wide: bore ? undefined : 14 })}
  <path class="line-block" d="M${AT.hose - 12} ${STRAINER}h24v12h-24z"/>
  <path class="picture-tick" d="M${AT.lift} ${LINE}V${WATER}M${AT.lift - 8} ${LINE}h16M${AT.lift - 8} ${WATER}h16"/>
  ${figure(AT.lift + 12, (LINE + WATER) / 2 + 6, amount("lift_ft"), "start")}
  ${name(AT.hose + 26, (LINE + WATER) / 2 + 14, `${size || "–"} ${u.u_diameter} · ${amount("suction_length_ft")}`, "start")}
  ${name(AT.hose + 26, STRAINER - 10, `${words.picture.strainer} ${amount("strainer_ft")}`, "start")}
  ${name(AT.hose + 26, BED - 8, `${words.picture.depth} ${amount("depth_ft")}`, "start")}`;

const pressurised = (bore) => svg`${hydrant(AT.lift, LINE)}${pipe(`M${AT.lift + 12} ${LINE}H${AT.pump}`, { bore, wide: bore ? undefined : 14 })}`;
