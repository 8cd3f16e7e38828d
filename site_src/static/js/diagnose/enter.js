// The way into a diagnosis from another page, with what that page knows. What comes in by it is judged by calc.
import { home, scoped } from "../shared/site.js";

const HANDED = scoped("handed"); // in this tab: what a page of ours handed over last

// The address of the diagnosis. `known` is { sequence, step, facts, missing } of a card, or { signs, shown } of any other page: what was seen, and the orders that it showed.
export function enterLink(known) {
  const link = new URL("diagnose/", home);
  if (known.signs && Object.keys(known.signs).length === 0) return link.href; // nothing is known
  link.hash = `from=${encodeURIComponent(JSON.stringify(known))}`;
  return link.href;
}

// What a shift card knows where a sign did not come: the facts that stand, and the one its step is for. What else the
// step proves comes along with it, and is not known to be missing.
export function fromCard(sequence, state) {
  const step = sequence.steps.find((each) => each.id === state.stopped.step);
  const out = Boolean(state.offer?.is_out); // no look may shift again
  if (state.stopped.order === "grinding") { // what was heard, and not the proof that could not come after it
    const sign = sequence.id === "road" || step.proves?.includes("selector_road") ? "grinds_road" : "grinds";
    return { sequence: sequence.id, step: step.id, facts: state.facts, missing: [], signs: { [sign]: "seen" }, out };
  }
  if (state.stopped.order === "dead_throttle" && out) {
    return { sequence: sequence.id, step: step.id, facts: state.facts, missing: [], signs: { throttle_dead: "seen" }, out };
  }
  const proofs = [step, ...(step.answers ?? [])].flatMap((each) => each.proves ?? []);
  return { sequence: sequence.id, step: step.id, facts: state.facts, missing: proofs.slice(0, 1), out };
}

// As a link of enterLink is followed, the tab remembers that a page of ours made it.
document.addEventListener("click", ({ target }) => {
  const link = /** @type {HTMLAnchorElement | null} */ (/** @type {Element} */ (target).closest("a[href*='#from=']"));
  if (!link) return;
  try {
    sessionStorage.setItem(HANDED, link.hash);
  } catch {
    // no storage: it is taken as a link from elsewhere
  }
}, { capture: true });

// Whether a page of ours handed over what is in this page's address, as somebody touched it; a link from elsewhere has no such mark.
export function isOurs() {
  try {
    const mark = sessionStorage.getItem(HANDED);
    sessionStorage.removeItem(HANDED);
    return mark === location.hash;
  } catch {
    return false;
  }
}

// What was handed over in this page's address; null where nothing was, "unreadable" where it cannot be read.
export function handedOver() {
  const handed = location.hash.match(/^#from=(.+)$/)?.[1];
  if (!handed) return null;
  try {
    const known = JSON.parse(decodeURIComponent(handed));
    return known && typeof known === "object" && (known.missing || known.signs) ? known : "unreadable";
  } catch {
    return "unreadable";
  }
}
