// What the page opens on: a ready-made layout as an example, or one with the rig's first bed in it.
import { asBed, clean } from "./layout.js";

// `choices` are what a layout may hold; `ready(id)` is a ready-made layout in the sizes of the page.
export function openingsOf(choices, ready) {
  // A layout rebuilt, or null where it is of another kind than this version reads.
  function soundLayout(make) {
    try {
      return clean(make(), choices);
    } catch (strange) {
      if (!(strange instanceof TypeError)) throw strange;
      return null;
    }
  }

  // The opening layout with a rig's bed in it, or null where that cannot be laid.
  const layoutOf = (bed) => soundLayout(() => asBed(ready("one"), ready("one").lines[0].id, bed));

  return {
    soundLayout,
    layoutOf,
    usable: (beds) => (beds ?? []).filter((bed) => layoutOf(bed) !== null),
    openingLayout: (beds) => (beds.length ? layoutOf(beds[0]) : ready("one")),
  };
}
