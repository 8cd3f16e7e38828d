// What a touch on the run page does: a change of the record, or of what the page asks.
import {
  allHalted, askedOf, attemptOf, begun, finished, halted, resumed, takenBack, testOf, withDraft, withDraftValue, withNotDone, withSaid, withSet, withValue,
} from "./record.js";
import { keptNow } from "./run_cells.js";
import { tipOf, tipStanding } from "./tips.js";

// `answer` gives what calc says of the record as it is, or null until it is there; `plan` the last plan, of its rig and site.
export function actions({ record, answer, plan, page, steady, change, draw, words, goTo }) {
  const at = () => ({ now: steady().now(), wall: Date.now() });
  const planned = (name) => plan().tests.find(({ id }) => id === name);
  const part = () => location.hash.slice(1).split("/")[1];
  const put = (key) => (name, text) => change({ ...record(), [key]: { ...record()[key], [name]: text } });

  // A new attempt of a run, whose clock starts on the reading that stands: its first.
  const firstSet = (name) => withSet(begun(record(), name, { ...at(), tip: testOf(record(), name).draft.tip, isRun: true }), name, at());

  // What a clock waits for by the record as it is now, where the page may still show the one before.
  async function waitsOf(name) {
    if (!answer()) await change(record());
    return answer()?.waits[name] ?? [null];
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
      else rows[place] = { what: "", serial: "", calibrated: "", ...rows[place], ...changes };
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
    goOn() {
      const { open, wants } = answer()?.before ?? { wants: [null] };
      if (!wants.length) change({ ...record(), overrides: [...(record().overrides ?? []), { ...record().override, wall: Date.now(), open }], override: {} });
    },
    async begin(name) {
      if ((await waitsOf(name)).length) return;
      page.jumps = [];
      page.asking = null;
      change(planned(name).kind === "run" ? firstSet(name) : begun(record(), name, { ...at(), isRun: false }));
    },
    async short(name) {
      if (!(await waitsOf(name)).some(({ code }) => code !== "outside")) change(halted(firstSet(name), name, { kind: "stop", reason: words.run.reasons_stop[0], ...at() }));
    },
    take(name) {
      if (!answer()) return; // judged first: whether the flow strayed
      const strayed = answer().live[name]?.is_strayed;
      page.kept = { name, ...keptNow(record(), planned(name)) };
      const next = withSet(record(), name, at());
      const test = planned(name);
      const attempt = attemptOf(next, name);
      const isOver = test.hold_s !== null && attempt.clock_s >= test.hold_s;
      page.jumps = [];
      change(strayed ? halted(next, name, { kind: "strayed", ...at() }) : isOver ? halted(next, name, { kind: "end", ...at() }) : next);
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
      if (answer()) change(finished(record(), { result: answer().summary, ...at() }));
    },
  };
}
