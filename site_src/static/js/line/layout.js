// Hose as it lies, from the pump to its nozzles: thick by bore, long by the square root of the length, each piece a button where it
// is drawn, with what stands there beside it. Rows go down in rem and lengths across in percent, so that letters may grow.
import { rem } from "./labels.js";
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { crossBar, inlet, junction, nozzle, pipe, thickness } from "./signs.js";
import { tree } from "./tree.js";

const LEFT = 3; // rem for the pump
const [ENDS, TIGHT] = [6.25, 5.5]; // rem for what stands at a nozzle; where many joints lie before it
const LEAST = { joint: 4.125, end: 4.75 }; // rem a hose to a joint, or to its end, takes at least: a target and what lies between two
const BEND = 2; // rem that a hose takes to come to its row
const TARGET = 3.5;
const REM = 16; // of the drawing's own numbers, whatever the reader's letters are
const PLAIN = 16; // px of a rem where nobody chose larger letters; larger ones give way where the picture would be cut

const u = (rem) => `calc(var(--u) * ${rem})`;

// width: rem there are; ends: of them, for what stands at a nozzle. name: what the picture is. pump: { content, name, press, isChosen }.
// lines: [{ id, feeder, into, length, bore, runs, state, end, isChosen, isShut, hose, note, name, press, figure, endName, pressEnd, isEndChosen }]:
// state and bore as in signs.js; end "joint", "nozzle", "inlet", or "into" the end of the line \`into\`, which brings neither sign nor figure; hose (above it), note (under it) and figure (at its end) are what is read there;
// name and endName what a screen reader says. Without `press` it is a picture only.
export function layoutView({ lines, pump, width, name, ends = isDeep(lines) ? TIGHT : ENDS }) {
  const { pieces, rows, wide } = tree(lines, { room: Math.max(width - LEFT - ends, 0), least: LEAST });
  const whole = LEFT + wide + ends;
  const shrink = Math.min(1, Math.max(width / whole, PLAIN / rem()));
  const isWide = whole * shrink > width + 0.01;
  const thickest = Math.max(...lines.map((line) => half(line)));
  const high = (rows === 1 ? 6.5 : rows === 2 ? 5.5 : 4.25) + Math.max(thickest - 0.75, 0) * 2; // rem a row
  const middle = (row) => (row + 0.5) * high;
  const across = (rem) => `${((100 * rem) / whole).toFixed(3)}%`;
  const box = (left, right, row) => `left:${across(left)};width:${across(right - left)};top:${u(middle(row) - high / 2 + 0.25)};height:${u(high - 0.5)}`;
  const placed = lines.map((line) => ({ line, ...pieces[line.id], from: LEFT + pieces[line.id].from, to: LEFT + pieces[line.id].to }));
  const roots = placed.filter(({ line }) => line.feeder === null).map(({ row }) => row);
  const [top, foot] = [middle(Math.min(...roots)) - 1.125, middle(Math.max(...roots)) + 1.125];
  const order = placed.flatMap((piece) => [{ at: piece.row, x: piece.from, view: hoseKey(piece, box) }, ...(["joint", "into"].includes(piece.line.end) ? [] : [{ at: piece.row, x: piece.to, view: endKey(piece, box, whole) }])]);
  order.push({ at: Math.min(...roots), x: 0, view: pumpKey(pump, foot - top, `top:${u((top + foot - Math.max(foot - top, TARGET)) / 2)};height:${u(Math.max(foot - top, TARGET))};width:${across(LEFT + 0.5)}`) });
  return html`
    <div class="lay" role="group" aria-label=${name} ?data-wide=${isWide}>
      <div class="lay-ground" .style=${`--u:${shrink}rem;width:${isWide ? u(whole) : `min(100%, ${width}rem)`};height:${u(rows * high)}`}>
        <svg class="lay-drawn" viewBox="0 0 ${whole * REM} ${rows * high * REM}" preserveAspectRatio="none" aria-hidden="true">
          ${[...placed].sort((one, other) => Number(one.line.isChosen) - Number(other.line.isChosen)).map((piece) => hose(piece, middle))}
          ${placed.map((piece) => sign(piece, middle))}
        </svg>
        ${order.sort((one, other) => one.at - other.at || one.x - other.x).map(({ view }) => view)}
      </div>
    </div>`;
}

// Of the hoses side by side of a line: rem from one to the next, and of each; and half of them all.
function bundle({ bore, runs = 1 }) {
  const between = Math.min(thickness(bore) + 4, 48 / runs);
  return runs === 1 ? [0, thickness(bore)] : [between, Math.min(thickness(bore), between - 2)];
}

