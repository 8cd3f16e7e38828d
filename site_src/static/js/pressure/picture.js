// The layout drawn to scale, the pressure standing where it is. Turned over it shows what flows now, and a tap shuts a nozzle.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { layoutView } from "../line/layout.js";
import { fill } from "../shared/site.js";
import { everyLine, guestsOf, isInto, isJoint } from "./layout.js";
import { NOW } from "./tabs.js";

export function pictureView(page) {
  const { layout, answer, flowing, lengths, shelf, tab, width, words, u } = page;
  const isNow = tab === NOW;
  const read = byId(answer?.lines);
  const flows = byId(isNow ? flowing?.lines : []);
  const gauge = isNow ? flowing?.pressure : answer?.pressure;
  const rows = everyLine(layout).map(({ line, feeder }) => ({
    id: line.id, feeder: feeder?.id ?? null, length: read[line.id]?.length_ft ?? lengths[line.id] ?? null, bore: shelf.hoses[line.hose].bore_in, runs: Number(line.runs),
    end: isJoint(line) ? "joint" : ["inlet", "into"].includes(line.end.kind) ? line.end.kind : "nozzle", into: isInto(line) ? line.end.line : null,
    ...(isNow ? turned(line, flows[line.id], page) : asked(line, read[line.id], page)),
  }));
  return html`
    <div class=${isNow ? "now" : nothing}>${layoutView({
      lines: rows, width, name: words.pressure.picture,
      pump: { content: html`<span>${gauge ?? "–"}</span>`, name: fill(words.pressure.pump_of, { ...u, pressure: gauge ?? "–" }), press: () => page.act.toPart("at_pump"), isChosen: false },
    })}</div>
    ${onPaper(page, read)}`;
}

const byId = (lines) => Object.fromEntries((lines ?? []).map((line) => [line.id, line]));

// What flows in each of several hoses into one end: above the first, as the others rise to it from below, and below those.
const flowIn = (read, { u }) => (read ? ` · ${read.flow} ${u.u_flow}` : "");
const above = (line, read, page) => (guestsOf(page.layout, line.id).length ? flowIn(read, page) : "");
const below = (line, read, page) => (isInto(line) ? flowIn(read, page) : "");

// The layout as it asks its pressure.
function asked(line, read, page) {
  const { selected, tab, words, u, nameOf, told, sizeOf, lengthOf, act } = page;
  const isChosen = line.id === selected;
  const facts = { ...u, line: nameOf(line), outlet: read?.outlet, flow: read?.end_flow };
  const figure = isInto(line) ? "" : !read ? "–" : isJoint(line) ? read.outlet : html`<b>${read.outlet} ${u.u_pressure}</b><span>${read.end_flow} ${u.u_flow}</span>`;
  return {
    state: read ? "flows" : "waits", isChosen, isEndChosen: isChosen && tab === "nozzle", figure, hose: `${sizeOf(line)}${above(line, read, page)}`, note: `${lengthOf(line)}${below(line, read, page)}`,
    name: `${nameOf(line)}, ${told(line)}${above(line, read, page)}${below(line, read, page)}${isJoint(line) && read ? `, ${fill(words.pressure.joint_of, facts)}` : ""}`,
    endName: read ? fill(words.pressure.end_of, facts) : nameOf(line),
    press: () => act.select(line.id), pressEnd: () => act.select(line.id, isJoint(line) ? "more" : "nozzle"),
  };
}

// The same layout as it flows now: a tap on a hose or its nozzle shuts it, or opens it again.
function turned(line, read, page) {
  const { layout, words, u, nameOf, labelOf, sizeOf, lengthOf, act } = page;
  const isShut = layout.now.shut.includes(line.id);
  if (isJoint(line)) return { state: "flows", isChosen: false, figure: "", hose: sizeOf(line), note: lengthOf(line), name: nameOf(line), press: null };
  const facts = { ...u, ...read, line: labelOf(line.id) };
  const before = read && (read.is_shut || "open_flow" in read) ? fill(words.now.was, { ...u, flow: read.open_flow ?? read.rated_flow, outlet: read.open_outlet ?? read.rated_outlet }) : read ? fill(words.now.rated_at, { ...u, flow: read.rated_flow }) : nothing;
  const name = `${fill(words.now[isShut ? "open_it" : "shut_it"], facts)}${!read ? "" : isShut ? "" : `: ${fill(words.now.flows, facts)}`}`;
  return {
    state: !read || isShut ? "waits" : "flows", isShut, isChosen: false, isEndChosen: isShut, hose: sizeOf(line), note: `${lengthOf(line)}${below(line, read, page)}`, name, endName: name,
    figure: !read ? "–" : isShut ? html`<b>${words.now.is_shut}</b><span>${before}</span>` : html`<b>${read.flow} ${u.u_flow}</b><span>${read.outlet} ${u.u_pressure}</span><span>${before}</span>`,
    press: () => act.shut(line.id, !isShut), pressEnd: () => act.shut(line.id, !isShut),
  };
}

// What the drawing is on paper besides: each line in words.
const onPaper = ({ lines, nameOf, told, endOf, u }, read) => html`
  <ul class="on-paper lay-told">${lines.map((line) => html`
    <li><b>${nameOf(line)}</b> ${told(line)}${isJoint(line) || isInto(line) ? nothing : html` · ${endOf(line)}`}${read[line.id] ? html` · <b>${read[line.id].outlet} ${u.u_pressure}</b> · ${isInto(line) ? read[line.id].flow : read[line.id].end_flow} ${u.u_flow}` : nothing}</li>`)}
  </ul>`;
