// Text along a line: what has room is written, what must be is written first.
const LETTER = 0.5; // rem, of a letter 0.875 rem high

// The rem there are across an element, or across the screen.
export const rem = () => parseFloat(getComputedStyle(document.documentElement).fontSize);
export const roomIn = (element) => (element?.clientWidth || innerWidth) / rem();

// labels: [{ place, text }], place from 0 to 1, the most wanted first; width: rem of the line. Returns those with room, each with `anchor`.
export function withRoom(labels, width) {
  const letter = LETTER / width;
  const taken = [];
  return labels.flatMap((label) => {
    const wide = String(label.text).length * letter;
    const anchor = label.place < wide / 2 ? "start" : label.place + wide / 2 > 1 ? "end" : "middle";
    const from = label.place - { start: 0, middle: wide / 2, end: wide }[anchor];
    if (taken.some(([start, end]) => from < end + letter && start - letter < from + wide)) return [];
    taken.push([from, from + wide]);
    return [{ ...label, anchor }];
  });
}

export const percent = (place) => `${(100 * Math.min(Math.max(place, 0), 1)).toFixed(2)}%`;
