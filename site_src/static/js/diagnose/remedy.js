// What to do about a cause that stands: its remedy, or what remains of that where its cure was seen to work. Pure.

// act: the sentence; radio, order: what comes with it, none where the remedy itself is done.
export function remedyOf(cause, { signs }, { words, causes, knowledge }) {
  const { radio, order } = causes[cause];
  const { shows } = knowledge.causes.find(({ id }) => id === cause);
  const isDone = knowledge.signs.some(({ id, cures }) => cures && shows.includes(id) && signs[id] === "seen");
  return isDone && words.remains[cause] ? { isDone, act: words.remains[cause] } : { isDone, act: words.act[cause], radio, order };
}
