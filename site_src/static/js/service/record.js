// A service test as plain data: what was typed, when, by whom. Pure functions from record to record; amounts are text as
// typed with their system, as calc.service.entries takes them. Times are whole milliseconds of the phone, and of the steady clock.
import { mark } from "../shared/mark.js";

export const SCHEMA = 1;
// What a test says of its rig beside figures.
export const NAMEPLATE = ["unit_number", "year_built", "pump_serial"];
export const ABOUT = ["place", "weather", "engine_hours", "odometer"]; // and of the day, in its conditions
const RIG = [...NAMEPLATE, "drive", "shift_control", "override_place", "pressure_control", "other_control", "relief_set", "foam", "tank_rate", "pump_rated", "pump_stages", "pump_ratio", "governed", "tank", "speed_capacity", "speed_seventy", "speed_fifty"];

// Tests, the one begun last first.
export const newestFirst = (tests) => [...tests].sort((one, other) => other.begun_ms - one.begun_ms);


const rigOf = (profile) => Object.fromEntries(RIG.filter((name) => profile[name]).map((name) => [name, profile[name]]));

// A test with what its rig's profile came to say after it was begun; what it was begun with stands.
export const filledFrom = (record, profile) => ({ ...record, rig: { ...rigOf(profile), ...record.rig } });

// The day on which limits were last compared with the edition in force, in any of the phone's tests by this edition of ours, ms;
// null where that is longer ago than a year: a department compares them once a year.
const YEAR_MS = 365 * 86400000;

export function comparedMs(tests, { id, edition }, wall) {
  const times = tests.filter(({ standard, tests: { checks_dry: dry } }) => standard.id === id && standard.edition === edition && dry?.values?.limits_confirmed === "yes")
    .map(({ tests: { checks_dry: dry } }) => dry.at?.limits_confirmed ?? 0)
    .filter((at) => at <= wall && wall - at < YEAR_MS);
  return times.length ? Math.max(...times) : null;
}

// Whether the limits were compared before this test was begun.
export const isCompared = (record) => testOf(record, "checks_dry").at?.limits_confirmed < record.begun_ms;

// A new test of a rig. `earlier` are its finished tests; what was read when new and last goes along, to be compared with.
// compared_ms: when the limits were last compared with the edition in force, or null where that is to be answered again.
export function newRecord({ profile, standard, earlier, compared_ms: compared = null, wall }) {
  const done = earlier.filter((record) => record.result).sort((one, other) => one.finished_ms - other.finished_ms);
  const last = done.at(-1);
  const sameSite = ["place", "source", "flow_by", "foam_by", "suction_size_in", "suction_length_ft", "suction_lines", "altitude_ft", "tips_in"];
  return {
    schema: SCHEMA,
    id: mark(),
    revision: 0,
    rig_id: profile.id,
    rig_name: profile.name,
    rig: { ...rigOf(profile), meters: last?.rig.meters ?? "", gauges: last?.rig.gauges ?? "", auxiliary: last?.rig.auxiliary ?? "", new: speedsOf(done.find(isAcceptance)), last: speedsOf(last) },
    standard,
    conditions: Object.fromEntries(sameSite.filter((name) => last?.conditions[name]).map((name) => [name, last.conditions[name]])),
    accuracy: {},
    equipment: last ? structuredClone(last.equipment) : [],
    people: { tester: last?.people.tester ?? "", witness: "" },
    tests: compared === null ? {} : { checks_dry: { values: { limits_confirmed: "yes" }, at: { limits_confirmed: compared } } },
    events: [],
    notes: "",
    begun_ms: wall,
    finished_ms: null,
    result: null,
  };
}

export const isAcceptance = (record) => record.standard.kind === "acceptance";

const speedsOf = (record) => Object.fromEntries((record?.result.points ?? [])
  .filter((point) => point.engine_rpm && point.net_psi)
  .map(({ id, engine_rpm, net_psi }) => [id, { engine_rpm, net_psi }]));

export const testOf = (record, name) => record.tests[name] ?? {};

const withTest = (record, name, changes) => ({ ...record, tests: { ...record.tests, [name]: { ...testOf(record, name), ...changes } } });

export const withValue = (record, name, field, text, wall) =>
  withTest(record, name, { values: { ...testOf(record, name).values, [field]: text }, at: { ...testOf(record, name).at, [field]: wall } });

export const withDraft = (record, name, changes) => withTest(record, name, { draft: { ...testOf(record, name).draft, ...changes } });

