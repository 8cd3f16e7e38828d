// What is chosen once and holds on every page: the system of units, day or night. Small, and wanted before first paint.

const unstored = new Map(); // what storage did not take: it holds for this page only

export function chosen(name, fallback) {
  if (unstored.has(name)) return unstored.get(name);
  try {
    return localStorage.getItem(name) ?? fallback;
  } catch {
    return fallback; // no storage: nothing was chosen
  }
}

export function choose(name, value) {
  try {
    localStorage.setItem(name, value);
    unstored.delete(name);
  } catch {
    unstored.set(name, value);
  }
}
