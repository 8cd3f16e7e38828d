// The one door to calc: MicroPython is started once, and only JSON text crosses. Its answers are promises: where it runs is
// nobody else's business.
import { unpack } from "./modules.js";
import { Missing, file, root } from "./site.js";

// An input that calc cannot use: field, code, and facts such as the line.
export class Refusal extends Error {
  field = "";
  code = "";

  constructor(told) {
    super(`${told.field}: ${told.code}`);
    Object.assign(this, told);
  }
}

// A browser that cannot run the interpreter, or blocks it.
class TooOld extends Error {
  name = "TooOld";
}

const MOST_HELD = 32; // as calc.phone has it

// Asks calc. Rejects with Refusal, Missing or TooOld, and with anything else where the fault is ours. A page takes a Refusal
// and leaves the rest alone: guard.js says them and takes its numbers down.
export const calc = {
  // The answer of a door of calc.phone to `given`, arguments by name. What does not change from question to question (shelf,
  // units, knowledge) goes in `held`, by argument too: it crosses once, and is only named after that. It is known by its
  // identity, so the page hands the same object each time and never changes it in place.
  /** @type {Ask} */
  async ask(door, given, held) {
    const phone = await running();
    const named = Object.entries(held ?? {}).map(([argument, value]) => [argument, hold(phone, value)]);
    return read(phone.call(door, JSON.stringify(named.length ? { ...given, held: Object.fromEntries(named) } : given)));
  },
  start: () => running().then(() => {}), // before there is anything to ask, so that the first answer waits for less
};

let started;
const running = () => (started ??= start());

// The name that a value is held under in the interpreter. It crosses where it is new there; when all names are taken, the
// one longest in use goes to it.
const names = new Map();
function hold(phone, value) {
  if (names.has(value)) return names.get(value);
  const [oldest] = names.size < MOST_HELD ? [] : names;
  const name = oldest ? oldest[1] : String(names.size);
  read(phone.hold(name, JSON.stringify(value)));
  if (oldest) names.delete(oldest[0]);
  names.set(value, name);
  return name;
}

function read(text) {
  const answer = JSON.parse(text);
  if ("error" in answer) throw new Refusal(answer.error);
  return answer.ok;
}

async function start() {
  const vendored = new URL("static/vendor/micropython/", root);
  const [interpreter, packed] = await Promise.all([
    loaded(vendored),
    file(new URL("calc.bin", root)).then((response) => response.arrayBuffer()),
  ]);
  const python = await run(interpreter, new URL("micropython.wasm", vendored).href);
  unpack(new Uint8Array(packed), python.FS);
  return python.pyimport("calc.phone");
}

async function loaded(vendored) {
  const url = new URL("micropython.mjs", vendored);
  try {
    return (await import(url.href)).loadMicroPython;
  } catch (fault) {
    throw fault instanceof TypeError ? new Missing(url) : new TooOld(fault.message);
  }
}

// The interpreter, running. What stops it is the browser, unless its file is not there.
async function run(loadMicroPython, url) {
  try {
    return await loadMicroPython({ url });
  } catch (fault) {
    await file(url);
    throw new TooOld(fault.message);
  }
}
