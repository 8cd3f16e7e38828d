// A second touch: one that follows at once was meant for what stood before.
const PAUSE_MS = 400;
const LAPSE_MS = 8000;

// Whether what is shown since `shownAt` stood long enough to be answered by a touch at `touchedAt`, both by the page's own clock.
// A touch that is put to what it finds only after others were answered is judged in its turn, by when it was.
export const isSettled = (shownAt, touchedAt = performance.now()) => touchedAt - shownAt >= PAUSE_MS;

// A deliberate second touch: the first asks, one that follows at once counts for none, a later one acts, and the question lapses.
export class SecondTouch {
  isAsked = false;
  #last = 0;
  #timer = 0;

  // draw(): what is asked has changed
  constructor(draw) {
    this.draw = draw;
  }

  touch(act) {
    const isMeant = isSettled(this.#last);
    this.#last = performance.now();
    if (this.isAsked && !isMeant) return undefined;
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
