// Entries of profiles on their way to the database, noted where writing takes no wait: a page that ends between a keystroke
// and its transaction leaves them there. Each holds the value that was kept before the first of them.
import { chosen, jot } from "../shared/choices.js";

const NOTES = "rig-entries";

export const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

export const noted = () => JSON.parse(chosen(NOTES, "[]"));

const others = (id, key) => noted().filter((entry) => entry.id !== id || entry.key !== key);

export function note(id, key, value, base) {
  const earlier = noted().find((entry) => entry.id === id && entry.key === key);
  jot(NOTES, JSON.stringify([...others(id, key), { id, key, value, base: earlier ? earlier.base : base }]));
}

// Take back the note of a value that is kept now; a later one of the same field stays, on the base that is kept.
export function strike(id, key, value) {
  const entry = noted().find((each) => each.id === id && each.key === key);
  if (!entry) return;
  const left = same(entry.value, value) ? [] : [{ ...entry, base: value }];
  jot(NOTES, JSON.stringify([...others(id, key), ...left]));
}

// A kept profile with what was last typed in it, where the database does not have that yet.
export const withNoted = (profile) => noted()
  .filter(({ id, key, base }) => id === profile.id && same(profile[key], base))
  .reduce((seen, { key, value }) => ({ ...seen, [key]: value }), profile);
