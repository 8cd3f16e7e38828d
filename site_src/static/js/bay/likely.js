// Which conditions are most like what is typed, by the search of help, and the one that it proposes.
import { find, rarity, wordsOf } from "../help/search.js";

// Weight of a word by where it stands: in the row's name, among what people call it, in its note.
const [NAMED, ALSO, NOTED] = [3, 2, 1];
const HALF = 0.5; // of what was typed: a row is proposed that has more of it
const AHEAD = 1.2; // times the weight of the next: two alike are offered, and neither is proposed
const SHORTEST = 4; // letters before anything is proposed

// An index as help's search takes it, of rows each with its texts: a word that few rows have weighs more.
function indexOf(rows, textsOf) {
  const weights = rows.map((row) => {
    const of = new Map();
    for (const [weight, text] of textsOf(row)) for (const word of wordsOf(text)) of.set(word, Math.max(of.get(word) ?? 0, weight));
    return of;
  });
  const places = new Map();
  weights.forEach((of, place) => of.forEach((weight, word) => places.set(word, [...(places.get(word) ?? []), [place, weight]])));
  const words = [...places].map(([word, at]) => [word, at.map(([place, weight]) => [place, weight * rarity(rows, at)])]);
  return { rows: rows.map((row) => ({ name: row.what ?? row.about, row })), words: Object.fromEntries(words), phrases: {} };
}

const textsOf = ({ what, also, note, about, says, take, why }) => [[NAMED, what ?? about], [ALSO, also ?? ""], [NOTED, note ?? [says, take, why].join(" ")]];

const indexes = new WeakMap();

// The rows most like what is typed, best first, each { row, met }: met, the part of its words that the row has.
export function ranked(rows, text, silent) {
  if (!indexes.has(rows)) indexes.set(rows, indexOf(rows, textsOf));
  return find(indexes.get(rows), text, new Set(silent));
}

// Whether anything was typed that can be looked for.
export const isSaid = (text, silent) => wordsOf(text).some((word) => word.length > 2 && !silent.includes(word));

// The one that a defect's words propose, or null.
export function proposal({ conditions, silent }, text) {
  const [best, next] = text.trim().length < SHORTEST ? [] : ranked(conditions, text, silent);
  return best?.met > HALF && best.weight >= AHEAD * (next?.weight ?? 0) ? best.row : null;
}
