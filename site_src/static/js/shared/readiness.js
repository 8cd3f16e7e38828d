// Whether this phone has every file of the site, and works out a known answer from them; and if not, how far it is and why.
import { watchHoldings } from "./offline.js";
import { isProved } from "./proof.js";
import { decimals, fill } from "./site.js";

export const megabytes = (bytes) => decimals(bytes / 1e6, 1);

// `words` are the start page's; its sentences go by their own name, or where they have to be short with "short_" before it.
// `tell(state, sentence)` hears each change: "yes", "partly" or "no".
export function watchReadiness(words, tell, brief = "") {
  let latest = null;
  const say = (state, name, held, more = "") =>
    tell(state, fill(words[`${brief}${name}`] ?? words[name], { ...held, have_mb: megabytes(held.bytes ?? 0), want_mb: megabytes(held.size ?? 0) }) + more);
  const stopped = (held) => {
    const why = fill(words[`${brief}cause`][held.cause], held);
    if (brief && held.want) return say("partly", "stopped", { ...held, why });
    return say(held.want ? "partly" : "no", held.want ? "partly" : "unready", held, brief ? "" : ` ${why}`);
  };
  watchHoldings(async (held) => {
    latest = held;
    if (held.unable) return say("no", held.unable, held);
    if (held.cause && !held.isWhole) return stopped(held);
    if (!held.want) return say("no", "unready", held);
    if (!held.isWhole || !held.version) return say("partly", "partly", held);
    const timer = setTimeout(() => held === latest && say("partly", "proving", held), 300); // most are shown before
    const isRight = await isProved(held.version);
    clearTimeout(timer);
    if (held === latest) say(isRight ? "yes" : "no", isRight ? "ready" : "wrong", held);
  });
}
