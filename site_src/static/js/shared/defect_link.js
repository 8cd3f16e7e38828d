// One tap from what was seen to a defect of the rig: the bay's page, with what was seen filled in.
import { home } from "./site.js";

const MOST = 160;

// origin: diagnosis, test, override or card, as the bay's words have it; rank and scope as calc.bay.records has them.
export function defectLink({ origin, what, seen = "", rank = "out_of_service", scope = "pump" }) {
  const content = { origin, what: what.slice(0, MOST), seen: seen.slice(0, MOST), class: rank, scope };
  return new URL(`checks/defect/#new=${encodeURIComponent(JSON.stringify(content))}`, home).href;
}
