// What a touch does to the layout. Each act says what it changed, so that one step back undoes it whole.
import { NOTHING_TYPED } from "./bounds.js";
import { asBed, asSupply, changed, fitted, isJoint, isSpare, linesOf, raised, unjoined, without, withJoint, withLine, withSecond, withTwin } from "./layout.js";
import { bedName, origin } from "./origin.js";
import { openTab } from "./tabs.js";
import { usualPressure } from "../shared/usual.js";
import { bare, tagged } from "../shared/units.js";

const NO_DEVICE = { loss: "", loss_at: "", device_most: "" }; // what is said of a device, without one

export function actsOn({ state, data, rig, ready, lineOf, added, show, undo, before, work, look, afresh, share, toEntry, toPart }) {
  const tag = (text) => (text === "" ? "" : tagged(text, state.system));
  const change = (id, changes) =>
    Object.entries(changes).reduce((layout, [name, value]) => changed(layout, id, name, value), state.layout);
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
  const showAdded = (layout, what) => {
    const before = linesOf(state.layout).map(({ id }) => id);
    const added = linesOf(layout).filter(({ id }) => !before.includes(id));
    show(layout, what, (added.find((line) => !isJoint(line)) ?? added[0]).id);
  };
  const deviceTo = (id, device) => (lineOf(id).end.kind === "smooth" ? withPressure : change)(id, { device, ...NO_DEVICE });
  const toHeight = (id, height, what) => show(raised(state.layout, id, height, before(what)), what);
  let count = 0;
  const once = (name) => `${name} ${(count += 1)}`; // a key of its own, so that undo never merges it with the change before

  return {
    tag,
    share,
    undo,
    afresh,
    choose: (id, name, value) => show(fitted(name === "device" ? deviceTo(id, value) : change(id, { [name]: value }), id), once(name)),
    type: (id, name, text) => {
      const entry = name in NO_DEVICE ? tag(text) : tagged(text, state.system);
      if (name === "height") toHeight(id, entry, `${id} ${name}`);
      else show(change(id, { [name]: entry, ...(name === "pressure" && { typed: "yes" }) }), `${id} ${name}`);
    },
    floor: async (id, direction) => {
      const height = await added("rise", lineOf(id).height, floorOf(), direction);
      if (height !== null) toHeight(id, height, `${id} floor`);
    },
    hasFloor: () => Boolean(floorOf()),
    kind: (id, kind) => show(fitted(withPressure(id, { kind, ...(kind === "inlet" && { device: "none", ...NO_DEVICE }) }), id), once("kind")),
    tip: (id, tip) => show(withPressure(id, { tip }), once("tip")),
    crew: (crew) => show({ ...state.layout, crew }, once("crew")),
    bed: (id, bed) => {
      const layout = fitted(asBed(state.layout, id, bed), id);
      show(layout, once("bed"), id, linesOf(layout).length === 1 ? origin(bedName(rig, bed), layout) : state.from);
    },
    supply: (id, row) => show(asSupply(state.layout, id, row, ready("supply").lines[0]), once("supply")),
    now: (changes) => show({ ...state.layout, now: { ...state.layout.now, ...changes } }, `now ${Object.keys(changes)}`),
    source: (changes) => show({ ...state.layout, source: { ...state.layout.source, ...changes } }, `source ${Object.keys(changes)}`),
    reach: (name, text) => {
      state.reach = { ...state.reach, [name]: tag(text) };
      work();
    },
    shut: (id, isShut) => {
      const others = state.layout.now.shut.filter((each) => each !== id);
      show({ ...state.layout, now: { ...state.layout.now, shut: isShut ? [...others, id] : others } }, once("shut"));
    },
    addWye: () => showAdded(withJoint(state.layout, state.selected, data.supplies[data.systems[state.system].family]), once("wye")),
    addTwin: () => showAdded(withTwin(state.layout, state.selected), once("twin")),
    addSecond: () => showAdded(withSecond(state.layout, state.selected), once("second")),
    addLine: () => showAdded(withLine(state.layout, ready("one").lines[0]), once("line")),
    remove: () => isSpare(state.layout, state.selected) && show(without(state.layout, state.selected), once("remove"), "A"), // two quick taps may not take the last
    unjoin: () => isJoint(lineOf(state.selected)) && show(unjoined(state.layout, state.selected), once("unjoin"), lineOf(state.selected).end.lines[0].id),
    ready: (layout) => {
      state.reach = NOTHING_TYPED;
      show(layout, once("ready"), "A", null);
      scrollTo(0, 0);
    },
    toEntry,
    toPart,
    // A line, and of it what is touched: a part of its hose, or its end.
    select: (id, tab = state.tab) => look({ selected: id, tab: openTab(tab, lineOf(id)) }),
    open: (tab) => look({ tab: openTab(tab, lineOf(state.selected)) }),
  };
}
