// What runs on this phone whatever page is open: a test's clock, a card, a diagnosis. The page it runs on says so here, and
// every other shows it in its strip. It is written where the next page reads it at once.
import { scoped } from "./site.js";

const NAME = scoped("running");

// { kind: { title, said, lang, address, began_at, due_at? } }, times in ms; `address` under the site's root. `title` is of the
// language `lang`; in another it is what `said` leads to: the page whose data has it, and its place there.
export function running() {
  try {
    const found = JSON.parse(localStorage.getItem(NAME));
    return found && typeof found === "object" ? found : {};
  } catch {
    return {}; // no storage, or nothing of ours
  }
}

// Say what runs of a kind, or with null that nothing of it does any more.
export function runs(kind, what) {
  const { [kind]: before, ...others } = running();
  const now = what ? { ...what, lang: document.documentElement.lang } : undefined;
  if (JSON.stringify(before) === JSON.stringify(now)) return;
  try {
    localStorage.setItem(NAME, JSON.stringify(now ? { ...others, [kind]: now } : others));
  } catch {
    // no storage: the strip cannot say it, the page itself does
  }
}
