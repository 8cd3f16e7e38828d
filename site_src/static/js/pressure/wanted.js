// What another page leads here for: a bed of the rig by its place, with its tip (#bed=0,1.125), or a ready-made layout
// (#ready=wye). It goes from the address at once, so that a reload goes on with what is worked on.
const WANTED = /^#(bed|ready)=([\w.@,]+)$/;

// The layout that is led here for with the bed it is of, or null. `layoutOf(bed)` lays a bed, null where it cannot; `ready(id)` throws where there is none.
export function wanted({ rig, layoutOf, readyIds, ready }) {
  const [, kind, value] = WANTED.exec(location.hash) ?? [];
  if (!kind) return null;
  history.replaceState(history.state, "", location.pathname + location.search);
  if (kind === "ready") return readyIds.includes(value) ? { layout: ready(value), bed: null } : null;
  const [place, tip] = value.split(",");
  const bed = rig?.beds?.[place];
  const layout = bed ? layoutOf(tip ? { ...bed, end: { ...bed.end, tip } } : bed) : null;
  return layout && { layout, bed: value };
}
