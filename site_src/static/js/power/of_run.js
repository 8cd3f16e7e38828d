// The power path of a practice run: what calc.teaching.practice says of the made-up rig, as the drawing takes it.
const PUSHES = 0.5;
const FELT = 0.1;

export function pathOf({ train, shown }, gauges) {
  const air = (side) => {
    const amount = train[`${side}_air`];
    if (train.valve === side) return amount > PUSHES ? "full" : "empty";
    return amount > FELT ? "leaving" : "empty";
  };
  return {
    engine: shown.raised ? "raised" : "idle",
    gear: train.gear === "drive" ? "pump" : "neutral",
    collar: train.collar,
    selector: train.selector,
    air: { road: air("road"), pump: air("pump") },
    shaft_turning: shown.shaft_turning,
    pump_turning: shown.pump_turning,
    wheels_locked: train.brake_set,
    switch_closed: shown.stand.includes("switch_closed"),
    lights: shown.lights,
    grinding: train.grinding,
    strains: shown.strains,
    moved: train.moved,
    figures: gauges,
  };
}
