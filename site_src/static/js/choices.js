// What is chosen once and holds on every page: the system of units, day or night. Small, and wanted before first paint.

export function chosen(name, fallback) {
  try {
    return localStorage.getItem(name) ?? fallback;
  } catch {
    return fallback; // no storage: nothing was chosen
  }
}

export function choose(name, value) {
  try {
    localStorage.setItem(name, value);
  } catch {
    // it holds for this page only
  }
}
