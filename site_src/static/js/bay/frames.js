// A small log in some square codes. Each is a link of its own, with its number, how many there are, and the digest of them all, so that they
// can arrive in any order and twice; a code that was changed on its way is refused.
import { packed, unpacked } from "../rig/carry.js";
import { sha256 } from "../shared/sha256.js";

export const MARK = "#log=";
export const MOST_FRAMES = 12; // as many as a person shows one by one: some hundred records
const LETTERS = 600; // of a code: one that a phone's camera still reads from another's screen
const SUM = 4;
const FRAME = /^([\da-f]{8})\.(\d{1,2})\.(\d{1,2})\.([\da-f]{4})\.([\w-]+)$/;

const digest = async (text, signs) => (await sha256(text)).slice(0, signs);

const sumOf = ({ set, at, of, letters }) => digest([set, at, of, letters].join("."), SUM);

// The fragments of a text, one a code; null where they would be too many.
export async function framesOf(text) {
  const whole = await packed(text);
  const of = Math.ceil(whole.length / LETTERS);
  if (of > MOST_FRAMES) return null;
  const set = await digest(whole, 8);
  const frames = Array.from({ length: of }, (_, place) => ({ set, at: place + 1, of, letters: whole.slice(place * LETTERS, (place + 1) * LETTERS) }));
  return Promise.all(frames.map(async (frame) => `${MARK}${set}.${frame.at}.${of}.${await sumOf(frame)}.${frame.letters}`));
}

// The frame of a fragment, { set, at, of, letters }; null where it is not as it was sent.
export async function frameOf(fragment) {
  const [, set, at, of, sum, letters] = FRAME.exec(fragment.slice(MARK.length)) ?? [];
  const frame = { set, at: Number(at), of: Number(of), letters };
  if (!set || letters.length > LETTERS || frame.of > MOST_FRAMES || frame.at < 1 || frame.at > frame.of) return null;
  return sum === (await sumOf(frame)) ? frame : null;
}

// The text of a whole set, `parts` its letters in order; throws where they are not what its digest says.
export async function joined(set, parts) {
  const whole = parts.join("");
  if ((await digest(whole, 8)) !== set) throw new RangeError("damaged");
  return unpacked(whole);
}
