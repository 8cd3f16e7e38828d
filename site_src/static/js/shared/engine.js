// The one door to calc: MicroPython is started once, and only JSON text crosses.
import { unpack } from "./modules.js";
import { Missing, file, root } from "./site.js";

// An input that calc cannot use: field, code, and facts such as the line.
export class Refusal extends Error {
  constructor(told) {
    super(`${told.field}: ${told.code}`);
    Object.assign(this, told);
  }
}

// A browser that cannot run the interpreter, or blocks it.
class TooOld extends Error {
  name = "TooOld";
}

let started;
let running = null;

// One call to calc where it runs already, or null: for what an input's own keys do, which are there only then.
export const ask = (name, given) => running?.(name, given) ?? null;

// Resolves to call(name, arguments); rejects with Missing or TooOld, and with anything else where the fault is ours.
// A page leaves those alone: guard.js says them and takes its numbers down.
export function engine() {
  started ??= start();
  return started;
}

async function start() {
  const vendored = new URL("static/vendor/micropython/", root);
  const [interpreter, packed] = await Promise.all([
    loaded(vendored),
    file(new URL("calc.bin", root)).then((response) => response.arrayBuffer()),
  ]);
  const python = await run(interpreter, new URL("micropython.wasm", vendored).href);
  unpack(new Uint8Array(packed), python.FS);
  const phone = python.pyimport("calc.phone");
  running = (name, given) => {
    const told = JSON.parse(phone.call(name, JSON.stringify(given)));
    if ("error" in told) throw new Refusal(told.error);
    return told.ok;
  };
  return running;
}

async function loaded(vendored) {
  const url = new URL("micropython.mjs", vendored);
  try {
    return (await import(url)).loadMicroPython;
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
