// A lay in a page's address, so that it can be handed to another phone.
import { clean } from "./lay.js";

const LONGEST = 40000;

export const link = (lay) => `#lay=${encodeURIComponent(JSON.stringify(lay))}`;

// The lay of a link's fragment; null where the fragment holds none, undefined where it holds one that cannot be read.
export function fromLink(fragment, choices) {
  if (!fragment.startsWith("#lay=")) return null;
  if (fragment.length > LONGEST) return undefined;
  try {
    return clean(JSON.parse(decodeURIComponent(fragment.slice(5))), choices);
  } catch {
    return undefined;
  }
}
