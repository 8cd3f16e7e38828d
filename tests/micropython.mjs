// Runs calc, packed in the file named, under the phone's own interpreter: one JSON request a line in, one JSON answer a line out.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const root = new URL("..", import.meta.url);
const vendored = new URL("site_src/static/vendor/micropython/", root);
const { unpack } = await import(new URL("site_src/static/js/shared/modules.js", root));
const { loadMicroPython } = await import(new URL("micropython.mjs", vendored));
const python = await loadMicroPython({
  url: fileURLToPath(new URL("micropython.wasm", vendored)),
  stdout: (line) => process.stderr.write(line + "\n"),
});
unpack(readFileSync(process.argv[2]), python.FS);
python.FS.mkdir("/tests");
python.FS.writeFile("/tests/bridge.py", readFileSync(new URL("tests/bridge.py", root), "utf8"));
python.FS.writeFile("/tests/__init__.py", "");
const bridge = python.pyimport("tests.bridge");
for await (const line of createInterface({ input: process.stdin })) {
  let answer;
  try {
    answer = bridge.call(line);
  } catch (bug) {
    answer = JSON.stringify({ bug: bug.message });
  }
  process.stdout.write(answer + "\n");
}
