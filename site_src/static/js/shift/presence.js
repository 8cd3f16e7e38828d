// Whether the card was out of sight: behind another app or page, in the browser's memory, or with a phone that slept.
// calc.shift.away says which clocks mean that; the page only reads them.
import { calc } from "../shared/engine.js";

const BEAT_MS = 1000;
const now = () => ({ wall: Date.now() / 1000, steady: performance.now() / 1000 });

export class Presence {
  #last = now();
  #wasAway = false;

  // look(): time to ask `left_s`. left(): going out of sight.
  constructor({ look, left }) {
    const leave = () => {
      if (!this.#wasAway) this.#last = now();
      this.#wasAway = true;
      left();
    };
    setInterval(look, BEAT_MS);
    document.addEventListener("visibilitychange", () => (document.hidden ? leave() : look()));
    addEventListener("pagehide", leave);
    addEventListener("pageshow", ({ persisted }) => {
      this.#wasAway ||= persisted;
      look();
    });
  }

  // When the card was last in sight, seconds of the wall clock, where it was away until now; else null.
  async left_s() {
    const [at, { wall, steady }, wasAway] = [now(), this.#last, this.#wasAway];
    this.#last = at;
    this.#wasAway = false;
    return wasAway || await calc.ask("away.slept", { wall_s: at.wall - wall, steady_s: at.steady - steady }) ? wall : null;
  }
}
