// What help's search finds, as the phone works it out: JSON on standard input and output.
import { readFileSync } from "node:fs";
import { find } from "../../site_src/static/js/help/search.js";

const { index, typed } = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(typed.map((text) => find(index, text, new Set(index.silent)).map(({ address }) => address))));
