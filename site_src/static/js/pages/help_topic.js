// A topic of help: the question that a link leads to stands open; and the search.
import { startSearch } from "../help/box.js";
import { startTerms } from "../help/touched.js";

function unfold() {
  const question = document.getElementById(location.hash.slice(1));
  if (!(question instanceof HTMLDetailsElement)) return;
  question.open = true;
  question.querySelector("summary").focus({ preventScroll: true });
  question.scrollIntoView();
}

startTerms();
unfold();
addEventListener("hashchange", unfold);
await startSearch();
