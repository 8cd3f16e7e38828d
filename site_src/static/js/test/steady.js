// A clock for tests that no one can set. Within a page it runs on the monotonic clock; from page to page on the phone's own,
// less every jump that the two clocks did not share. Where they cannot tell a sleep from a clock that was set, it counts
// nothing and asks.
import { choose, chosen } from "../choices.js";

const KEPT = "steady";
const JUMP_MS = 2000; // less is the coarseness of timers
const TRUSTED_GAP_MS = 5 * 60_000; // a page that was away no longer than this is taken at the phone's word
const WRITE_MS = 1000;

export class Steady {
  // `told(event)` is called for every jump: { kind: "moved" | "away", s, counted }.
  constructor(told) {
    this.told = told;
    this.wasHidden = document.visibilityState !== "visible";
    this.written = -Infinity;
    const wall = Date.now();
    const kept = JSON.parse(chosen(KEPT, "null"));
    this.base = wall + (kept?.offset ?? 0);
    this.mono = performance.now();
    this.drift = wall - this.mono;
    if (kept) this.#leap(wall - kept.wall, kept.wall + kept.offset);
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
      if (gap < -JUMP_MS) this.#tell("moved", gap, 0);
    } else if (gap > TRUSTED_GAP_MS) {
      this.base = from;
      this.#tell("away", gap, 0);
    } else if (gap > JUMP_MS) {
      this.#tell("away", gap, gap);
    }
  }

  #tell(kind, ms, counted) {
    this.pending ??= [];
    this.pending.push({ kind, s: ms / 1000, counted_s: counted / 1000 });
  }

  now() {
    return this.base + performance.now() - this.mono;
  }

  // Look at both clocks; call it a few times a second.
  tick() {
    const jump = Date.now() - performance.now() - this.drift;
    if (Math.abs(jump) > JUMP_MS) {
      this.drift += jump;
      if (jump > 0 && this.wasHidden) {
        const counted = jump > TRUSTED_GAP_MS ? 0 : jump; // the page slept, or the clock was set while nobody looked
        this.base += counted;
        this.#tell("away", jump, counted);
      } else {
        this.#tell("moved", jump, 0);
      }
    }
    if (document.visibilityState === "visible") this.wasHidden = false;
    if (performance.now() - this.written > WRITE_MS || Math.abs(jump) > JUMP_MS) this.#write();
    for (const event of this.pending?.splice(0) ?? []) this.told(event);
  }

  // The person says that this time did pass.
  add(seconds) {
    this.base += seconds * 1000;
    this.#write();
  }

  #write() {
    const wall = Date.now();
    this.written = performance.now();
    choose(KEPT, JSON.stringify({ wall, offset: this.now() - wall }));
  }
}
