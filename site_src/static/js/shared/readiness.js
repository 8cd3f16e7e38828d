// Whether this phone has every file of the site, counted until it has.
import { holdings } from "./offline.js";
import { fill } from "./site.js";

const PATIENCE_MS = 120000;
const AGAIN_MS = 1000;

// `said` has a sentence for each state: ready partly unready unable; `tell(state, sentence)` hears each count.
export async function watchReadiness(said, tell, since = performance.now()) {
  if (!("serviceWorker" in navigator) || !("caches" in window)) return tell("no", said.unable);
  const held = await holdings();
  if (held && held.have === held.want) return tell("yes", fill(said.ready, held));
  if (held) tell("partly", fill(said.partly, held));
  else tell("no", said.unready);
  if (performance.now() - since < PATIENCE_MS) setTimeout(() => watchReadiness(said, tell, since), AGAIN_MS);
}
