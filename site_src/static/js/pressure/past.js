// The layouts one can step back to, the last few kept. Changes of one and the same thing are undone at once.
import { keepDraft } from "../shared/draft.js";

export const DRAFT = "pressure-past";
const [MOST, MOST_KEPT] = [50, 5];

export class Past {
  #steps;

  constructor(steps) {
    this.#steps = steps.map((step) => ({ ...step, what: Symbol("kept") }));
  }

  get isEmpty() {
    return this.#steps.length === 0;
  }

  // The layout as it was before this began to change.
  before = (what, layout) => (this.#steps.at(-1)?.what === what ? this.#steps.at(-1).layout : layout);

  // A layout and its selected line, as they stand before a change.
  note(what, { layout, selected, from }) {
    if (this.#steps.at(-1)?.what === what) return;
    this.#steps.push({ layout, what, selected, from });
    if (this.#steps.length > MOST) this.#steps.shift();
    this.#keep();
  }

  // What to step back to; the change before it is done, and whatever comes is another.
  back() {
    const step = this.#steps.pop();
    if (!this.isEmpty) this.#steps.at(-1).what = Symbol("done");
    this.#keep();
    return step;
  }

  #keep() {
    keepDraft(DRAFT, this.#steps.slice(-MOST_KEPT).map(({ layout, selected, from }) => ({ layout, selected, from })));
  }
}
