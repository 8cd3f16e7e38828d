// calc in MicroPython, on a thread of its own. It is asked { id, holds, door, text } and tells { id, text } or { id, fault }, in the
// order it was asked. Where a browser has no such thread the page imports it (engine_thread.js). calc comes in two pieces: the second is
// fetched at once by a page that will ask for it (engine_start.js), and by any other at the first question that needs it.
import { loadMicroPython } from "../../vendor/micropython/micropython.mjs";
import { file, root } from "./files.js";
import { unpack } from "./modules.js";

// A browser that cannot run the interpreter, or blocks it.
class TooOld extends Error {
  name = "TooOld";
}

const piece = async (name) => new Uint8Array(await (await file(new URL(name, root))).arrayBuffer());

// calc.phone, running: what answers a question with JSON text, one after another; null where it asks no door.
export async function start() {
  const first = piece("calc.bin");
  let rest = self.name === "whole" ? piece("calc-rest.bin") : null;
  rest?.catch(() => {}); // whoever asks for it is told
  const [python, modules] = await Promise.all([run(new URL("static/vendor/micropython/micropython.wasm", root).href), first]);
  unpack(modules, python.FS);
  const phone = python.pyimport("calc.phone");
  let isWhole = false;
  const answered = async (question) => {
    try {
      return answer(phone, question);
    } catch (fault) {
      if (isWhole || fault.type !== "ImportError") throw fault;
    }
    rest ??= piece("calc-rest.bin");
    unpack(await rest, python.FS);
    isWhole = true;
    return answer(phone, question);
  };
  let last = Promise.resolve();
  return (question) => (last = last.catch(() => {}).then(() => (question.door ? answered(question) : null)));
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
function answer(phone, { holds, door, text }) {
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
      const ask = await starting;
      globalThis.postMessage({ id, text: await ask(question) });
    } catch ({ name, message }) {
      globalThis.postMessage({ id, fault: { name, message } });
    }
  };
}
