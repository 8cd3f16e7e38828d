// What a tap on a stepper's key makes of the text that stands in its input: promises text, or null where there is no such step.
import { calc } from "./engine.js";
import { decimal } from "./site.js";

export const stepped = (text, { kind, step, direction, least = null }) =>
  calc.ask("entry.stepped", { text, kind: kind ?? "count", decimal, step, direction, least });
