// A clock for tests that no one can set. Within a page it runs on the monotonic clock; from page to page on the phone's own,
// less every jump that the two clocks did not share. Where they cannot tell a sleep from a clock that was set, it counts
// nothing and asks. All pages of a phone share one: whoever sees a jump first settles it, the others follow.
import { chosen, jot } from "../shared/choices.js";

const KEPT = "steady";
const JUMP_MS = 2000; // less is the coarseness of timers
const TRUSTED_GAP_MS = 5 * 60_000; // a page that was away no longer than this is taken at the phone's word
const WRITE_MS = 1000;
const MOST_EVENTS = 12;
const ROOM = 3000; // the note has one length from the first, so that a store that fills up later can still take it

// Of two marks the one made later; a clock that was set back makes a new turn, so turns go first.
const later = (one, other) =>
  !one || !other ? one ?? other : (one.turn - other.turn || one.wall - other.wall) >= 0 ? one : other;

export class Steady {
  // `mark` is what a test carries of this clock, in case the note is gone or is older.
  constructor(mark = null) {
    this.wasHidden = document.visibilityState !== "visible";
    this.written = -Infinity;
    const wall = Date.now();
    const kept = this.#read();
    const left = later(kept, mark);
    this.events = kept?.events ?? []; // { turn, kind: "moved" | "back" | "away", s, counted_s, wall }, of this phone's last jumps
    this.turn = left?.turn ?? 0;
    this.base = wall + (left?.offset ?? 0);
    this.mono = performance.now();
    this.drift = wall - this.mono;
    if (left) this.#leap(wall - left.wall, left.wall + left.offset);
    document.addEventListener("visibilitychange", () => {
      this.tick();
      this.wasHidden ||= document.visibilityState !== "visible";
    });
    addEventListener("pagehide", () => this.#write());
    this.#write();
  }

  // A page opened `gap` after the last one was seen, which stood at `from`.
  #leap(gap, from) {
    if (gap < 0) {
      this.base = from;
      if (gap < -JUMP_MS) this.#note("back", gap, 0);
    } else if (gap > TRUSTED_GAP_MS) {
      this.base = from;
      this.#note("away", gap, 0);
    } else if (gap > JUMP_MS) {
      this.#note("away", gap, gap);
    }
  }

  #note(kind, ms, counted) {
    const wall = Date.now();
    this.turn = Math.max(this.turn + 1, wall);
    this.events = [...this.events, { turn: this.turn, kind, s: ms / 1000, counted_s: counted / 1000, wall }].slice(-MOST_EVENTS);
  }

  now() {
    return this.base + performance.now() - this.mono;
  }

  mark() {
    const wall = Date.now();
    return { wall, offset: this.now() - wall, turn: this.turn };
  }

  // The jumps since a turn.
  after(turn) {
    return this.events.filter((event) => event.turn > turn);
  }

  // Look at both clocks, and at what another page made of them; call it a few times a second.
  tick() {
    const kept = this.#read();
    if (kept && kept.turn > this.turn) this.#follow(kept);
    const jump = Date.now() - performance.now() - this.drift;
    if (Math.abs(jump) > JUMP_MS) {
      this.drift += jump;
      // the page slept, or the clock was set while nobody looked
      const counted = jump > 0 && this.wasHidden && jump <= TRUSTED_GAP_MS ? jump : 0;
      this.base += counted;
      this.#note(jump > 0 && this.wasHidden ? "away" : "moved", jump, counted);
      this.written = -Infinity;
    }
    if (document.visibilityState === "visible") this.wasHidden = false;
    if (performance.now() - this.written > WRITE_MS) this.#write();
  }

  #follow({ offset, turn, events }) {
    this.mono = performance.now();
    this.base = Date.now() + offset;
    this.drift = Date.now() - this.mono;
    this.turn = turn;
    this.events = events;
  }

  #read() {
    try {
      return JSON.parse(chosen(KEPT, "null"));
    } catch {
      return null;
    }
  }

  #write() {
    this.written = performance.now();
    jot(KEPT, JSON.stringify({ ...this.mark(), events: this.events }).padEnd(ROOM));
  }
}
