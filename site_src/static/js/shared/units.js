// Entries as typed, each with the system it was typed in ("200@US"); and the units that calc is handed.
import { decimal, longest } from "./site.js";

// What was typed as an entry: no more of it than anyone could mean.
export const tagged = (typed, system) => `${typed.replaceAll("@", "").slice(0, longest - system.length - 1)}@${system}`;

export const bare = (entry) => entry.split("@")[0];

// Whether an entry stands in its input as it was typed, without a look from calc.
export const isAsTyped = (entry, system) => entry.endsWith(`@${system}`) && (decimal === "." || !entry.includes("."));

// Whether something may be kept as an entry, whatever it says, as calc.base.entry.is_text has it.
export const isEntry = (systems, entry) => typeof entry === "string" && entry.length <= longest
  && (!entry.includes("@") || Object.hasOwn(systems, entry.slice(entry.indexOf("@") + 1)));

// What calc.base.display calls units: the systems that are wanted, and the one that is shown.
export function unitsFor(systems, shown, entries = null) {
  const typedIn = entries === null ? Object.keys(systems) : JSON.stringify(entries).match(/@\w+/g) ?? [];
  const wanted = new Set([shown, ...typedIn.map((mark) => mark.replace("@", ""))]);
  return {
    shown,
    decimal,
    systems: Object.fromEntries([...wanted].filter((name) => Object.hasOwn(systems, name)).map((name) => [name, systems[name].kinds])),
  };
}

// The same, of all systems, one object for each that is shown: what calc is handed once and only named after that.
export function unitsOnce(systems) {
  const made = Object.create(null);
  return (shown) => (made[shown] ??= unitsFor(systems, shown));
}
