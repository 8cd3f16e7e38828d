// Where each piece of a layout stands: rows down the page, lengths along it by the square root of the hose.
// Pure numbers: places across in rem, rows counted from 0.

const SHORT = 4; // root of the length at which a hose is drawn at least, in square roots

// lines: [{ id, feeder, into, length }] from the pump on, each before those it feeds; length in any unit, null where nobody knows it. One that goes
// into another ends where that one does, whatever its length: `meets` is the row it comes to.
// room: rem for the hoses, least: rem that a hose to a joint and one to its end need. Returns { pieces: by id { from, to, row, start }, rows, deep, wide }; `wide` is what it takes.
export function tree(lines, { room, least }) {
  const behind = (id) => lines.filter(({ feeder }) => feeder === id);
  const pieces = {};
  let rows = 0;

  // A joint stands on the row of its middle child, so that no piece lies on half a row; a lone wye of two stands between them.
  function place(line, depth) {
    const next = behind(line.id);
    const root = Math.max(Math.sqrt(Math.max(line.length ?? 0, 0)), SHORT);
    const sum = root + (line.feeder === null ? 0 : pieces[line.feeder].sum);
    const own = next.length ? least.joint : least.end;
    pieces[line.id] = { depth, sum, root, own, taken: own + (pieces[line.feeder]?.taken ?? 0), row: 0 };
    if (!next.length) pieces[line.id].row = rows++;
    for (const each of next) place(each, depth + 1);
    if (next.length) pieces[line.id].row = pieces[next[(next.length - 1) >> 1].id].row;
  }
  const first = behind(null);
  for (const line of first) place(line, 1);
  const [trunk] = first;
  if (first.length === 1 && rows === 2 && lines.length === 3) pieces[trunk.id].row = 0.5;

  // What is left of the room once each piece has its least goes by the roots of the lengths; the longest way is drawn full.
  const all = Object.values(pieces);
  const deep = Math.max(...all.map(({ depth }) => depth));
  const wide = Math.max(room, ...all.map(({ taken }) => taken));
  const stretch = Math.min(...all.map(({ taken, sum }) => (wide - taken) / sum));
  for (const line of lines) {
    const piece = pieces[line.id];
    const feeder = pieces[line.feeder];
    piece.from = feeder?.to ?? 0;
    piece.to = piece.from + piece.own + piece.root * stretch;
    piece.start = feeder?.row ?? piece.row;
  }
  for (const { id, into } of lines.filter((line) => line.into)) Object.assign(pieces[id], { to: pieces[into].to, meets: pieces[into].row });
  return { pieces, rows, deep, wide };
}
