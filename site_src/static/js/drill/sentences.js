// What a question of the drill says, in the page's words: calc has codes and figures, never words.
import { fill } from "../shared/site.js";
import { bare } from "../shared/units.js";

const IN_CALL = ["proof", "second", "intake", "tank_low", "look"]; // what is so, and what is asked
const WITH_LETTER = /[^\d\s.,/½¼¾⅛]\s*$/; // a tip whose label carries its unit

// The facts of a question as its sentence takes them.
function said({ kind, facts }, words, u) {
  const tip = facts.tip && !WITH_LETTER.test(facts.tip) ? `${facts.tip} ${u.u_diameter}` : facts.tip;
  if (kind === "lamps") return { switch: words.option.switch[facts.switch], gear: words.option.gear[facts.gear], brake: words.option.brake[facts.brake] };
  if (kind === "proves") return { lamp: words.option.lamp[facts.lamp] };
  if (kind === "first_look") return Object.fromEntries(Object.entries(facts).map(([gauge, seen]) => [gauge, words.gauge_answer[gauge][seen].toLowerCase()]));
  return { ...facts, ...u, tip };
}

function parts({ kind, facts }) {
  if (kind === "pump") {
    return [
      `pump_${facts.length === "0" ? "piped_" : ""}${facts.end}`, ...(facts.own ? ["own"] : []),
      facts.floors === "0" ? "pump_level" : "pump_floors",
      ...(facts.device ? ["pump_device"] : []), ...(facts.added ? ["pump_added"] : []), "pump_ask",
    ];
  }
  if (kind === "gauges") return ["gauges_both", `gauges_${facts.gauge}`];
  if (kind === "tank") return [facts.second ? "tank_two" : "tank_one"];
  if (IN_CALL.includes(kind)) return [`${kind}_now`, kind];
  if (kind === "friction") return ["friction", ...(facts.own ? ["own"] : []), "friction_ask"];
  return [kind === "net" ? `net_${facts.place}` : kind];
}

// A question's sentences: what is known, and last what is asked.
export const asked = (question, words, u) => parts(question).map((name) => fill(words.question[name], said(question, words, u)));

// An option as a person reads it.
export function optionText({ kind }, option, words) {
  if (kind === "colors") return words.class[option];
  if (kind === "first_look" || kind === "look") return words.side[option];
  return words.option[kind][option];
}

export const answerText = (question, words, u) => {
  const { way, text, quantity, right } = question.answer;
  return way === "typed" ? `${text} ${u[`u_${quantity}`]}` : optionText(question, right, words);
};

// What somebody answered, as a person reads it.
export const replyText = (question, reply, words, u) => (question.answer.way === "typed" ? `${bare(reply)} ${u[`u_${question.answer.quantity}`]}` : optionText(question, reply, words));

export const workingText = ({ code, facts }, words, u) => fill(words.working[code], { ...facts, ...u });
