// What a tap on a stepper's key makes of the text that stands in its input: promises text, or null where there is no such step.
import { calc } from "./engine.js";
import { decimal } from "./site.js";

const stepped = (text, { kind, step, direction, least = null }) =>
  calc.ask("entry.stepped", { text, kind: kind ?? "count", decimal, step, direction, least });

let last = Promise.resolve(); // the step before this one, whose outcome this one begins from

async function stepAfter(earlier, input, { start, by, type }) {
  await earlier;
  const before = input.value;
  const next = await stepped(before.trim() ? before : start, by);
  if (next === null || input.value !== before) return;
  input.value = next;
  type(next);
}

// One step of what stands in an input, or of `start` where nothing does; `type(text)` takes what it comes to. Steps touched while one is worked out follow it,
// each from what the one before made: a quick hand on a slow phone loses none.
export function stepIn(input, step) {
  const done = stepAfter(last, input, step);
  last = done.catch(() => {}); // whoever touched it hears of it
  return done;
}
