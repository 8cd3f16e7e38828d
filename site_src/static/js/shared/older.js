// One origin may carry several sites, each under a path of its own. Up to version 1 they shared one database; now each has its
// own, and takes along what was there. At the root of an origin the old one goes on.
import { openDB } from "../../vendor/idb/idb.js";
import { root, scoped } from "./site.js";

const OLDEST = "panelhand";
export const DATABASE = root.pathname === "/" ? OLDEST : `${OLDEST} ${root.pathname}`;

// A database that is there already, or null; none is made.
const existing = (name) => openDB(name, undefined, {
  upgrade(_opened, _from, _to, transaction) {
    transaction.done.catch(() => {});
    transaction.abort();
  },
}).catch(() => null);

// Notes that still wait for the database, see notes.js.
function takeNotes() {
  try {
    for (const name of Object.keys(localStorage)) if (name.startsWith("note:[")) localStorage.setItem(scoped(name), localStorage.getItem(name));
  } catch {
    // no storage, or no room: they stay where they are
  }
}

// What the site's own database is to begin with: [store, key, value] each; nothing where it is there already.
export async function inherited() {
  if (DATABASE === OLDEST) return [];
  const own = await existing(DATABASE);
  own?.close();
  const older = own ? null : await existing(OLDEST);
  if (!older) return [];
  const rows = [];
  for (const store of older.objectStoreNames) {
    const [keys, values] = await Promise.all([older.getAllKeys(store), older.getAll(store)]);
    keys.forEach((key, place) => rows.push([store, key, values[place]]));
  }
  older.close();
  takeNotes();
  return rows;
}
