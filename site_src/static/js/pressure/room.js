// What stays in sight on the page must leave room for the picture.
import { rem } from "../line/labels.js";

const LINE_REM = 7; // one line of the picture, to be seen and touched

// Whether the page opened on a screen with room for three panes, as its style has it: the parts of the third are open there.
export const hasThreePanes = matchMedia("(min-width: 75em) and (min-height: 38.01em)").matches;

// Whether plate, tray and dock, all staying in sight, would leave no line of the picture between them, or below what runs
// elsewhere and what the rig may not do lie on one another.
export function isCrowded(place) {
  const stays = [".pressure-plate", ".tray", ".dock"].map((part) => place.querySelector(part).getBoundingClientRect().height);
  const left = innerHeight - stays.reduce((sum, height) => sum + height, 0);
  return left < Math.max(LINE_REM * rem(), place.getBoundingClientRect().top + scrollY);
}
