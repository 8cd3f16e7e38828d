// What a touch on the run page does: a change of the record, or of what the page asks.
import { isSettled } from "../shared/second_touch.js";
import {
  allHalted, askedOf, attemptOf, begun, carriedIn, finished, halted, resumed, runningIn, takenBack, testOf, withDraft, withDraftValue, withNotDone, withSaid, withSet, withValue,
} from "./record.js";
import { tipOf, tipStanding } from "./tips.js";
import { withIt, withoutIt } from "./without.js";

// `judged` promises what calc says of the record as it is; `plan` gives the last plan, of its rig and site.
export function actions({ record, judged, plan, page, steady, change, draw, words, goTo }) {
  // By the clock as it is after whatever the phone slept meanwhile: of that no clock counts anything that begins here.
  const at = () => {
    steady().tick();
    return { now: steady().now(), wall: Date.now() };
  };
  const planned = (name) => plan().tests.find(({ id }) => id === name);
  const part = () => location.hash.slice(1).split("/")[1];
  const put = (key) => (name, text) => change({ ...record(), [key]: { ...record()[key], [name]: text } });

  // A new attempt of a run, whose clock starts on the reading that stands: its first.
  const firstSet = (name) => withSet(begun(record(), name, { ...at(), tip: testOf(record(), name).draft.tip, isRun: true }), planned(name), at());

  const waitsOf = async (name) => (await judged()).waits[name] ?? [null];
  const isCounting = (name) => runningIn(record()).includes(name);

  // What nobody touched since the last reading is kept by a touch of its own, once it is named and stood long enough to be read.
  function isNamed(name, isSure) {
    if (isSure) return isSettled(page.asked_ms);
    if (planned(name).kind !== "run" || !carriedIn(record(), planned(name)).length) return true;
    page.asking = "carry";
    page.asked_ms = performance.now();
    draw();
    return false;
  }

  return {
    condition: put("conditions"),
    accuracy: put("accuracy"),
    rig: put("rig"),
    person: put("people"),
    notes: (notes) => change({ ...record(), notes }),
    equipment(place, changes) {
      const rows = [...record().equipment];
      if (changes === null) rows.splice(place, 1);
      else rows[place] = { what: "", serial: "", calibrated: "", due: "", ...rows[place], ...changes };
      change({ ...record(), equipment: rows });
    },
    tipAtHand(id, isHere) {
      const tips = (record().conditions.tips_in ?? []).filter((tip) => tip !== id);
      change({ ...record(), conditions: { ...record().conditions, tips_in: isHere ? [...tips, id] : tips } });
    },
    value: (name, field, text) => change(withValue(record(), name, field, text, Date.now())),
    draft(name, field, text, place) {
      const tip = tipStanding(planned(name), record());
      change(withDraftValue(withDraft(record(), name, { tip }), name, field, text, place));
    },
    tip(name, option) {
      const tip = tipOf(option, record());
      const values = { ...testOf(record(), name).draft?.values, pitot_psi: Array(option.count).fill("") };
      change(withDraft(record(), name, { tip, values, touched: true }));
    },
    override: (part, text) => change({ ...record(), override: { ...record().override, [part]: text } }),
    async goOn() {
      const { open, wants } = (await judged()).before ?? { wants: [null] };
      if (!wants.length) change({ ...record(), overrides: [...(record().overrides ?? []), { ...record().override, wall: Date.now(), open }], override: {} });
    },
    async begin(name, isSure = false) {
      if ((await waitsOf(name)).length || isCounting(name) || !isNamed(name, isSure)) return;
      page.jumps = [];
      page.asking = null;
      change(planned(name).kind === "run" ? firstSet(name) : begun(record(), name, { ...at(), isRun: false, start: planned(name).start }));
    },
    async short(name) {
      if (!(await waitsOf(name)).some(({ code }) => code !== "outside") && !isCounting(name)) change(halted(firstSet(name), name, { kind: "stop", reason: words.run.reasons_stop[0], ...at() }));
    },
    // A touch just after an entry is kept too, at its own time, once calc has judged whether the flow strayed.
    async take(name, isSure = false) {
      const touched = at();
      if (!isNamed(name, isSure)) return;
      const { length } = attemptOf(record(), name).sets;
      const strayed = (await judged()).live[name]?.is_strayed;
      if (!isCounting(name) || attemptOf(record(), name).sets.length !== length) return; // by a touch before it
      page.asking = null;
      const test = planned(name);
      const next = withSet(record(), test, touched);
      const attempt = attemptOf(next, name);
      const isOver = test.hold_s !== null && attempt.clock_s >= test.hold_s;
      page.jumps = [];
      change(strayed ? halted(next, name, { kind: "strayed", ...touched }) : isOver ? halted(next, name, { kind: "end", ...touched }) : next);
    },
    // A gauge that shows what it showed: read, by a touch where its figure stands; on to the next that is not read yet.
    same(name, { field, place, text }) {
      if (!isSettled(page.same_ms ?? -Infinity)) return; // two gauges are not read so soon
      page.same_ms = performance.now();
      change(withDraftValue(record(), name, field, text, place));
      page.cell = carriedIn(record(), planned(name))[0]?.replace(/\.(\d+)$/, (_, count) => `-${Number(count) + 1}`) ?? page.cell;
    },
    redraw: draw,
    goTo,
    saidMissed(marks) {
      page.said_missed = [...page.said_missed, ...marks];
      draw();
    },
    takeBack: (name) => change(takenBack(record(), name, Date.now())),
    ask(what) {
      page.asking = what;
      draw();
    },
    halt(kind, reason, name = part()) {
      page.asking = null;
      change(halted(record(), name, { kind, reason, ...at() }));
    },
    async resume(name) {
      if (!(await waitsOf(name)).length) change(resumed(record(), name, at()));
    },
    without(name) {
      change(withoutIt(record(), name));
      location.hash = record().id;
    },
    withIt: (name) => change(withIt(record(), name)),
    notDone(name, reason) {
      page.asking = null;
      change(withNotDone(record(), name, reason));
    },
    away(isCounted) {
      page.jumps = [];
      change(withSaid(record(), askedOf(record()), { isCounted, wall: Date.now() }));
    },
    async finish() {
      page.asking = null;
      await change(allHalted(record(), at()));
      const { summary } = await judged();
      await change(finished(record(), { result: summary, ...at() }));
      goTo(null);
    },
  };
}
