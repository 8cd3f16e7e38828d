// The modules of calc, [[name, bytes], ...], out of the one file they travel in: a line of JSON, [[name, length], ...], then
// the bytes of each.
export function modules(packed) {
  const end = packed.indexOf(10); // the line's end
  let at = end + 1;
  const names = JSON.parse(new TextDecoder().decode(packed.subarray(0, end)));
  return names.map(([name, length]) => [name, packed.subarray(at, (at += length))]);
}
