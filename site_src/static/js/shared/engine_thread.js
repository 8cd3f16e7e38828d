// What runs the interpreter: a thread of its own, or the page where no thread comes to run. Both promise the JSON text of an answer.
import { Missing } from "./files.js";

const TICK_MS = 1000;
const PATIENCE = 8; // ticks without an answer, and the thread is taken for ended; a phone that sleeps does not tick

// The thread ended, or none came to run, before it answered.
export class Ended extends Error {
  name = "Ended";
}

// A fault of the interpreter, by the name it has there: Missing, TooOld, or a bug of ours.
class Fault extends Error {
  constructor({ name, message }) {
    super(message);
    this.name = name;
  }
}

const { engine } = window; // engine_start.js has begun the first

export const BEGIN = { holds: [] }; // the question that is none: answered once the interpreter runs
export const hasThreads = () => Boolean(engine?.begin);
export const thread = () => new Thread(engine.first ?? engine.begin());

// The answer of a thread that is begun for this one question and ended after it: from the files as they are now.
export async function askedOnce(question) {
  const { first } = engine;
  const asked = new Thread(engine.begin());
  engine.first = first;
  try {
    return await asked.ask(question);
  } finally {
    asked.end();
  }
}

class Thread {
  #worker;
  #waiting = new Map(); // the questions that are not answered, by number
  #count = 0;
  #quiet = 0; // ticks since it last spoke
  #ticking;
  hasBegun = false;
  hasEnded = false;

  constructor({ worker, hasFailed }) {
    engine.first = null;
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#hear(data);
    worker.onerror = () => this.end();
    if (hasFailed) this.end();
    this.ask(BEGIN).catch(() => {}); // said to whoever asks more
  }

  ask(question) {
    if (this.hasEnded) return Promise.reject(new Ended());
    const id = ++this.#count;
    this.#ticking ??= setInterval(() => this.#tick(), TICK_MS);
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#worker.postMessage({ id, ...question });
    });
  }

  #hear({ id, text, fault }) {
    if (fault?.name === "RuntimeError") return this.end(); // the interpreter itself broke
    const { resolve, reject } = this.#waiting.get(id);
    this.#waiting.delete(id);
    this.#rest();
    this.hasBegun = true;
    if (fault) reject(new Fault(fault));
    else resolve(text);
  }

  // What the first answer waits for may take as long as the signal does.
  #tick() {
    if (this.hasBegun && ++this.#quiet >= PATIENCE) this.end();
  }

  #rest() {
    this.#quiet = 0;
    if (this.#waiting.size) return;
    clearInterval(this.#ticking);
    this.#ticking = null;
  }

  end() {
    this.hasEnded = true;
    this.#worker.terminate();
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    this.#rest();
    for (const { reject } of waiting) reject(new Ended());
  }
}

// The interpreter on the page's own thread.
export function onPage() {
  const starting = load().then(({ start }) => start());
  return {
    hasBegun: true,
    hasEnded: false,
    async ask(question) {
      const answer = await starting;
      return answer(question);
    },
  };
}

async function load() {
  if (!engine) throw new Missing("engine_start.js");
  try {
    return await import(engine.address);
  } catch (fault) {
    throw fault instanceof TypeError ? new Missing(engine.address) : new Fault({ name: "TooOld", message: fault.message });
  }
}
