// What a touch on the run page does: a change of the record, or of what the page asks.
import {
  allHalted, askedOf, attemptOf, begun, finished, halted, resumed, runningIn, takenBack, testOf, withDraft, withDraftValue, withNotDone, withSaid, withSet, withValue,
} from "./record.js";

export function actions({ record, answer, page, steady, change, draw }) {
  const at = () => ({ now: steady().now(), wall: Date.now() });
  const planned = (name) => answer().plan.tests.find(({ id }) => id === name);
  const part = () => location.hash.slice(1).split("/")[1];
  const put = (key) => (name, text) => change({ ...record(), [key]: { ...record()[key], [name]: text } });

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
      const test = planned(name);
      const tip = testOf(record(), name).draft?.tip ?? usualTip(test, record());
      change(withDraftValue(withDraft(record(), name, { tip }), name, field, text, place));
    },
    tip(name, option) {
      const tip = tipOf(option, record());
      const values = { ...testOf(record(), name).draft?.values, pitot_psi: Array(option.count).fill("") };
      change(withDraft(record(), name, { tip, values, touched: true }));
    },
    begin(name) {
      const test = planned(name);
      const tip = testOf(record(), name).draft?.tip ?? usualTip(test, record());
      const left = runningIn(record()).includes(name) ? halted(record(), name, { kind: "end", ...at() }) : record();
      const ready = test.kind === "run" ? withDraft(left, name, { tip, touched: true }) : left;
      page.jumps = [];
      change(begun(ready, name, { ...at(), tip, isRun: test.kind === "run" }));
    },
    take(name) {
      const strayed = answer().live[name]?.is_strayed;
      const next = withSet(record(), name, at());
      const test = planned(name);
      const attempt = attemptOf(next, name);
      const isOver = test.hold_s !== null && attempt.clock_s >= test.hold_s;
      page.jumps = [];
      change(strayed ? halted(next, name, { kind: "strayed", ...at() }) : isOver ? halted(next, name, { kind: "end", ...at() }) : next);
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
    resume: (name) => change(resumed(record(), name, at())),
    notDone(name, reason) {
      page.asking = null;
      change(withNotDone(record(), name, reason));
    },
    away(isCounted) {
      page.jumps = [];
      change(withSaid(record(), askedOf(record()), { isCounted, wall: Date.now() }));
    },
    finish() {
      page.asking = null;
      change(allHalted(record(), at()));
      change(finished(record(), { result: answer().summary, ...at() }));
    },
  };
}

const tipOf = (option, { conditions }) => ({ tip_in: conditions.tips_in[option.place], count: option.count });

// The tips a run is begun with where nobody chose any: the best of those at hand; none where flow is metered.
const usualTip = (test, record) => (test.tips?.length && record.conditions.flow_by !== "meter" ? tipOf(test.tips[0], record) : null);
