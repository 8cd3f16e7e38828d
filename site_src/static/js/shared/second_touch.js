// A deliberate second touch: the first asks, one that follows at once counts for none, a later one acts, and the question lapses.
const PAUSE_MS = 400;
const LAPSE_MS = 8000;

export class SecondTouch {
  isAsked = false;
  #last = 0;
  #timer = 0;

  // draw(): what is asked has changed
  constructor(draw) {
    this.draw = draw;
  }

  touch(act) {
    const pause = performance.now() - this.#last;
    this.#last = performance.now();
    if (this.isAsked && pause < PAUSE_MS) return undefined;
    if (this.isAsked) {
      this.lapse();
      return act();
    }
    this.isAsked = true;
    this.#timer = window.setTimeout(() => {
      this.lapse();
      this.draw();
    }, LAPSE_MS);
    return this.draw();
  }

  lapse() {
    clearTimeout(this.#timer);
    this.isAsked = false;
  }
}
