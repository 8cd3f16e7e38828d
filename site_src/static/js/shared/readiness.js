// Whether this phone has every file of the site, and works out a known answer from them; and if not, how far it is and why.
import { watchHoldings } from "./offline.js";
import { isProved } from "./proof.js";
import { decimal, fill } from "./site.js";

const megabytes = (bytes) => (bytes / 1e6).toFixed(1).replace(".", decimal);

// `words` are the start page's; its sentences ready, partly, unready and proving go by their own name, or with "short_" before it.
// `tell(state, sentence)` hears each change: "yes", "partly" or "no".
export function watchReadiness(words, tell, brief = "") {
  let latest = null;
  const say = (state, name, held) => tell(state, fill(words[`${brief}${name}`] ?? words[name], { ...held, have_mb: megabytes(held.bytes ?? 0), want_mb: megabytes(held.size ?? 0) }));
  watchHoldings(async (held) => {
    latest = held;
    if (held.unable) return say("no", held.unable, held);
    if (held.isWhole && held.version) {
      const timer = setTimeout(() => held === latest && say("partly", "proving", held), 300); // most are shown before
      const isRight = await isProved(held.version);
      clearTimeout(timer);
      if (held === latest) say(isRight ? "yes" : "no", isRight ? "ready" : "wrong", held);
      return;
    }
    const cause = held.cause ? ` ${fill(words.cause[held.cause], held)}` : "";
    if (!held.want) return tell("no", `${words[`${brief}unready`]}${cause}`);
    tell("partly", `${fill(words[`${brief}partly`], { ...held, have_mb: megabytes(held.bytes), want_mb: megabytes(held.size) })}${cause}`);
  });
}
