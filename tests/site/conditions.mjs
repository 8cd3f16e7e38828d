// What "Out of service or not" finds, as the phone works it out: JSON on standard input and output.
import { readFileSync } from "node:fs";
import { proposal, ranked } from "../../site_src/static/js/bay/likely.js";

const { conditions, differing, silent, typed } = JSON.parse(readFileSync(0, "utf8"));
const rows = [...conditions, ...differing];
process.stdout.write(JSON.stringify(typed.map((text) => ({
  rows: ranked(rows, text, silent).map(({ row }) => row.id), proposed: proposal({ conditions, silent }, text)?.id ?? null }))));
