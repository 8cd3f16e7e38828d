// The one door to calc: MicroPython is started once, and only JSON text crosses.
import { modules } from "./modules.js";
import { root } from "./site.js";

// An input that calc cannot use: field, code, and facts such as the line.
export class Refusal extends Error {
  constructor(told) {
    super(`${told.field}: ${told.code}`);
    Object.assign(this, told);
  }
}

let started;
let running = null;

// One call to calc where it runs already, or null: for what an input's own keys do, which are there only then.
export const ask = (name, given) => running?.(name, given) ?? null;

// Resolves to call(name, arguments); rejects where the browser cannot run it.
export function engine() {
  started ??= start();
  return started;
}

async function start() {
  const vendored = new URL("static/vendor/micropython/", root);
  const [{ loadMicroPython }, packed] = await Promise.all([
    import(new URL("micropython.mjs", vendored)),
    fetch(new URL("calc.bin", root)).then((response) => response.arrayBuffer()),
  ]);
  const python = await loadMicroPython({ url: new URL("micropython.wasm", vendored).href });
  python.FS.mkdir("/calc");
  for (const [name, code] of modules(new Uint8Array(packed))) python.FS.writeFile(`/calc/${name}`, code);
  const phone = python.pyimport("calc.phone");
  running = (name, given) => {
    const told = JSON.parse(phone.call(name, JSON.stringify(given)));
    if ("error" in told) throw new Refusal(told.error);
    return told.ok;
  };
  return running;
}
