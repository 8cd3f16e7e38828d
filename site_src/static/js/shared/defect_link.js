// One tap from what was seen to a defect of the rig: the bay's page, with what was seen filled in.
import { fragmentOf } from "./handed.js";
import { home } from "./site.js";

// origin: diagnosis, test, override, card or report, as the bay's words have it; rank and scope as calc.bay.records has them; rule:
// the id of the condition that proposes them, if one does.
export const defectLink = ({ origin, what, seen = "", rank = "out_of_service", scope = "pump", rule = "" }) =>
  new URL(`checks/defect/${fragmentOf({ origin, what, seen, class: rank, scope, rule })}`, home).href;

const WHOLE_RIG = new Set(["moved", "road_fails"]); // orders after which it is not driven either

// What a defect that a hazard's order answers applies to.
export const scopeOf = (order) => (WHOLE_RIG.has(order) ? "apparatus" : "pump");
