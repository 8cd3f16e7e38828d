// What is chosen once and holds on every page: the system of units, day or night. Small, and wanted before first paint.

import { tellSaved } from "./unsaved.js";

const unstored = new Map(); // what storage did not take: it holds for this page only

export function chosen(name, fallback) {
  if (unstored.has(name)) return unstored.get(name);
  try {
    return localStorage.getItem(name) ?? fallback;
  } catch {
    return fallback; // no storage: nothing was chosen
  }
}

// Write it where no page need wait; returns whether it is stored.
export function jot(name, value) {
  try {
    localStorage.setItem(name, value);
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
    localStorage.removeItem(name);
  } catch {
    // no storage: there is nothing
  }
}

// As jot, for what is nowhere else: the page says so where it is not stored.
export const choose = (name, value) => tellSaved(name, jot(name, value) ? "kept" : "unkept");
