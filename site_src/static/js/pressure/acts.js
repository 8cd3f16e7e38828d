// What a touch does to the lay. Each act says what it changed, so that one step back undoes it whole.
import { asBed, changed, isJoint, linesOf, without, withJoint, withLine, withTwin } from "./lay.js";
import { tagged } from "../units.js";

export function actsOn({ state, data, rig, ready, lineOf, shown, show, undo, unfold, work, afresh, share }) {
  const tag = (text) => (text === "" ? "" : tagged(text, state.system));
  const change = (id, changes) =>
    Object.entries(changes).reduce((lay, [name, value]) => changed(lay, id, name, value), state.lay);
  const floorOf = () => rig?.floor || data.floors[data.systems[state.system].family];
  const usualPressure = (tip) => (data.tips.find((each) => each.id === tip) ?? data.tips[0]).usual;
  const pressureOf = {
    smooth: (line) => usualPressure(line.end.tip),
    inlet: () => ready("supply").lines[0].end.pressure,
    fog: () => ready("one").lines[0].end.pressure,
    automatic: () => ready("one").lines[0].end.pressure,
  };
  // What was added is selected: the line that was not there before.
  const showAdded = (lay, what) => {
    const before = linesOf(state.lay).map(({ id }) => id);
    const added = linesOf(lay).filter(({ id }) => !before.includes(id));
    show(lay, what, (added.find((line) => !isJoint(line)) ?? added[0]).id);
  };
  let count = 0;
  const once = (name) => `${name} ${(count += 1)}`; // never one with the change before

  return {
    tag,
    share,
    undo,
    unfold,
    afresh,
    choose: (id, name, value) => show(change(id, { [name]: value, ...(name === "device" && { loss: "" }) }), once(name)),
    type: (id, name, text) => show(change(id, { [name]: name === "loss" ? tag(text) : tagged(text, state.system) }), `${id} ${name}`),
    floor: (id, direction) => {
      const height = Number(shown("rise", lineOf(id).height).replace(",", "."));
      const floor = Number(shown("length", floorOf()));
      if (Number.isFinite(height)) show(change(id, { height: tagged(String(Number((height + direction * floor).toFixed(2))), state.system) }), `${id} floor`);
    },
    kind: (id, kind) => show(change(id, { kind, pressure: pressureOf[kind](lineOf(id)), ...(kind === "inlet" && { device: "none" }) }), once("kind")),
    tip: (id, tip) => show(change(id, { tip, pressure: usualPressure(tip) }), once("tip")),
    crew: (crew) => show({ ...state.lay, crew }, once("crew")),
    bed: (id, bed) => show({ ...asBed(state.lay, id, bed), crew: bed.crew || state.lay.crew }, once("bed")),
    now: (changes) => show({ ...state.lay, now: { ...state.lay.now, ...changes } }, `now ${Object.keys(changes)}`),
    source: (changes) => show({ ...state.lay, source: { ...state.lay.source, ...changes } }, `source ${Object.keys(changes)}`),
    limit: (text) => {
      state.limit = tag(text);
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
