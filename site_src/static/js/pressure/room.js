// What stays in sight on the page must leave room for the picture.
import { rem, roomIn } from "../line/labels.js";

const LARGE = 16; // rem across under which letters are so large that nothing may stay in the way
const LINE_REM = 7; // one line of the picture, to be seen and touched

// Whether the page opened on a screen with room for three panes, as its style has it: the parts of the third are open there.
export const hasThreePanes = matchMedia("(min-width: 75em) and (min-height: 38.01em)").matches;

// The page once it is drawn: its picture has the room that its pane leaves it, and is drawn again where that is another than it was drawn for.
export function measuring({ place, state, redraw }) {
  let isMeasuring = false;
  return () => {
    place.toggleAttribute("data-large", roomIn(null) < LARGE);
    const room = roomIn(place.querySelector(".lay"));
    if (!isMeasuring && Math.abs(room - state.width) >= 0.01) {
      isMeasuring = true;
      state.width = room;
      redraw();
      isMeasuring = false;
    }
    if (place.querySelector(".dock")) place.toggleAttribute("data-crowded", isCrowded(place)); // all of it is drawn
  };
}

// Whether plate, tray and dock, all staying in sight, would leave no line of the picture between them, or below what runs
// elsewhere and what the rig may not do lie on one another.
function isCrowded(place) {
  const stays = [".pressure-plate", ".tray", ".dock"].map((part) => place.querySelector(part).getBoundingClientRect().height);
  const left = innerHeight - stays.reduce((sum, height) => sum + height, 0);
  return left < Math.max(LINE_REM * rem(), place.getBoundingClientRect().top + scrollY);
}
