// Logs as files let them in, by the site's own script over calc on the phone's interpreter; argument: calc, packed. JSON on standard
// input: [{ standing, files: [records], most?: bytes of a file }];
// JSON out, of each: { parts: of the log as files, records, came, asked: records of each question, kept: of each keep, ms, cpu_ms: without what
// other work on the machine took }.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = new URL("..", import.meta.url);
const vendored = new URL("site_src/static/vendor/micropython/", root);
const { unpack } = await import(new URL("site_src/static/js/shared/modules.js", root));
const { letIn } = await import(new URL("site_src/static/js/bay/arrivals.js", root));
const { partsOf } = await import(new URL("site_src/static/js/bay/parts.js", root));
const { loadMicroPython } = await import(new URL("micropython.mjs", vendored));
const python = await loadMicroPython({ url: fileURLToPath(new URL("micropython.wasm", vendored)) });
unpack(readFileSync(process.argv[2]), python.FS);
const phone = python.pyimport("calc.phone");

const answers = [];
for (const { standing, files, most } of JSON.parse(readFileSync(0, "utf8"))) {
  const log = { rig: { id: "r1" }, records: standing };
  const [asked, kept, came] = [[], [], []];
  const ask = async (door, given) => {
    asked.push(given.arriving.length);
    const { ok, error } = JSON.parse(phone.call(door, JSON.stringify(given)));
    if (error) throw new Error(JSON.stringify(error));
    return ok;
  };
  const keep = async (records) => kept.push(records.length);
  const start = performance.now();
  const before = process.cpuUsage();
  for (const records of files) came.push(await letIn(records, log, { ask, keep }));
  const [ms, cpu] = [performance.now() - start, process.cpuUsage(before)];
  const parts = partsOf(log.records, most).map(({ texts, photos }) => ({ records: texts.map((text) => JSON.parse(text)), photos }));
  answers.push({ parts, records: log.records, came, asked, kept, ms, cpu_ms: (cpu.user + cpu.system) / 1000 });
}
process.stdout.write(JSON.stringify(answers));
