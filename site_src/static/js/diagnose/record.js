// A diagnosis as plain data: begun, answered, ended, and as a record of the log. Pure functions.
import { mark } from "../shared/mark.js";
import { ordersOfAlarms } from "./order.js";
import { remedyOf } from "./remedy.js";
import { askedOf, nounOf } from "./said.js";

export const begun = ({ rig, role, engine, madeOf }) => ({
  madeOf, role, engine, id: mark(), began_at: new Date().toISOString(),
  rig: rig && { id: rig.id, name: rig.name }, signs: {}, complaints: [], asked: [], written: false,
});

// The signs that a look settles, and what its answer says of each; questions: those of this rig.
function settledBy({ sign, question, answers }, said, { signs, questions }) {
  if (!question) return { [sign]: said };
  const open = questions.find(({ id }) => id === question).answers.filter(({ id }) => answers.includes(id));
  const seen = open.find(({ id }) => id === said)?.seen ?? [];
  const settled = open.flatMap((answer) => answer.seen).filter((each) => !(each in signs));
  return Object.fromEntries(settled.map((each) => [each, said === "unknown" ? said : seen.includes(each) ? "seen" : "not_seen"]));
}

// look: as calc chose it; said: "seen", "not_seen", the id of a question's answer, or "unknown": after a look that was made before, the first answer stands.
export function answered(before, look, said, questions) {
  const state = look.again ? onceMore(before, look) : before;
  if (look.again && said === "unknown") return { ...before, again: state.again };
  const settled = settledBy(look, said, { signs: state.signs, questions });
  const isSeen = Object.values(settled).includes("seen");
  const entry = { sign: look.sign, settles: Object.keys(settled), said: said === "unknown" ? said : isSeen ? "seen" : "not_seen", at: new Date().toISOString() };
  return { ...state, signs: { ...state.signs, ...settled }, asked: [...state.asked, look.question ? { ...entry, question: look.question, answer: said } : entry] };
}

// As it was before a look that is made once more: its new answer stands in place of the first.
function onceMore(state, { sign }) {
  const first = state.asked.find(({ settles }) => settles.includes(sign)) ?? { settles: [sign] };
  return { ...unanswered(state, first), again: [...state.again ?? [], ...first.settles] };
}

// An order that was carried out before the first look.
export const carried = (state, name) => ({ ...state, carriedOut: [...(state.carriedOut ?? []), name] });

// As if a look had not been answered: it is asked again.
export function unanswered(state, entry) {
  const signs = Object.fromEntries(Object.entries(state.signs).filter(([sign]) => !entry.settles.includes(sign)));
  return { ...state, signs, asked: state.asked.filter((other) => other !== entry) };
}

export const oneBack = (state) => unanswered(state, state.asked.at(-1));

const alarmOf = (state, data) => data.orders[ordersOfAlarms(state, data)[0]];

// One answer as the log has it: a sign that was seen or not; of a question also what was asked, and its answer.
const written = (entry, words) => (entry.question
  ? { at: entry.at, sign: entry.sign, text: askedOf(entry, words), answer: nounOf(entry, words) }
  : { at: entry.at, sign: entry.sign, said: entry.said, text: words.sees[entry.sign] });

// What the log of this phone keeps of a diagnosis that has ended.
export const recordOf = (state, end, { words, causes, orders, signs, knowledge }) => ({
  id: state.id,
  kind: "diagnosis",
  title: end.cause ? words.name[end.cause] : alarmOf(state, { orders, signs })?.title ?? words.end[`${end.kind}_title`],
  rig: state.rig,
  role: state.role,
  began_at: state.began_at,
  ended_at: new Date().toISOString(),
  outcome: end.kind,
  cause: end.cause,
  act: end.cause ? [causes[end.cause].out && words.diagnose.out, remedyOf(end.cause, state, { words, causes, knowledge }).act].filter(Boolean).join(" ") : alarmOf(state, { orders, signs })?.do.join(" ") ?? words.end[end.kind],
  entries: [
    ...state.complaints.map((sign) => ({ at: state.began_at, sign, said: "seen", text: words.sees[sign] })),
    ...state.asked.map((entry) => written(entry, words)),
  ],
});
