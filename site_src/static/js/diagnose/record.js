// A diagnosis as plain data: begun, answered, ended, and as a record of the log. Pure functions.
import { ordersOfAlarms } from "./order.js";

const mark = () => crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;

export const begun = ({ rig, role, engine, madeOf }) => ({
  madeOf, role, engine, id: mark(), began_at: new Date().toISOString(),
  rig: rig && { id: rig.id, name: rig.name }, signs: {}, complaints: [], asked: [], written: false,
});

export const answered = (state, sign, said) => ({
  ...state, signs: { ...state.signs, [sign]: said }, asked: [...state.asked, { sign, said, at: new Date().toISOString() }],
});

// An order that was carried out before the first look.
export const carried = (state, name) => ({ ...state, carriedOut: [...(state.carriedOut ?? []), name] });

// As if a look had not been answered: it is asked again.
export function unanswered(state, sign) {
  const { [sign]: _, ...signs } = state.signs;
  return { ...state, signs, asked: state.asked.filter((entry) => entry.sign !== sign) };
}

export const oneBack = (state) => unanswered(state, state.asked.at(-1).sign);

const alarmOf = (state, data) => data.orders[ordersOfAlarms(state, data)[0]];

// What the log of this phone keeps of a diagnosis that has ended.
export const recordOf = (state, end, { words, causes, orders, signs }) => ({
  id: state.id,
  kind: "diagnosis",
  title: end.cause ? words.name[end.cause] : alarmOf(state, { orders, signs })?.title ?? words.end[`${end.kind}_title`],
  rig: state.rig,
  role: state.role,
  began_at: state.began_at,
  ended_at: new Date().toISOString(),
  outcome: end.kind,
  cause: end.cause,
  act: end.cause ? [causes[end.cause].out && words.diagnose.out, words.act[end.cause]].filter(Boolean).join(" ") : alarmOf(state, { orders, signs })?.do.join(" ") ?? words.end[end.kind],
  entries: [
    ...state.complaints.map((sign) => ({ at: state.began_at, sign, said: "seen", text: words.sees[sign] })),
    ...state.asked.map((entry) => ({ ...entry, text: words.sees[entry.sign] })),
  ],
});
