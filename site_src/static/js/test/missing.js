// What is missing, as people read it: calc's names of readings, times and facts.
import { fill } from "../site.js";
import { minutes } from "./clock.js";

export function missingWord(name, { words, answer }) {
  if (name.startsWith("due_")) return fill(words.missing.due, { at: minutes(Number(name.slice(4))) });
  const last = name.split(".").at(-1);
  const isSection = answer.plan.tests.some(({ id }) => id === name);
  return words.missing[name] ?? words.field[last] ?? words.check[last] ?? (isSection ? words.missing.section : name);
}
