// The chosen rig's own figures, for a page that computes.
import { calc } from "../shared/engine.js";

// What a page has of its rig: the shelf with the rig's own figures, what of the profile can be used, and its beds. Where
// the profile has a fault, what hangs on it is marked on the shelf and `shelf.faults` says which: see calc.rig.profile.
export const atHand = async (profile, shelf, units) =>
  profile ? calc.ask("rig.at_hand", { profile }, { shelf, units }) : { shelf, rig: null, beds: [], faulty_beds: [] };
