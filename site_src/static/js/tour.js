// The tour of a first visit: three parts in the page, gone for good once skipped, ended, or passed by on the way to a page.
import { choose, chosen } from "./choices.js";

const tour = document.getElementById("tour");
const parts = [...tour.querySelectorAll(".tour-part")];
const skip = tour.querySelector("[data-tour=skip]");
const next = tour.querySelector("[data-tour=next]");
const isAskedFor = location.hash === "#tour";
let here = 0;

function showPart() {
  for (const [place, part] of parts.entries()) part.hidden = place !== here;
  const isLast = here === parts.length - 1;
  skip.hidden = isLast;
  if (isLast) next.textContent = next.dataset.last;
}

function end() {
  tour.hidden = true;
  choose("tour", "seen");
  if (isAskedFor) history.replaceState(history.state, "", location.pathname); // a reload does not ask again
}

function onward() {
  if (here === parts.length - 1) return leave();
  here += 1;
  showPart();
  parts[here].querySelector("h2").focus({ preventScroll: true });
}

function leave() {
  end();
  document.getElementById("page").focus({ preventScroll: true });
}

export function offerTour() {
  if (!isAskedFor && chosen("tour", "") === "seen") return;
  tour.dataset.shown = "";
  skip.parentElement.hidden = false;
  skip.addEventListener("click", leave);
  next.addEventListener("click", onward);
  document.addEventListener("click", ({ target }) => {
    if (target.closest("a")) end();
  });
  showPart();
}
