// calc in MicroPython, on a thread of its own. It is asked { id, holds, door, text } and tells { id, text } or { id, fault }, in the
// order it was asked. Where a browser has no such thread the page imports it (engine_thread.js).
import { loadMicroPython } from "../../vendor/micropython/micropython.mjs";
import { file, root } from "./files.js";
import { unpack } from "./modules.js";

// A browser that cannot run the interpreter, or blocks it.
class TooOld extends Error {
  name = "TooOld";
}

// calc.phone, running.
export async function start() {
  const packed = file(new URL("calc.bin", root)).then((response) => response.arrayBuffer());
  const [python, modules] = await Promise.all([run(new URL("static/vendor/micropython/micropython.wasm", root).href), packed]);
  unpack(new Uint8Array(modules), python.FS);
  return python.pyimport("calc.phone");
}

// The interpreter, running. What stops it is the browser, unless its file is not there.
async function run(url) {
  try {
    return await loadMicroPython({ url });
  } catch (fault) {
    await file(url);
    throw new TooOld(fault.message);
  }
}

// The JSON text that calc.phone has for a question: what is new to be held, [name, JSON text] each, then the door's answer.
export function answer(phone, { holds, door, text }) {
  for (const [name, value] of holds) {
    const held = phone.hold(name, value);
    if ("error" in JSON.parse(held)) return held;
  }
  return phone.call(door, text);
}

if (!globalThis.window) {
  const starting = start();
  starting.catch(() => {}); // whoever asks is told
  globalThis.onmessage = async ({ data: { id, ...question } }) => {
    try {
      const phone = await starting;
      globalThis.postMessage({ id, text: question.door ? answer(phone, question) : null });
    } catch ({ name, message }) {
      globalThis.postMessage({ id, fault: { name, message } });
    }
  };
}
