// Whether the card was out of sight: behind another app or page, in the browser's memory, or with a phone that slept.
// calc.shift.away says which clocks mean that; the page only reads them.
const BEAT_MS = 1000;
const now = () => ({ wall: Date.now() / 1000, steady: performance.now() / 1000 });

export class Presence {
  // back(left_s): in sight again, last seen at that time of the wall clock. left(): going out of sight.
  constructor(call, { back, left }) {
    Object.assign(this, { call, back, left, last: now(), wasAway: false });
    setInterval(() => this.look(), BEAT_MS);
    document.addEventListener("visibilitychange", () => (document.hidden ? this.leave() : this.look()));
    addEventListener("pagehide", () => this.leave());
    addEventListener("pageshow", ({ persisted }) => {
      this.wasAway ||= persisted;
      this.look();
    });
  }

  leave() {
    if (!this.wasAway) this.last = now();
    this.wasAway = true;
    this.left();
  }

  // Whether the card was away until now; whoever asks before an answer does not take that answer.
  look() {
    if (document.hidden) return true;
    const at = now();
    const { wall, steady } = this.last;
    const isBack = this.wasAway || this.call("away.slept", { wall_s: at.wall - wall, steady_s: at.steady - steady });
    this.last = at;
    this.wasAway = false;
    if (isBack) this.back(wall);
    return isBack;
  }
}
