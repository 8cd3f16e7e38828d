// What one page hands to another that writes a defect: what was seen, in the address's fragment, and read back from it.
export const MARK = "#new=";
export const MOST_WHAT = 160;
export const MOST_SEEN = 600;
const LONGEST = 12_000; // of a fragment: both texts at their longest, nine signs of it to a letter, and what is round them

// A text of at most so many signs; what is cut off shows, and no sign is cut in half.
function cut(text, most) {
  if (text.length <= most) return text;
  return `${text.slice(0, most - 1).replace(/[\uD800-\uDBFF]$/, "")}…`;
}

// Half a sign, which no address can hold, goes.
const whole = (text) => text.replace(/\p{Cs}/gu, "");

export const fragmentOf = ({ what, seen, ...choices }) =>
  MARK + encodeURIComponent(JSON.stringify({ what: cut(whole(what), MOST_WHAT), seen: cut(whole(seen), MOST_SEEN), ...choices }));

// { what, seen, origin, rank, scope, rule }, plain texts, whatever the fragment says; null where it hands nothing over, and
// "lost" where it cannot be read.
export function handedIn(fragment) {
  if (!fragment.startsWith(MARK)) return null;
  if (fragment.length > LONGEST) return "lost";
  try {
    const content = JSON.parse(decodeURIComponent(fragment.slice(MARK.length)));
    const text = (name, most) => (typeof content[name] === "string" ? cut(content[name], most) : "");
    return { what: text("what", MOST_WHAT), seen: text("seen", MOST_SEEN), origin: text("origin", MOST_WHAT), rank: text("class", MOST_WHAT), scope: text("scope", MOST_WHAT), rule: text("rule", MOST_WHAT) };
  } catch {
    return "lost";
  }
}
