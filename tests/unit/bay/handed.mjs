// Fragments that hand a defect over, and what is read of them: JSON on standard input and output.
import { readFileSync } from "node:fs";
import { fragmentOf, handedIn } from "../../../site_src/static/js/shared/handed.js";

const { made, read } = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify({ made: made.map((content) => handedIn(fragmentOf(content))), read: read.map(handedIn) }));
