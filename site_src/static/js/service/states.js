// A part whose readings repeat, at each pressure or for each meter: one of these states is open at a time, the others stand folded with how far they are.
import { html } from "../../vendor/lit-html/lit-html.js";
import { labelOf } from "./entries.js";
import { testOf } from "./record.js";
import { mark } from "./status.js";
import { fill } from "../shared/site.js";

const LEAST_FIELDS = 6; // fewer are all in sight

// The state that a reading is of: its pressure, else what it is read on.
function stateOf(name, { answer }) {
  const parts = name.split(".");
  return parts.find((part) => answer.points.some(({ id }) => id === part)) ?? parts[0];
}

// The states of a part as [[id, its fields]]; none where all of it is in sight.
export function statesOf(view, test) {
  const states = new Map();
  for (const field of test.fields) {
    const id = stateOf(field.id, view);
    states.set(id, [...(states.get(id) ?? []), field]);
  }
  return states.size > 1 && test.fields.length >= LEAST_FIELDS && test.fields.every(({ id }) => id.includes(".")) ? [...states] : [];
}

// A reading's name within its state.
export const labelWithin = (name, view) => labelOf(name.split(".").filter((part) => part !== stateOf(name, view)).join("."), view);

const unread = ({ record }, test, fields) => fields.filter(({ id }) => !testOf(record, test.id).values?.[id]);

// The one that is open: the one touched or led to; as the part is opened the first with something to read.
function openOf(view, test, states) {
  const { page } = view;
  const led = page.cell && test.fields.find(({ id }) => id === page.cell || id.replaceAll(".", "-") === page.cell);
  return (page.state ??= led ? stateOf(led.id, view) : states.find(([, fields]) => unread(view, test, fields).length)?.[0] ?? "");
}

function open(view, id) {
  view.page.state = id;
  view.act.redraw();
  document.getElementById(`state-${id}`)?.scrollIntoView({ block: "nearest" });
}

// Where the state that is open is read and another is not: that one, for the dock.
export function nextState(view, test) {
  const states = statesOf(view, test);
  const standing = states.find(([id]) => id === openOf(view, test, states));
  const next = states.find(([, fields]) => unread(view, test, fields).length);
  if (!next || !standing || unread(view, test, standing[1]).length) return null;
  return html`<button type="button" class="key key-act" @click=${() => open(view, next[0])}>${fill(view.words.test.next, { title: labelOf(next[0], view) })}</button>`;
}

export function statesView(view, test, judged, fieldView) {
  const states = statesOf(view, test);
  const standing = openOf(view, test, states);
  const touched = (id) => (event) => {
    event.preventDefault();
    open(view, id === view.page.state ? "" : id);
  };
  return states.map(([id, fields]) => html`
    <details class="state" id="state-${id}" .open=${id === standing}>
      <summary @click=${touched(id)}><span>${labelOf(id, view)}</span>${standingView(view, test, judged, id, fields)}</summary>
      ${fields.map(fieldView)}</details>`);
}

// How far a state is: what failed in it, that all is read, or how much of it.
function standingView(view, test, judged, id, fields) {
  const { words } = view;
  const left = unread(view, test, fields).length;
  const isFailed = judged.figures.some((figure) => figure.status === "fail" && stateOf(figure.id, view) === id);
  const status = isFailed ? "fail" : left ? null : "pass";
  return html`<small>${status ? words.figure_status[status] : fill(words.test.number, { count: fields.length - left, of: fields.length })}</small>${status ? mark(status) : ""}`;
}
