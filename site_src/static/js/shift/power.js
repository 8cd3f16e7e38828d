// What turns at the offered step, before its sign and after it; nothing where the drive is not known, or has no drawing.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { powerLine } from "../power/line.js";
import { familyOf, pathAt } from "../power/of_step.js";
import { home } from "../shared/site.js";

const driveOf = (state, profile) => (state.rig.drive === "unknown" && profile?.drive ? profile.drive : state.rig.drive);

// The way to the large picture of this drive. A link below the step, not the line itself: a touch that slipped would leave the card.
export function largeView({ path, state, rig, words }) {
  const family = path && familyOf(path.families, driveOf(state, rig));
  return family ? html`<p><a href=${new URL(family === "split" ? "why/" : `why/drives/#${family}`, home).href}>${words.power.line_large}</a></p>` : nothing;
}

// rig: what the profile says, for a card that never asks.
export function powerView({ path, state, sequence, rig: profile, words }) {
  const { offer, position, facts, confirmed } = state;
  const rig = { ...state.rig, drive: driveOf(state, profile) };
  const family = path && familyOf(path.families, rig.drive);
  if (!family || offer.kind === "ask" && !offer.again && sequence.steps[position].asks) return nothing;
  const at = (step) => pathAt({ sequence, position, step, facts, rig, path });
  const isSeen = confirmed.some(({ step }) => step in path.act_changes || sequence.steps.some(({ id, proves = [] }) => id === step && proves.some((fact) => fact in path.changes)));
  return powerLine({ before: at(null), after: at(offer.step), family, isSeen: isSeen && !offer.again, isOld: offer.again, words });
}
