// What stands in an input: an entry as typed, or converted where it was typed in another system. What was converted is kept
// with the last answer, since that stands before the calculator runs.
import { bare, isAsTyped, unitsFor } from "./units.js";

// `calculator()` gives calc's call, or null as long as it does not run.
export function shownIn({ data, state, calculator }) {
  const texts = new Map();
  function shown(kind, entry) {
    if (!kind || !entry?.includes("@") || isAsTyped(entry, state.system)) return bare(entry ?? "");
    const key = `${state.system} ${kind} ${entry}`;
    const call = calculator();
    if (!texts.has(key) && call) texts.set(key, call("entry.shown", { units: unitsFor(data.systems, state.system, [entry]), kind, text: entry }));
    return texts.get(key) ?? "–";
  }
  return {
    shown,
    kept: () => [...texts].filter(([key]) => key.startsWith(`${state.system} `)),
    recall: (kept) => kept.forEach(([key, text]) => texts.set(key, text)),
  };
}
