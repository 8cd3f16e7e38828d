// What stands under an entry that cannot be used.
import { refusalOf } from "../shared/refusal.js";
import { fill } from "../shared/site.js";

// refusal(places, id) gives the words for the first place that has a problem, or null. A number that is too low is left alone
// while it is typed: more digits may come.
export const refuser = (problems, { words, u }) => (places, id) => {
  const found = problems.find(({ place }) => places.includes(place));
  if (!found || (found.is_below && document.activeElement?.id === id)) return null;
  return found.code === "out_of_range"
    ? fill(words.test.possible, { least: found.least_text, most: found.most_text, unit: u[`u_${found.kind}`] })
    : refusalOf(words, found);
};
