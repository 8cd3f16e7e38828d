// Where the keyboard and a screen reader stand while pages are drawn anew under them.
const HEADINGS = "h1, h2, h3";
const CONTROLS = "button, a[href], summary, select, input[type=radio], input[type=checkbox], [tabindex='0']"; // a text field would bring up keys
const page = document.getElementById("page");
let holder = null; // what has the focus

function focus(element) {
  if (element.matches(HEADINGS)) element.tabIndex = -1;
  element.focus();
}

// A new part of a page is read from the page's title, which tells it.
export function toTitle() {
  focus(document.querySelector("h1"));
  scrollTo(0, 0);
}

// A new screen is read from its heading.
export const toHeading = (place) => focus(place.querySelector("h2"));

// Draw, and go to the heading where it is another than before.
export function drawnAnew(place, draw) {
  const heading = () => place.querySelector("h2")?.textContent;
  const before = heading();
  draw();
  if (heading() !== before) toHeading(place);
}

// A browser that cannot be asked (Safari before 17.4, Chromium before 105) gives what is folded no box.
const isShown = (element) => element.checkVisibility?.() ?? element.getClientRects().length > 0;
const canHold = (element) => element.isConnected && !element.matches(":disabled") && isShown(element);

// Where the holder stood: itself, or what lies before it in a part of the page that is still there.
function standing(changes) {
  let lost = holder;
  let before = null;
  while (!lost.isConnected) {
    const removal = changes.find(({ removedNodes }) => [...removedNodes].some((node) => node.contains(lost)));
    if (!removal) return page;
    lost = removal.target;
    before = removal.previousSibling;
  }
  return before?.isConnected ? before : lost;
}

// The heading or control that follows a place, or else the last before it; what was folded away is left by its summary.
function near(place) {
  const walker = document.createTreeWalker(page, NodeFilter.SHOW_ELEMENT, (/** @type {any} */ element) =>
    element.matches(`${HEADINGS}, ${CONTROLS}`) && canHold(element) ? NodeFilter.FILTER_ACCEPT : NodeFilter.FILTER_SKIP);
  walker.currentNode = place;
  const isFolded = place === holder && !isShown(place);
  return (isFolded ? walker.previousNode() : walker.nextNode() ?? walker.previousNode()) ?? page;
}

addEventListener("focusin", ({ target }) => {
  holder = target;
});
addEventListener("focusout", ({ target, relatedTarget }) => {
  if (!relatedTarget) queueMicrotask(() => holder === target && canHold(target) && (holder = null)); // by then it is known if it was taken away
});

// A control that is taken away hands the focus to what comes in its place.
new MutationObserver((changes) => {
  if (!holder || ![document.body, holder].includes(document.activeElement) || canHold(holder)) return;
  focus(near(standing(changes)));
}).observe(page, { childList: true, subtree: true, attributeFilter: ["disabled", "hidden", "open"] });

// What a script focuses, for a reader of the page, is ringed for hands on a keyboard alone: the Tab key is theirs, no touch is.
addEventListener("keydown", ({ key }) => key === "Tab" && document.documentElement.setAttribute("data-keys", ""), true);
addEventListener("pointerdown", () => document.documentElement.removeAttribute("data-keys"), true);

// A held key presses once: only a stepper goes on.
addEventListener("keydown", (event) => {
  const key = /** @type {Element} */ (event.target);
  if (event.repeat && event.key === "Enter" && key.closest("button, a, summary") && !key.closest(".stepper")) event.preventDefault();
});

// A number field that is tapped or takes the focus has its whole entry selected, so that what is typed next stands alone:
// with a glove on, 150 typed into a field that was tapped twice must not become 15030. Holding it still puts the caret.
// Some engines put their own caret after the focus or even after the click, so the selection is made again behind both.
const NUMBERS = "input[inputmode=decimal], input[inputmode=numeric], .cell input";
let touched = null; // the number field that was touched last, until something is typed
let selected = ""; // its entry then: an answer that comes late may put another there, and a caret behind it

function selectAll() {
  if (!touched) return;
  selected = touched.value;
  touched.setSelectionRange(0, selected.length);
}

for (const kind of ["focusin", "click"]) {
  addEventListener(kind, (/** @type {{ target: any, pointerType?: string }} */ { target, pointerType }) => {
    touched = target.matches?.(NUMBERS) ? target : null;
    if (pointerType === "mouse" && touched && touched.selectionStart < touched.selectionEnd) touched = null; // a stretch chosen by drag stays
    selectAll();
    setTimeout(selectAll);
  });
}
addEventListener("beforeinput", () => {
  if (touched?.value !== selected) selectAll();
  touched = null;
});
