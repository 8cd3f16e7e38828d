// The one door to the database: what a person enters is kept the moment it is entered.
import { openDB } from "../../vendor/idb/idb.js";
import { tellSaved } from "./unsaved.js";

const PROBE = "probe";
let opening = null;

// The database; opened anew where the browser refused it before, or cleared it under a page that is open.
function database() {
  opening ??= open().catch((fault) => {
    opening = null;
    throw fault;
  });
  return opening;
}

const open = async () => openDB("panelhand", 3, {
  upgrade(opened) {
    for (const store of ["drafts", "rigs", "log", "tests"]) {
      if (!opened.objectStoreNames.contains(store)) opened.createObjectStore(store);
    }
  },
  blocking(version, older, event) {
    opening = null;
    event.target.close(); // a newer version of the site waits for the database: let it go
  },
  terminated() {
    opening = null;
  },
});

// What was entered is noted at once, since a page may go before the database has written it; the note goes once it has.
const note = {
  write(name, text) {
    try {
      localStorage.setItem(`note:${name}`, text);
      return true;
    } catch {
      return false; // no room for a note: the database alone keeps it
    }
  },
  read(name) {
    try {
      return JSON.parse(localStorage.getItem(`note:${name}`)) ?? undefined;
    } catch {
      return undefined;
    }
  },
  drop(name, text) {
    try {
      if (localStorage.getItem(`note:${name}`) === text) localStorage.removeItem(`note:${name}`);
    } catch {
      // there is none
    }
  },
};

// Keep a value, plain data, under a name; resolves to whether it was kept.
export async function keep(name, value) {
  const text = JSON.stringify(value);
  const isNoted = note.write(name, text);
  try {
    await (await database()).put("drafts", value, name);
    note.drop(name, text);
    return tellSaved(name, true);
  } catch {
    return tellSaved(name, isNoted);
  }
}

// The value kept under a name, or undefined.
export async function kept(name) {
  const noted = note.read(name);
  if (noted !== undefined) return noted;
  try {
    return await (await database()).get("drafts", name);
  } catch {
    return undefined;
  }
}

// Every rig profile kept on this phone.
export async function keptRigs() {
  try {
    return await (await database()).getAll("rigs");
  } catch {
    return [];
  }
}

// Change one rig in a single transaction: `change` gets the profile as it is kept now (undefined where there is none)
// and returns it as it shall be, or null to take it away. Resolves to what is kept then; rejects where nothing can be.
export async function changeRig(id, change) {
  const transaction = (await database()).transaction("rigs", "readwrite");
  const profile = change(await transaction.store.get(id));
  if (profile === null) await transaction.store.delete(id);
  else await transaction.store.put(profile, id);
  await transaction.done;
  return profile;
}

// Every record of a store ("log": finished cards and diagnoses, "tests": service tests), in the order of their ids.
export async function keptRecords(store) {
  try {
    return await (await database()).getAll(store);
  } catch {
    return [];
  }
}

// Keep a record, which carries its `id`; resolves to whether it was kept.
export async function keepRecord(store, record) {
  try {
    await (await database()).put(store, record, record.id);
    return true;
  } catch {
    return false;
  }
}

// Change one record in a single transaction: `change` gets it as it is kept now (undefined where there is none) and
// returns it as it shall be. Resolves to that; rejects where nothing can be kept.
export async function changeRecord(store, id, change) {
  const transaction = (await database()).transaction(store, "readwrite");
  const record = change(await transaction.store.get(id));
  await transaction.store.put(record, id);
  await transaction.done;
  return record;
}

// Take a record away for good; rejects where that cannot be done.
export async function dropRecord(store, id) {
  await (await database()).delete(store, id);
}

// Whether the database takes anything now: it may be full, or refused.
export async function hasRoom() {
  try {
    const opened = await database();
    await opened.put("drafts", "room", PROBE);
    await opened.delete("drafts", PROBE);
    return true;
  } catch {
    return false;
  }
}

// Ask the browser not to clear what is kept: "kept", "unpromised", or "unkept" where nothing can be.
export async function askToPersist() {
  if (!(await hasRoom())) return "unkept";
  return (await navigator.storage?.persist?.()) ? "kept" : "unpromised";
}
