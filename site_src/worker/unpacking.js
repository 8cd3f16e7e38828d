// A pack is one stream of LZMA, as Python's lzma writes it raw with lc 3, lp 0, pb 0: many files, one after another. Browsers unpack gzip
// alone, which looks back 32 kB; a page repeats what stands in pages further back than that.

// Where each model's chances stand in one table. [Of a literal: 0x300 for each of the 8 highest parts of the byte before it.]
const [IS_MATCH, IS_REP, IS_REP_0, IS_REP_1, IS_REP_2, IS_LONG_REP_0] = [0, 12, 24, 36, 48, 60];
const [SLOT, NEAR, ALIGN, LENGTH, REP_LENGTH, LITERAL] = [72, 328, 443, 459, 733, 1007];
const [MID, HIGH] = [10, 18]; // below a length's own place: two choices, then short ones from 2, MID from 10, HIGH from 18
const SIZE = LITERAL + (0x300 << 3);

// The unpacked bytes of a stream, so many of them. A stream that is not whole gives wrong ones: compare them.
export function unpacked(packed, size) {
  const chances = new Uint16Array(SIZE).fill(1024);
  const out = new Uint8Array(size);
  let [range, code, at] = [0xffffffff, 0, 1];
  while (at < 5) code = (code << 8 | packed[at++]) >>> 0;

  const wider = () => {
    if (range >= 0x1000000) return;
    range = range << 8 >>> 0;
    code = (code << 8 | packed[at++]) >>> 0;
  };
  const bit = (place) => {
    const chance = chances[place];
    const bound = (range >>> 11) * chance;
    const is = code >= bound ? 1 : 0;
    if (is) {
      range -= bound;
      code -= bound;
      chances[place] = chance - (chance >>> 5);
    } else {
      range = bound;
      chances[place] = chance + (2048 - chance >>> 5);
    }
    wider();
    return is;
  };
  const evenBits = (count) => {
    let value = 0;
    for (; count; count -= 1) {
      range >>>= 1;
      const is = code >= range ? 1 : 0;
      if (is) code -= range;
      value = value << 1 | is;
      wider();
    }
    return value;
  };
  const tree = (place, bits) => {
    let node = 1;
    for (let left = bits; left; left -= 1) node = node << 1 | bit(place + node);
    return node - (1 << bits);
  };
  const treeFromLowest = (place, bits) => {
    let [node, value] = [1, 0];
    for (let nth = 0; nth < bits; nth += 1) {
      const is = bit(place + node);
      node = node << 1 | is;
      value |= is << nth;
    }
    return value;
  };
  const length = (place) => {
    if (!bit(place)) return 2 + tree(place + 1, 3);
    return bit(place + 1) ? 18 + tree(place + HIGH - 1, 8) : 10 + tree(place + MID - 1, 3);
  };
  const distance = (matched) => {
    const slot = tree(SLOT + Math.min(matched - 2, 3) * 64, 6);
    if (slot < 4) return slot;
    const bits = (slot >> 1) - 1;
    const high = (2 | slot & 1) << bits >>> 0;
    if (slot < 14) return high + treeFromLowest(NEAR + high - slot, bits);
    return high + evenBits(bits - 4) * 16 + treeFromLowest(ALIGN, 4);
  };

  let [state, rep0, rep1, rep2, rep3] = [0, 0, 0, 0, 0]; // the last four distances, each less one
  const literal = (end) => {
    const place = LITERAL + 0x300 * (end ? out[end - 1] >> 5 : 0);
    let node = 1;
    if (state >= 7) {
      for (let wanted = out[end - rep0 - 1], agrees = true; agrees && node < 0x100; wanted <<= 1) {
        const expected = wanted >> 7 & 1;
        const is = bit(place + (1 + expected << 8) + node);
        node = node << 1 | is;
        agrees = is === expected;
      }
    }
    while (node < 0x100) node = node << 1 | bit(place + node);
    state = state < 4 ? 0 : state - (state < 10 ? 3 : 6);
    return node & 0xff;
  };
  const repeated = () => { // an earlier distance again, moved to the front
    if (bit(IS_REP_0 + state)) {
      let again = rep1;
      if (bit(IS_REP_1 + state)) {
        again = rep2;
        if (bit(IS_REP_2 + state)) [again, rep3] = [rep3, rep2];
        rep2 = rep1;
      }
      [rep0, rep1] = [again, rep0];
    } else if (!bit(IS_LONG_REP_0 + state)) {
      state = state < 7 ? 9 : 11;
      return 1;
    }
    const matched = length(REP_LENGTH);
    state = state < 7 ? 8 : 11;
    return matched;
  };

  for (let end = 0; end < size;) {
    if (!bit(IS_MATCH + state)) {
      out[end] = literal(end);
      end += 1;
      continue;
    }
    let matched;
    if (bit(IS_REP + state)) matched = repeated();
    else {
      [rep1, rep2, rep3] = [rep0, rep1, rep2];
      matched = length(LENGTH);
      state = state < 7 ? 7 : 10;
      rep0 = distance(matched);
    }
    for (; matched; matched -= 1, end += 1) out[end] = out[end - rep0 - 1];
  }
  return out;
}
