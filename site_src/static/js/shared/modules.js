// Writes calc into the interpreter's file system, out of one of the files it travels in: a line of JSON, [[name, length], ...],
// then the bytes of each. A name is a path below calc, such as "base/errors.mpy".
export function unpack(packed, files) {
  const end = packed.indexOf(10); // the line's end
  let at = end + 1;
  for (const [name, length] of JSON.parse(new TextDecoder().decode(packed.subarray(0, end)))) {
    const folder = `/calc/${name}`.slice(0, `/calc/${name}`.lastIndexOf("/"));
    if (!files.analyzePath(folder).exists) files.mkdir(folder);
    files.writeFile(`/calc/${name}`, packed.subarray(at, (at += length)));
  }
}
