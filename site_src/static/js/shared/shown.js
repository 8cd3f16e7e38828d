// What stands in an input: an entry as typed, or as calc reads it where it was typed in another system. What calc read is
// kept with the last answer, since that stands before the calculator runs.
import { calc } from "./engine.js";
import { bare, isAsTyped } from "./units.js";

export function shownIn(state) {
  const texts = new Map();
  const keyOf = ([kind, entry]) => `${state.system} ${kind} ${entry}`;
  const isForeign = (kind, entry) => Boolean(kind && entry?.includes("@") && !isAsTyped(entry, state.system));
  return {
    shown: (kind, entry) => (isForeign(kind, entry) ? texts.get(keyOf([kind, entry])) ?? "–" : bare(entry ?? "")),
    // What of the entries on a page, [kind, entry] each, calc is still to read; `learn(read)` takes its texts.
    unread(entries) {
      const unread = entries.filter((pair) => isForeign(...pair) && !texts.has(keyOf(pair)));
      const keys = unread.map(keyOf);
      return { texts: unread, learn: (read) => keys.forEach((key, place) => texts.set(key, read[place])) };
    },
    // The same in a question of its own, for a page whose one question does not read them.
    async read(entries, units) {
      const { texts: unread, learn } = this.unread(entries);
      if (unread.length) learn(await calc.ask("entry.all_shown", { entries: unread }, { units }));
    },
    kept: () => [...texts].filter(([key]) => key.startsWith(`${state.system} `)),
    recall: (kept) => kept.forEach(([key, text]) => texts.set(key, text)),
  };
}
