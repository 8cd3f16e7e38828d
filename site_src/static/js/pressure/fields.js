// One entry of the page: a number with its keys, what is usual in it, and what calc says of it.
import { stepper } from "../shared/controls.js";
import { refusalOf } from "../shared/refusal.js";

// The kind of quantity of each entry; a height steps by its own step.
export const KINDS = {
  flow: "flow", least: "flow", pressure: "pressure", length: "length", height: "rise", loss: "pressure", loss_at: "flow", device_most: "flow",
  gauge: "pressure", intake: "pressure", lift: "lift", suction: "lift",
  reach_pump: "pressure", reach_end: "pressure", reach_flow: "flow", reach_length: "length",
};
const LEAST = { height: null, length: 0, loss: 0, gauge: 0, intake: null, lift: 0, suction: 0, reach_end: 0, reach_length: 0 };

let emptied = null; // the input that was just emptied by hand: what is usual stands there again once the finger has left it

// A stepper for one entry. `of` names what it belongs to (a line), `entry` is the text with its system, `blank` what is usual.
export function entryStepper({ of, name, label, entry, blank = "", data, system, u, refusal, shown, change }) {
  const { words } = data;
  const kind = KINDS[name];
  const id = `${of}-${name}`;
  const value = entry !== "" ? shown(kind, entry) : emptied === id ? "" : blank;
  const step = data.systems[system].steps[kind];
  const wrong = refusal?.field === name && (refusal.line ?? of) === of;
  return stepper({
    id,
    name,
    label,
    unit: u[`u_${kind}`],
    value,
    usual: blank,
    by: { kind, step, least: name in LEAST ? LEAST[name] : step },
    type: (text) => {
      emptied = text === "" ? id : null;
      change(text);
    },
    left: (input) => {
      if (emptied !== id) return;
      emptied = null;
      input.value = blank;
    },
    refusal: wrong ? refusalOf(words, refusal) : null,
    words,
  });
}
