// The one door to calc: only JSON text crosses to the interpreter, on a thread of its own (engine_thread.js). Where that ended the
// page says so and shows no number, another is begun, and it is asked once more.
import { BEGIN, Ended, hasThreads, onPage, thread } from "./engine_thread.js";

// An input that calc cannot use: field, code, and facts such as the line.
export class Refusal extends Error {
  field = "";
  code = "";

  constructor(told) {
    super(`${told.field}: ${told.code}`);
    Object.assign(this, told);
  }
}

const MOST_HELD = 32; // as calc.phone has it

// Asks calc. Rejects with Refusal, or with a fault named Missing or TooOld, or otherwise where it is ours. A page takes a Refusal
// and leaves the rest alone: guard.js says them and takes its numbers down. Answers come in the order they were asked for.
export const calc = {
  // The answer of a door of calc.phone to `given`, arguments by name. What does not change from question to question (shelf,
  // units, knowledge) goes in `held`, by argument too: it crosses once, and is only named after that. It is known by its
  // identity, so the page hands the same object each time and never changes it in place.
  /** @type {Ask} */
  async ask(door, given, held) {
    const answer = JSON.parse(await put(() => {
      const holds = [];
      const named = Object.entries(held ?? {}).map(([argument, value]) => [argument, hold(value, holds)]);
      return { holds, door, text: JSON.stringify(named.length ? { ...given, held: Object.fromEntries(named) } : given) };
    }));
    if ("error" in answer) throw new Refusal(answer.error);
    return answer.ok;
  },
  // Before there is anything to ask, so that the first answer waits for less.
  start: async () => {
    await put(() => BEGIN);
  },
};

let running = null;
let isOnPage = !hasThreads();
const names = new Map(); // of what the interpreter that runs holds, by value

function interpreter() {
  if (running && !running.hasEnded) return running;
  names.clear();
  return (running = isOnPage ? onPage() : thread());
}

// The text of the answer to a question, made for the interpreter that takes it.
async function put(questionFor, isAgain = false) {
  const asked = interpreter();
  try {
    const text = await asked.ask(questionFor());
    if (isAgain) say(false);
    return text;
  } catch (fault) {
    if (!(fault instanceof Ended) || isAgain) throw fault;
    if (asked.hasBegun) say(true);
    else isOnPage = true;
    return put(questionFor, true);
  }
}

function say(hasStopped) {
  document.getElementById("stopped").hidden = !hasStopped;
  document.body.toggleAttribute("data-stopped", hasStopped);
}

// The name that a value is held under in the interpreter. It crosses where it is new there; when all names are taken, the
// one longest in use goes to it.
function hold(value, holds) {
  if (names.has(value)) return names.get(value);
  const [oldest] = names.size < MOST_HELD ? [] : names;
  const name = oldest ? oldest[1] : String(names.size);
  holds.push([name, JSON.stringify(value)]);
  if (oldest) names.delete(oldest[0]);
  names.set(value, name);
  return name;
}
