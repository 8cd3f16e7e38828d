// What is said at a field of an entry that calc cannot use.
import { fill } from "./site.js";

export const refusalOf = (words, refusal) => fill(words.refusal[refusal.code] ?? words.refusal.other, refusal);
