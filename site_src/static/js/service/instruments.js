// Test instruments by the day until which their calibration holds. They go from test to test of a rig, so its newest test has them.
import { calc } from "../shared/engine.js";
import { keptRecords } from "../shared/store.js";
import { aheadMin } from "../shared/times.js";
import { newestFirst } from "./record.js";

// Where each stands at a moment, as a row of the due board.
export const instrumentsAt = (equipment, at) => calc.ask("board.until", {
  dates: equipment.map(({ due }, place) => ({ id: `instrument_${place}`, date: due ?? "" })), on_ms: at, offset_min: aheadMin() });

// The instruments of a rig that have a due date, each with its name and how it stands now.
export async function instrumentsOf(rig) {
  const [newest] = newestFirst((await keptRecords("tests")).filter(({ rig_id: id }) => id === rig.id));
  const equipment = (newest?.equipment ?? []).filter(({ due }) => due);
  const rows = equipment.length ? await instrumentsAt(equipment, Date.now()) : [];
  return rows.map((row, place) => ({ ...row, name: [equipment[place].what, equipment[place].serial].filter(Boolean).join(", ") }));
}
