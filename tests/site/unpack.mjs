// A pack as the worker unpacks it: its path and the size of what is in it as arguments, the bytes on standard output.
import { readFileSync, writeSync } from "node:fs";
import { unpacked } from "../../site_src/worker/unpacking.js";

const [path, size] = process.argv.slice(2);
const bytes = unpacked(new Uint8Array(readFileSync(path)), Number(size));
for (let at = 0; at < bytes.length;) at += writeSync(1, bytes, at);
