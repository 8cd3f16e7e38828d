// The clock of an item: five minutes of a vacuum, a minute of drips by taps, a build-up until it is stopped. It goes by a clock that
// nobody can set; while the page is away it goes on, and the time away is counted and said.
const TICK_MS = 250;
const MINUTE_S = 60;

export class Clock {
  row = null;
  whole_s = 0;
  isOver = false;
  began = null;
  taps = 0;
  away_s = 0;
  #timer = 0;
  #left = null;

  // tick(): a new second; done(text): the reading that it came to.
  constructor({ tick, done }) {
    this.tick = tick;
    this.done = done;
    document.addEventListener("visibilitychange", () => {
      if (this.began === null) return;
      if (document.hidden) this.#left = performance.now();
      else if (this.#left !== null) this.away_s += (performance.now() - this.#left) / 1000;
    });
  }

  start(row) {
    this.stop();
    Object.assign(this, { row, began: performance.now(), taps: 0, away_s: 0, whole_s: row.tool === "taps" ? MINUTE_S : row.clock_s });
    this.#timer = window.setInterval(() => this.#look(), TICK_MS);
    this.tick();
  }

  stop() {
    clearInterval(this.#timer);
    this.began = null;
    this.isOver = false;
  }

  get seconds() {
    return this.began === null ? 0 : (performance.now() - this.began) / 1000;
  }

  #look() {
    if (this.whole_s && this.seconds >= this.whole_s) {
      clearInterval(this.#timer);
      this.isOver = true;
      if (this.row.tool === "taps") this.done(String(this.taps));
    }
    this.tick();
  }

  // A drip, or the end of a build-up.
  tap() {
    if (this.row.tool === "taps") {
      if (!this.isOver) this.taps += 1;
      return this.tick();
    }
    const seconds = this.seconds;
    this.stop();
    this.done(String(Math.ceil(seconds)));
  }
}
