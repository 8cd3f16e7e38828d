// Which rows of an index (site_src/content/findable.py) are most like what was typed, best first; slips and endings are forgiven.
const ENDING = 3; // letters in which two forms of one word may differ: prime, priming
const [SLIP, SLIPS] = [0.75, 0.5]; // of one letter in a long word; of as many as are forgiven
const LONG = 6; // letters of a word in which one slip leaves little doubt
const NAMED_SO = 8; // a row whose name is just what was typed
const NAMED_NEARLY = 3; // but for words that say nothing
const ENOUGH = 0.3; // of the best row's weight: what is less like it is left out

/** @param {string} text */
export const folded = (text) => text.toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "");
/** @param {string} text */
export const wordsOf = (text) => folded(text).match(/[\p{L}\p{N}]+/gu) ?? [];

// What was typed, with each turn of phrase as the one word that the index has for it: "it will not go in" is "it will not engage".
/**
 * @param {string} text
 * @param {Record<string, string>} phrases by the word, the turns of phrase, joined by "|"
 */
export function said(text, phrases) {
  const whole = wordsOf(text).join(" ");
  return Object.entries(phrases).reduce((now, [word, turns]) => now.replace(new RegExp(`\\b(?:${turns})\\b`, "g"), word), whole);
}

// What a word weighs by how few rows have it, as site_src/content/findable.py weighs each.
export const rarity = (rows, places) => Math.log(1 + rows.length / places.length);

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

// A word with each doubled letter once, the commonest slip: throtle, capp.
const single = (word) => word.replace(/(.)\1/g, "$1");

// How like a word of the index is to a typed one, 0 to 1.
export function likeness(typed, word) {
  if (typed === word) return 1;
  if (single(typed) === single(word)) return 0.95;
  const [short, long] = typed.length < word.length ? [typed, word] : [word, typed];
  if (short.length < 3) return 0;
  if (word.startsWith(typed) || (short.length > 3 && long.startsWith(short) && long.length - short.length <= ENDING)) return 0.8;
  const most = short.length < 4 ? Number(typed === short && typed[0] === word[0]) : short.length < 8 ? 1 : 2;
  const wrong = long.length - short.length <= most ? Math.min(slips(short, long), slips(single(short), single(long))) : Infinity;
  if (wrong === 1 && short.length >= LONG) return SLIP; // surer than a common beginning: throtle is throttle, not through
  let shared = 0;
  while (short[shared] === long[shared]) shared += 1;
  if (shared >= 4 && long.length - shared <= ENDING) return 0.7;
  return wrong <= most ? SLIPS : 0;
}

/**
 * @param {{ rows: any[], words: Record<string, [number, number][]>, phrases: Record<string, string> }} index
 * @param {string} text
 * @param {Set<string>} silent words that say nothing
 */
export function find({ rows, words, phrases }, text, silent) {
  const typedWords = wordsOf(said(text, phrases)).filter((word) => !silent.has(word));
  const weights = rows.map(() => 0);
  const met = rows.map(() => 0); // how many of the words: a row that has them all comes before one that has one of them often
  for (const typed of typedWords) {
    const best = new Map();
    const known = Object.hasOwn(words, typed) ? typed : Object.keys(words).find((word) => single(word) === single(typed));
    for (const [word, places] of Object.entries(words)) {
      const near = likeness(typed, word);
      const like = (near === SLIP || near === SLIPS) && Object.hasOwn(words, typed) ? near / 2 : near; // chocks is no slip of checks: there is such a word
      const asRare = like && known ? Math.min(1, rarity(rows, words[known]) / rarity(rows, places)) : 1; // pumping says no more than pump
      for (const [row, weight] of like ? places : []) best.set(row, Math.max(best.get(row) ?? 0, weight * like * asRare));
    }
    best.forEach((weight, row) => {
      weights[row] += weight;
      met[row] += 1 / typedWords.length;
    });
  }
  const [whole, saying] = [wordsOf(text).join(" "), typedWords.join(" ")];
  const named = (name) => (wordsOf(name).join(" ") === whole ? NAMED_SO : wordsOf(name).filter((word) => !silent.has(word)).join(" ") === saying ? NAMED_NEARLY : 1);
  const found = rows.map((row, count) => ({ ...row, met: met[count], weight: weights[count] * met[count], named: named(row.name) }));
  const greatest = Math.max(...found.map(({ weight }) => weight));
  return found.filter(({ weight, named }) => weight > 0 && weight * named >= ENOUGH * greatest)
    .sort((one, other) => other.weight * other.named - one.weight * one.named);
}
