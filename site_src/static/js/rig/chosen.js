// Which rig this phone stands beside, and the system of units it is read in.
import { choose, chosen } from "../choices.js";
import { keptRigs } from "../store.js";

// The profile of the chosen rig, or null.
export async function chosenRig() {
  const id = chosen("rig", null);
  return id === null ? null : (await keptRigs()).find((profile) => profile.id === id) ?? null;
}

// Stand beside a rig; the page is then read in its units. Null for none.
export function chooseRig(profile) {
  choose("rig", profile?.id ?? "");
  if (profile) choose("units", profile.units);
}

// The system the pages are read in.
export const chosenSystem = (systems) => {
  const opening = document.documentElement.dataset.system;
  const name = chosen("units", opening);
  return name in systems ? name : opening;
};

// The shelf as calc.rig has it for this rig; the usual one where its profile has a fault.
export function shelfOf(call, profile, shelf, units) {
  if (!profile || call("rig.problems", { profile, shelf, units }).length > 0) return shelf;
  return call("rig.shelf_of", { profile, shelf, units });
}
