// Writes calc into the interpreter's file system, out of the one file it travels in: a line of JSON, [[name, length], ...],
// then the bytes of each. A name is a path below calc, such as "base/errors.mpy".
export function unpack(packed, files) {
  const end = packed.indexOf(10); // the line's end
  let at = end + 1;
  const folders = new Set();
  for (const [name, length] of JSON.parse(new TextDecoder().decode(packed.subarray(0, end)))) {
    const folder = `/calc/${name}`.slice(0, `/calc/${name}`.lastIndexOf("/"));
    if (!folders.has(folder)) files.mkdir(folder);
    folders.add(folder);
    files.writeFile(`/calc/${name}`, packed.subarray(at, (at += length)));
  }
}