// A field of the readings being entered; a pitot reading has its place among the tips.
export function withDraftValue(record, name, field, text, place = null) {
  const draft = testOf(record, name).draft ?? {};
  const values = draft.values ?? {};
  const list = place === null ? null : [...(values[field] ?? [])];
  if (list) list[place] = text;
  return withDraft(record, name, {
    values: { ...values, [field]: list ? Array.from(list, (each) => each ?? "") : text },
    touched: true,
    read: [...new Set([...(draft.read ?? []), place === null ? field : `${field}.${place}`])], // since the last set
  });
}

export const withNotDone = (record, name, reason) => withTest(record, name, { not_done: reason });

// Clocks: a run's attempts each have one, a test with a holding time has its own. `since` is the steady clock where it runs.
export const clockOf = (record, name) => attemptOf(record, name)?.clock ?? testOf(record, name).clock ?? null;

export const attemptOf = (record, name) => testOf(record, name).attempts?.at(-1) ?? null;

export const countedS = (clock, now) => (clock ? clock.counted_s + (clock.since === null ? 0 : Math.max(now - clock.since, 0) / 1000) : 0);

export const runningIn = (record) => Object.keys(record.tests).filter((name) => clockOf(record, name)?.since != null);

export const isRunning = (record) => runningIn(record).length > 0;

const note = (clock, event) => ({ ...clock, events: [...clock.events, event] });

function withClock(record, name, clock, more = {}) {
  const { attempts } = testOf(record, name);
  const seconds = { clock, clock_s: clock.counted_s };
  if (!attempts?.length) return withTest(record, name, { ...seconds, ...more });
  return withTest(record, name, { attempts: [...attempts.slice(0, -1), { ...attempts.at(-1), ...seconds, ...more }] });
}

const fresh = (now, wall) => ({ counted_s: 0, since: now, events: [{ kind: "start", at_s: 0, wall }] });

// Begin a run: a new attempt, with its tips. Or begin the clock of a test that holds: what is read at its end is still to be read.
export function begun(record, name, { now, wall, tip = null, isRun, start = /** @type {string[]} */ ([]) }) {
  if (!isRun) {
    const { values } = testOf(record, name);
    const kept = values && Object.fromEntries(Object.entries(values).filter(([field]) => start.includes(field)));
    return withTest(record, name, { clock: fresh(now, wall), clock_s: 0, ...(kept && { values: kept }) });
  }
  const attempts = testOf(record, name).attempts ?? [];
  return withTest(record, name, { attempts: [...attempts, { tip, clock: fresh(now, wall), clock_s: 0, stopped: null, sets: [] }] });
}

// Halt a clock: `kind` is "pause", "stop", "strayed" or "end"; a stopped attempt is over. Before time counts again the flow is
// to be read again.
export function halted(record, name, { kind, reason = "", now, wall }) {
  const clock = clockOf(record, name);
  const counted_s = countedS(clock, now);
  const stopped = kind === "strayed" ? { stopped: "flow_strayed" } : kind === "stop" ? { stopped: reason || "stopped" } : {};
  const next = withClock(record, name, note({ ...clock, counted_s, since: null }, { kind, reason, at_s: counted_s, wall }), stopped);
  return kind === "end" ? next : withoutFlow(next, name);
}

function withoutFlow(record, name) {
  const { draft } = testOf(record, name);
  if (!draft?.values) return record;
  const { pitot_psi, meter_gpm, ...values } = draft.values;
  return withDraft(record, name, { values, touched: true });
}

export const resumed = (record, name, { now, wall }) => {
  const clock = clockOf(record, name);
  return withClock(record, name, note({ ...clock, since: now }, { kind: "resume", at_s: clock.counted_s, wall }));
};

// Bring a running clock's count up to now, so that what is kept is what was seen.
export function folded(record, name, now) {
  const clock = clockOf(record, name);
  return clock?.since == null ? record : withClock(record, name, { ...clock, counted_s: countedS(clock, now), since: now });
}

const isNeeded = ({ fields }, name) => fields.some(({ id, needed }) => id === name && needed);

// The readings a run needs whose figure stands there and was not touched since the last set: "discharge_psi", "pitot_psi.0".
export function carriedIn(record, test) {
  const { values = {}, read = [] } = testOf(record, test.id).draft ?? {};
  const standing = Object.entries(values).filter(([name]) => isNeeded(test, name)).flatMap(([name, text]) =>
    (Array.isArray(text) ? text.map((each, place) => [`${name}.${place}`, each]) : [[name, text]]));
  return standing.filter(([cell, text]) => text && !read.includes(cell)).map(([cell]) => cell);
}

