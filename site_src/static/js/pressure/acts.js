// What a touch does to the lay. Each act says what it changed, so that one step back undoes it whole.
import { NOTHING_TYPED } from "./bounds.js";
import { asBed, asSupply, changed, isJoint, linesOf, raised, without, withJoint, withLine, withTwin } from "./lay.js";
import { usualPressure } from "../shared/usual.js";
import { bare, tagged } from "../shared/units.js";

export function actsOn({ state, data, rig, ready, lineOf, added, show, undo, before, unfold, work, afresh, share }) {
  const tag = (text) => (text === "" ? "" : tagged(text, state.system));
  const change = (id, changes) =>
    Object.entries(changes).reduce((lay, [name, value]) => changed(lay, id, name, value), state.lay);
  // The rig's own height of a floor; none where its profile has one that cannot be used.
  const floorOf = () => (rig?.floor ? state.own?.floor : data.floors[data.systems[state.system].family]);
  // The pressure that a line's nozzle brings as it is changed: the rig's own for such a bed, or else the usual one. One that
  // was typed stays, but what an inlet shall see is never what a nozzle is run at.
  const brought = (id, changes) => {
    const line = lineOf(id);
    const end = { ...line.end, ...changes };
    const crosses = (end.kind === "inlet") !== (line.end.kind === "inlet");
    if (end.typed && bare(end.pressure).trim() && !crosses) return {};
    if (end.kind === "inlet") return crosses ? { pressure: ready("supply").lines[0].end.pressure, typed: "" } : {};
    const device = changes.device ?? line.device;
    const own = device === "none" && changes.kind && state.beds.find((bed) => bed.hose === line.hose && bed.end.kind === end.kind);
    return { pressure: (own && own.end.pressure) || usualPressure(data, data.systems[state.system].family, end, device), typed: "" };
  };
  const withPressure = (id, changes) => change(id, { ...changes, ...(isJoint(lineOf(id)) ? {} : brought(id, changes)) });
  // What was added is selected: the line that was not there before.
  const showAdded = (lay, what) => {
    const before = linesOf(state.lay).map(({ id }) => id);
    const added = linesOf(lay).filter(({ id }) => !before.includes(id));
    show(lay, what, (added.find((line) => !isJoint(line)) ?? added[0]).id);
  };
  const deviceTo = (id, device) => (lineOf(id).end.kind === "smooth" ? withPressure : change)(id, { device, loss: "" });
  const toHeight = (id, height, what) => show(raised(state.lay, id, height, before(what)), what);
  let count = 0;
  const once = (name) => `${name} ${(count += 1)}`; // never one with the change before

  return {
    tag,
    share,
    undo,
    unfold,
    afresh,
    choose: (id, name, value) => show(name === "device" ? deviceTo(id, value) : change(id, { [name]: value }), once(name)),
    type: (id, name, text) => {
      const entry = name === "loss" ? tag(text) : tagged(text, state.system);
      if (name === "height") toHeight(id, entry, `${id} ${name}`);
      else show(change(id, { [name]: entry, ...(name === "pressure" && { typed: "yes" }) }), `${id} ${name}`);
    },
    floor: (id, direction) => {
      const height = added("rise", lineOf(id).height, floorOf(), direction);
      if (height !== null) toHeight(id, height, `${id} floor`);
    },
    hasFloor: () => Boolean(floorOf()),
    kind: (id, kind) => show(withPressure(id, { kind, ...(kind === "inlet" && { device: "none" }) }), once("kind")),
    tip: (id, tip) => show(withPressure(id, { tip }), once("tip")),
    crew: (crew) => show({ ...state.lay, crew }, once("crew")),
    bed: (id, bed) => show(asBed(state.lay, id, bed), once("bed")),
    supply: (id, row) => show(asSupply(state.lay, id, row, ready("supply").lines[0]), once("supply")),
    now: (changes) => show({ ...state.lay, now: { ...state.lay.now, ...changes } }, `now ${Object.keys(changes)}`),
    source: (changes) => show({ ...state.lay, source: { ...state.lay.source, ...changes } }, `source ${Object.keys(changes)}`),
    reach: (name, text) => {
      state.reach = { ...state.reach, [name]: tag(text) };
      work();
    },
    shut: (id, isShut) => {
      const others = state.lay.now.shut.filter((each) => each !== id);
      show({ ...state.lay, now: { ...state.lay.now, shut: isShut ? [...others, id] : others } }, once("shut"));
    },
    addWye: () => showAdded(withJoint(state.lay, state.selected, data.supplies[data.systems[state.system].family]), once("wye")),
    addTwin: () => showAdded(withTwin(state.lay, state.selected), once("twin")),
    addLine: () => showAdded(withLine(state.lay, ready("one").lines[0]), once("line")),
    remove: () => show(without(state.lay, state.selected), once("remove"), "A"),
    ready: (lay) => {
      state.reach = NOTHING_TYPED;
      show(lay, once("ready"), "A");
      scrollTo(0, 0);
    },
    usualLoss: (id) => state.answer?.lines.find((line) => line.id === id)?.appliance ?? "",
    select: (id) => {
      state.selected = id;
      work();
    },
    system: (system) => {
      state.system = system;
      work();
    },
  };
}
