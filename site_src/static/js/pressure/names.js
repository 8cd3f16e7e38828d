// What a line is called, and what it is made of, in a few words.
import { fill, unitWords } from "../shared/site.js";
import { PIPED, isInto, isJoint } from "./layout.js";

const FRACTIONS = { "1/4": "\u00bc", "1/2": "\u00bd", "3/4": "\u00be" };

export function namesOf({ state, words, hoses, tips, lineOf, shown }) {
  function labelOf(id) {
    const line = lineOf(id);
    if (line && isInto(line)) return fill(words.pressure.into, { id, at: line.end.line });
    if (line && isJoint(line)) return fill(words.pressure[`to_${line.device}`], { id });
    return fill(words.pressure[line?.bed ? "line_of_bed" : "line"], { id, bed: line?.bed });
  }

  // A line by what it leads to.
  const nameOf = (line) => (isJoint(line) ? fill(words.pressure[`at_${line.device}`], line) : labelOf(line.id));

  // Its height as calc reads it, where it is not the pump's own.
  function heightOf({ id }, units) {
    const read = state.answer?.lines.find((line) => line.id === id);
    return read?.height ? ` · ${fill(words.pressure[read.is_below ? "height_down" : "height_up"], { height: read.height, ...units })}` : "";
  }

  const runsOf = ({ runs }) => (runs === "1" ? "" : `${runs} × `);

  function told(line) {
    const units = unitWords(words, state.system);
    const height = heightOf(line, units);
    const { chip, label, family: sizes } = hoses[line.hose];
    if (line.hose === PIPED) return `${label}${height}`;
    const size = chip ? `${chip} ${words.unit[sizes === "metric" ? "SI" : "US"].diameter}` : label;
    return `${runsOf(line)}${size} · ${shown("length", line.length)} ${units.u_length}${height}`;
  }

  // Its size as it is drawn, without a unit.
  const sizeAlone = (line) => `${runsOf(line)}${hoses[line.hose].chip ?? hoses[line.hose].label}`.replace(/ ?\b([13]\/[24])/, (_, part) => FRACTIONS[part] ?? ` ${part}`);
  const sizeOf = (line) => `${line.id} · ${sizeAlone(line)}`;
  const lengthOf = (line) => (line.hose === PIPED ? "" : `${shown("length", line.length)} ${unitWords(words, state.system).u_length}`) + heightOf(line, unitWords(words, state.system));

  // What it ends in, as paper says it: kind, tip or flow, pressure.
  function endOf({ end }) {
    const units = unitWords(words, state.system);
    const size = end.kind === "smooth" ? tips.find(({ id }) => id === end.tip)?.label ?? shown("diameter", end.tip) : `${shown("flow", end.flow)} ${units.u_flow}`;
    return `${words.pressure[end.kind]} ${size}, ${shown("pressure", end.pressure)} ${units.u_pressure}`;
  }

  return { labelOf, nameOf, told, endOf, sizeAlone, sizeOf, lengthOf };
}