// Keep the readings being entered as one set of the run, and say which of them stand as before; the next starts from those that it needs.
export function withSet(record, test, { now, wall }) {
  const { attempts, draft } = testOf(record, test.id);
  const attempt = attempts.at(-1);
  const carried = carriedIn(record, test);
  const set = { at_s: Math.round(countedS(attempt.clock, now) * 10) / 10, at_ms: wall, tip: draft.tip ?? null, values: draft.values, ...(carried.length && { as_before: carried }) };
  const next = withTest(record, test.id, { attempts: [...attempts.slice(0, -1), { ...attempt, sets: [...attempt.sets, set] }] });
  const values = Object.fromEntries(Object.entries(draft.values).filter(([name]) => isNeeded(test, name)));
  return folded(withDraft(next, test.id, { values, touched: false, read: [] }), test.id, now);
}

// The last reading was mistyped: it is taken back to be entered again, and stays in the record as taken back.
export function takenBack(record, name, wall) {
  const { attempts } = testOf(record, name);
  const attempt = attempts.at(-1);
  const set = attempt.sets.at(-1);
  const next = { ...attempt, sets: attempt.sets.slice(0, -1), taken_back: [...(attempt.taken_back ?? []), { ...set, back_ms: wall }] };
  return withDraft(withTest(record, name, { attempts: [...attempts.slice(0, -1), next] }), name, { tip: set.tip, values: set.values, touched: true, read: readIn(set) });
}

const readIn = ({ values, as_before: carried = [] }) =>
  Object.entries(values).flatMap(([field, text]) => (Array.isArray(text) ? text.map((_, place) => `${field}.${place}`) : [field])).filter((cell) => !carried.includes(cell));

// A jump of the phone's clock while clocks of this test ran, with the attempts they ran in.
export const withJump = (record, jump) =>
  withEvent({ ...record, heard: jump.turn }, { ...jump, clocks: runningIn(record).map((test) => ({ test, attempt: testOf(record, test).attempts?.length ?? 0 })) });

const withEvent = (record, event) => ({ ...record, events: [...record.events, event] });

// The time that went by unseen and of which nobody has said yet whether it counts; undefined where there is none.
export const askedOf = ({ events }) => events.find((event) =>
  event.kind === "away" && event.counted_s === 0 && !events.some(({ kind, turn }) => turn === event.turn && (kind === "counted" || kind === "left")));

// What the tester said of it; where it counts, it counts for the clocks that ran then, unless they were begun again since.
export function withSaid(record, { turn, s, clocks }, { isCounted, wall }) {
  const said = withEvent(record, { kind: isCounted ? "counted" : "left", turn, s, wall });
  if (!isCounted) return said;
  return clocks.filter(({ test, attempt }) => attempt === (testOf(record, test).attempts?.length ?? 0)).reduce((each, { test }) => {
    const clock = clockOf(each, test);
    return withClock(each, test, { ...clock, counted_s: clock.counted_s + s });
  }, said);
}

// A test from another phone: a clock that ran there is paused where it stood, and that phone's own clock stays behind.
export function broughtOver(record, { reason, wall }) {
  if (record.finished_ms !== null) return record;
  const { steady, heard, ...left } = record;
  return runningIn(left).reduce((each, name) => halted(each, name, { kind: "pause", reason, now: clockOf(each, name).since, wall }), left);
}

// Every clock stopped.
export const allHalted = (record, { now, wall }) =>
  runningIn(record).reduce((each, name) => halted(each, name, { kind: "end", now, wall }), record);

// The test is over, and its result stands.
export const finished = (record, { result, wall }) => ({ ...record, finished_ms: wall, result });

// What is signed first says which photos it has: their digests, by id.
export const withPhotos = (record, photographed) => (record.signed?.length ? record : { ...record, photographed });

// Signed: who, when, and the digest of what was signed; nothing of the test changes after that.
export const withSigned = (record, signed) => ({ ...record, signed: [...(record.signed ?? []), signed], revision: record.revision + 1 });

// A signed test opened again: what was signed stays as a version, with what it came to, what is to change and why, by whom.
export const reopened = ({ signed, result, photographed: _, ...record }, { what, why, by, digest, wall }) => ({
  ...record, versions: [...(record.versions ?? []), { digest, wall, what, why, by, signed: signed.map(({ name }) => name), status: result.status }], signed: [], finished_ms: null, result: null, revision: record.revision + 1 });
