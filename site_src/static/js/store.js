// The one door to the database: what a person enters is kept the moment it is entered.
import { openDB } from "../vendor/idb/idb.js";

const database = openDB("panelhand", 1, {
  upgrade(opened) {
    opened.createObjectStore("drafts");
  },
});

// Keep a value under a name; resolves to whether it was kept.
export async function keep(name, value) {
  try {
    await (await database).put("drafts", value, name);
    return true;
  } catch {
    return false;
  }
}

// The value kept under a name, or undefined.
export async function kept(name) {
  try {
    return await (await database).get("drafts", name);
  } catch {
    return undefined;
  }
}

// Ask the browser not to clear what is kept: "kept", "unpromised", or "unkept" where nothing can be.
export async function askToPersist() {
  try {
    await database;
  } catch {
    return "unkept";
  }
  return (await navigator.storage?.persist?.()) ? "kept" : "unpromised";
}
