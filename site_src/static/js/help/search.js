// Which rows of an index (site_src/content/findable.py) are most like what was typed, best first; slips and endings are forgiven.
const ENDING = 3; // letters in which two forms of one word may differ: prime, priming
const NAMED_SO = 3; // a row whose name is just what was typed
const ENOUGH = 0.3; // of the best row's weight: what is less like it is left out

/** @param {string} text */
export const folded = (text) => text.toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "");
/** @param {string} text */
export const wordsOf = (text) => folded(text).match(/[\p{L}\p{N}]+/gu) ?? [];

// How many letters are wrong, missing, too many or swapped.
export function slips(one, other) {
  let [before, last] = [[], Array.from({ length: other.length + 1 }, (_, count) => count)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1));
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    [before, last] = [last, row];
  }
  return last[other.length];
}

// How like a word of the index is to a typed one, 0 to 1.
export function likeness(typed, word) {
  if (typed === word) return 1;
  const [short, long] = typed.length < word.length ? [typed, word] : [word, typed];
  if (short.length < 3) return 0;
  if (word.startsWith(typed) || (short.length > 3 && long.startsWith(short) && long.length - short.length <= ENDING)) return 0.8;
  let shared = 0;
  while (short[shared] === long[shared]) shared += 1;
  if (shared >= 4 && long.length - shared <= ENDING) return 0.7;
  const most = short.length < 4 ? 0 : short.length < 8 ? 1 : 2;
  return long.length - short.length <= most && slips(short, long) <= most ? 0.5 : 0;
}

/**
 * @param {{ rows: any[], words: Record<string, [number, number][]> }} index
 * @param {string} text
 * @param {Set<string>} silent words that say nothing
 */
export function find({ rows, words }, text, silent) {
  const said = wordsOf(text).filter((word) => !silent.has(word));
  const weights = rows.map(() => 0);
  const met = rows.map(() => 0); // how many of the words: a row that has them all comes before one that has one of them often
  for (const typed of said) {
    const best = new Map();
    for (const [word, places] of Object.entries(words)) {
      const like = likeness(typed, word);
      for (const [row, weight] of like ? places : []) best.set(row, Math.max(best.get(row) ?? 0, weight * like));
    }
    best.forEach((weight, row) => {
      weights[row] += weight;
      met[row] += 1 / said.length;
    });
  }
  const whole = wordsOf(text).join(" ");
  const found = rows.map((row, count) => ({ ...row, weight: weights[count] * met[count] * (wordsOf(row.name).join(" ") === whole ? NAMED_SO : 1) }));
  const greatest = Math.max(...found.map(({ weight }) => weight));
  return found.filter(({ weight }) => weight > 0 && weight >= ENOUGH * greatest)
    .sort((one, other) => other.weight - one.weight);
}
