// What is chosen once and holds on every page: the system of units, day or night. Small, and wanted before first paint.

import { scoped } from "./site.js";
import { tellSaved } from "./unsaved.js";

const OLDER = ["rig", "units", "look", "language"]; // chosen before each site of an origin had its own
const unstored = new Map(); // what storage did not take: it holds for this page only

export function chosen(name, fallback) {
  if (unstored.has(name)) return unstored.get(name);
  try {
    return localStorage.getItem(scoped(name)) ?? (OLDER.includes(name) ? localStorage.getItem(name) : null) ?? fallback;
  } catch {
    return fallback; // no storage: nothing was chosen
  }
}

// Write it where no page need wait; returns whether it is stored.
export function jot(name, value) {
  try {
    localStorage.setItem(scoped(name), value);
    unstored.delete(name);
    return true;
  } catch {
    unstored.set(name, value);
    return false;
  }
}

export function drop(name) {
  unstored.delete(name);
  try {
    localStorage.removeItem(scoped(name));
  } catch {
    // no storage: there is nothing
  }
}

// As jot, for what is nowhere else: the page says so where it is not stored.
export const choose = (name, value) => tellSaved(name, jot(name, value) ? "kept" : "unkept");
