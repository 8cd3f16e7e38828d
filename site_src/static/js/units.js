// Entries as typed, each with the system it was typed in ("200@US"); and the units that calc is handed.
import { choose } from "./choices.js";
import { chips } from "./chips.js";

export const tagged = (typed, system) => `${typed.replaceAll("@", "")}@${system}`;

export const bare = (entry) => entry.split("@")[0];

// Whether the system an entry says it was typed in is one there is.
export const isOf = (systems, entry) => !entry.includes("@") || Object.hasOwn(systems, entry.slice(entry.indexOf("@") + 1));

// What calc.display calls units: the systems that are wanted, and the one that is shown.
export function unitsFor(systems, shown, entries = null) {
  const typedIn = entries === null ? Object.keys(systems) : JSON.stringify(entries).match(/@\w+/g) ?? [];
  const wanted = new Set([shown, ...typedIn.map((mark) => mark.replace("@", ""))]);
  return {
    shown,
    systems: Object.fromEntries([...wanted].filter((name) => name in systems).map((name) => [name, systems[name].kinds])),
  };
}

// The choice of the system a page is read in.
export const systemChips = ({ systems, system, words, change }) => chips({
  name: "units",
  legend: words.units.title,
  value: system,
  choices: Object.keys(systems)
    .sort((one, other) => systems[one].place - systems[other].place)
    .map((id) => ({ id, label: words.units[id] })),
  change: (id) => {
    choose("units", id);
    change(id);
  },
});
