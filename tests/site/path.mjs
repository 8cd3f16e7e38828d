// The power path of every step of a card, as the phone works it out: JSON on standard input and output.
import { readFileSync } from "node:fs";
import { pathAt } from "../../site_src/static/js/power/of_step.js";

const { cards, again } = JSON.parse(readFileSync(0, "utf8"));
const walked = cards.map(({ sequence, facts, rig, path }) =>
  sequence.steps.map(({ id }, position) => pathAt({ sequence, position, step: id, facts, rig, path })));
if (again) walked.push(pathAt(again));
process.stdout.write(JSON.stringify(walked));
