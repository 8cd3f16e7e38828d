// The size of paper, chosen once for every page that prints: which of a page's style sheets holds, and the chips that choose.
import { chips } from "./chips.js";
import { choose, chosen } from "./choices.js";

export class PaperSize {
  size = "letter";

  // `kind`: what the page's sheets are called by, "paper" or "upright"; `words` has the name of each size and of the choice, as `size`.
  constructor({ kind, sizes, words, redraw }) {
    this.kind = kind;
    this.sizes = sizes;
    this.words = words;
    this.redraw = redraw;
    this.#turnTo(sizes.includes(chosen("paper", "letter")) ? chosen("paper", "letter") : "letter");
  }

  #turnTo(size) {
    this.size = size;
    for (const each of this.sizes) /** @type {HTMLLinkElement} */ (document.getElementById(`${this.kind}-${each}`)).media = each === size ? "all" : "not all";
  }

  view = () => chips({
    name: "size", legend: this.words.size, value: this.size, choices: this.sizes.map((id) => ({ id, label: this.words[id] })),
    change: (size) => {
      this.#turnTo(size);
      choose("paper", size);
      this.redraw();
    },
  });
}
