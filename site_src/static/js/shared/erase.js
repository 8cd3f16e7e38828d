// All that this site has on this phone, taken off it: entries, rigs, records, choices, its files and its worker. A phone that changes hands.
import { deleteDB } from "../../vendor/idb/idb.js";
import { tellErased } from "./erased.js";
import { DATABASE } from "./older.js";
import { holdings } from "./offline.js";
import { root, scoped } from "./site.js";

const MARK = scoped(""); // what names of another site of the origin do not begin with
const isOurs = (name) => (root.pathname === "/" ? !name.startsWith("/") : name.startsWith(MARK));

const [SWEEPS, CLEAN, PAUSE_MS] = [10, 2, 300];
const oursIn = (storage) => Object.keys(storage).filter(isOurs);
const ourCaches = async () => ((await globalThis.caches?.keys()) ?? []).filter((name) => name.endsWith(` ${root.href}`));

async function sweep() {
  await (await navigator.serviceWorker?.getRegistration(root.href))?.unregister();
  await Promise.all((await ourCaches()).map((name) => caches.delete(name)));
  await new Promise((resolve, reject) => {
    deleteDB(DATABASE, { blocked: () => reject(new Error("held")) }).then(resolve, reject);
  });
  for (const name of oursIn(localStorage)) localStorage.removeItem(name);
  sessionStorage.clear();
}

// Resolves once nothing is left: other pages of the site go blank, and one of them or the worker may write a little more before it ends.
// Rejects where the browser refuses, or another page does not let go of the database.
export async function eraseAll() {
  tellErased();
  await holdings(); // a count that is still under way ends in notes of its own
  for (let [sweeps, clean] = [0, 0]; sweeps < SWEEPS; sweeps += 1) {
    await sweep();
    await new Promise((resolve) => { setTimeout(resolve, PAUSE_MS); });
    clean = (await ourCaches()).length || oursIn(localStorage).length ? 0 : clean + 1;
    if (clean === CLEAN) return;
  }
  throw new Error("held");
}