function half(line) {
  const [between, wide] = bundle(line);
  return (between * ((line.runs ?? 1) - 1) + wide) / 2 / REM;
}

// Whether three hoses or more lie one behind another.
const isDeep = (lines) => lines.some(({ feeder }) => lines.find(({ id }) => id === feeder)?.feeder);

function hose({ line, from, to, row, start, meets = row }, middle) {
  const [x, end, y, at, last] = [from * REM, (to + (line.end === "joint" ? 0 : 0.125)) * REM, middle(start) * REM, middle(row) * REM, middle(meets) * REM];
  const runs = line.runs ?? 1;
  const [between, wide] = bundle(line);
  return Array.from({ length: runs }, (_, run) => {
    const by = (run - (runs - 1) / 2) * between;
    const bend = Math.min(BEND * REM, (end - x) * 0.7);
    const path = `${start === row ? `M${x} ${at + by}` : `M${x} ${y}C${x + bend / 2} ${y} ${x + bend / 2} ${at + by} ${x + bend} ${at + by}`}${meets === row ? `H${end}` : `H${end - bend}C${end - bend / 2} ${at + by} ${end - bend / 2} ${last} ${end} ${last}`}`;
    return svg`<g class="lay-hose" data-line=${line.id} data-state=${line.state}>${pipe(path, { state: line.state, wide, isChosen: line.isChosen })}</g>`;
  });
}

function sign({ line, to, row }, middle) {
  const [x, y] = [to * REM, middle(row) * REM];
  if (line.end === "into") return line.isShut ? crossBar(x - 2.5 * REM, y) : null;
  if (line.end === "joint") return junction(x, y, 10);
  return svg`${line.isShut ? crossBar(x - 10, y) : null}${line.end === "inlet" ? inlet(x, y) : nozzle(x, y)}`;
}

const key = ({ kind, place, id = null, name, isPressed, press, content }) => press
  ? html`<button type="button" class="lay-key ${kind}" data-line=${id ?? nothing} .style=${place} aria-pressed=${isPressed ? "true" : "false"} @click=${press}><span class="lay-name">${name}</span><span class="lay-read" aria-hidden="true">${content}</span></button>`
  : html`<span class="lay-key ${kind}" data-line=${id ?? nothing} .style=${place}><span class="lay-read">${content}</span></span>`;

// A note breaks between its pieces alone.
const inPieces = (note) => note.split(" \u00b7 ").map((piece) => piece.replaceAll(" ", "\u00a0")).join("\u00a0\u00b7 ");

// A tap on the joint of a hose is one on what it ends in.
function hoseKey({ line, from, to, row, start }, box) {
  const joins = line.end === "joint";
  const left = from + (line.feeder === null ? 1 : 0.875);
  const right = to + (joins ? 0.375 : -0.25);
  const press = line.press && ((event) => {
    const { right: edge, width } = event.currentTarget.getBoundingClientRect();
    const isAtJoint = joins && event.detail && edge - event.clientX < width * Math.min(1.375 / (right - left), 0.5);
    (isAtJoint ? line.pressEnd : line.press)();
  });
  const clear = half(line) + 0.125 + (line.isChosen ? 0.375 : 0);
  return key({
    kind: joins ? "lay-line lay-joined" : "lay-line", place: box(left, right, row), id: line.id, name: line.name, isPressed: line.isChosen, press,
    content: html`
      <span class="lay-label" ?data-bent=${start !== row} .style=${`bottom:calc(50% + ${u(clear)})`}>${line.hose}</span>
      <span class="lay-note" ?data-met=${line.end === "into"} ?data-bent=${start !== row} ?data-fed=${line.feeder !== null} .style=${`top:calc(50% + ${u(clear)})`}>${inPieces(line.note)}</span>
      ${joins ? html`<span class="lay-joint" data-below=${to - from < 6.5 ? line.note.split(" \u00b7 ").length : nothing}>${line.figure}</span>` : nothing}`,
  });
}

const endKey = ({ line, to, row }, box, whole) => key({
  kind: "lay-end", place: box(to + 0.25, whole, row), id: line.id, name: line.endName, isPressed: line.isEndChosen, press: line.pressEnd, content: line.figure,
});

const pumpKey = (pump, high, place) => key({ kind: "lay-pump", id: null, place: `left:0;${place}`, name: pump.name, isPressed: pump.isChosen, press: pump.press, content: html`<span class="lay-block" .style=${`height:${u(high)}`}>${pump.content}</span>` });
