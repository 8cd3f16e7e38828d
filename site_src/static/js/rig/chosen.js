// Which rig this phone works for, and the system of units it is read in.
import { choose, chosen } from "../shared/choices.js";
import { keptRecords } from "../shared/store.js";

// An answer of an older profile that says too little: what it stood for is asked, not guessed (UNSAID of calc.rig.fields).
const asked = (profile) => (profile?.drive === "rear" ? { ...profile, drive: "" } : profile);

// The profile of the chosen rig as it was last typed, or null.
export async function chosenRig() {
  const id = chosen("rig", null);
  const kept = id === null ? null : (await keptRecords("rigs", { concerns: (profile) => profile?.id === id }))[0];
  return kept ? asked(kept) : null;
}

// Work for a rig; the page is then read in its units. Null for none.
export function chooseRig(profile) {
  choose("rig", profile?.id ?? "");
  if (profile) choose("units", profile.units);
}

// The system the pages are read in.
export const chosenSystem = (systems) => {
  const opening = document.documentElement.dataset.system;
  const name = chosen("units", opening);
  return Object.hasOwn(systems, name) ? name : opening;
};
