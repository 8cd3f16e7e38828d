// The acts of the page at the thumb, each in its place whatever the layout; and the layouts that are ready, as drawings.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { layoutView } from "../line/layout.js";
import { fold } from "../shared/fold.js";
import { everyLine, isInto, isJoint } from "./layout.js";
import { NOW } from "./tabs.js";

export function dockView({ tab, canUndo, hasRoom, words, act }) {
  const isNow = tab === NOW;
  const key = (name, press, isOff) => html`<button type="button" class="key" ?disabled=${isOff} @click=${press}>${words.pressure[name]}</button>`;
  return html`
    <div class="dock">
      ${key("add_line", act.addLine, isNow || !hasRoom("line"))}
      ${key("add_wye", act.addWye, isNow || !hasRoom("wye"))}
      <button type="button" class="key key-act" aria-pressed=${isNow ? "true" : "false"} @click=${() => act.open(isNow ? "length" : NOW)}>${words.now[isNow ? "back" : "title"]}</button>
      ${key("undo", act.undo, !canUndo)}
    </div>`;
}

const [SMALL, END] = [22, 1.5]; // rem across of a ready layout's drawing, and of them past its nozzles

// A drawing of a ready layout; its lengths are typed plainly in the data, in the page's own units.
const drawing = ({ layout, shelf, sizeOf }) => layoutView({
  width: SMALL, ends: END, name: "", pump: { content: nothing },
  lines: everyLine(layout).map(({ line, feeder }) => ({
    id: line.id, feeder: feeder?.id ?? null, length: parseFloat(line.length), bore: shelf.hoses[line.hose].bore_in, runs: Number(line.runs), state: "flows",
    end: isJoint(line) ? "joint" : ["inlet", "into"].includes(line.end.kind) ? line.end.kind : "nozzle", into: isInto(line) ? line.end.line : null, hose: sizeOf(line), note: "", figure: "",
  })),
});

export const readyView = ({ ready, shelf, sizeAlone, words, act, redraw }) => fold({ name: "ready", summary: words.pressure.ready, kind: "section", redraw }, () => html`
  <div class="ready">${ready.map(({ id, layout }) => html`
    <button type="button" class="key" @click=${(event) => {
      event.target.closest("details").open = false;
      act.ready(layout);
    }}><span>${words.ready[id]}</span><span class="ready-drawn" aria-hidden="true">${drawing({ layout, shelf, sizeOf: sizeAlone })}</span></button>`)}
  </div>`);
