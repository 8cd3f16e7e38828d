// The tour of a first visit: three parts in the page, gone for good once skipped, ended, or passed by on the way to a page.
import { choose } from "../shared/choices.js";

const tour = document.getElementById("tour");
const parts = [...tour.querySelectorAll(".tour-part")];
const skip = tour.querySelector("[data-tour=skip]");
const next = tour.querySelector("[data-tour=next]");
const isAskedFor = location.hash === "#tour";
let here = 0;

function end() {
  tour.hidden = true;
  choose("tour", "seen");
  if (isAskedFor) history.replaceState(history.state, "", location.pathname); // a reload does not ask again
}

function onward() {
  if (here === parts.length - 1) return leave();
  here += 1;
  for (const [place, part] of parts.entries()) part.toggleAttribute("data-here", place === here);
  parts[here].querySelector("h2").focus({ preventScroll: true });
  if (here === parts.length - 1) {
    skip.hidden = true;
    next.textContent = next.dataset.last;
  }
}

function leave() {
  end();
  document.getElementById("page").focus({ preventScroll: true });
}

export function offerTour() {
  if (!document.documentElement.hasAttribute("data-tour")) return;
  skip.addEventListener("click", leave);
  next.addEventListener("click", onward);
  document.addEventListener("click", ({ target }) => {
    if (/** @type {Element} */ (target).closest("a")) end();
  });
}
