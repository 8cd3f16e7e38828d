// Which of the rig's beds the layout on the page came from, `{ bed, as }`: its place with its tip, as in #bed=, and the layout as it
// was brought. Kept for the start page, which says at that bed where the layout is another by now.
import { basisOf, keepAnswer, lastAnswer } from "../shared/last_answer.js";

const NAME = "origin";
const textOf = ({ lines, source }) => JSON.stringify([lines, source]);

export const origin = (bed, layout) => ({ bed, as: textOf(layout) });

// The bed of the profile as the start page names it.
export const bedName = (rig, bed) =>
  [rig.beds.findIndex(({ name }) => name === bed.name), ...(bed.end.kind === "smooth" ? [bed.end.tip] : [])].join(",");

export const lastOrigin = (rig) => (rig && lastAnswer(NAME, basisOf(rig.id))?.from) ?? null;

export function keepOrigin(rig, from, layout) {
  if (rig) keepAnswer(NAME, basisOf(rig.id), { from, changed: from && from.as !== textOf(layout) ? from.bed : null });
}

// The bed whose layout on Pressure is another than its own, or null.
export const changedBed = (rig) => lastAnswer(NAME, basisOf(rig.id))?.changed ?? null;
