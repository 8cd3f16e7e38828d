// A step that is longer than the screen gives way by degrees, see step.css: letters a little smaller, the reason below the keys,
// the picture away. What is to be done and seen and the red door stay. Longer still, its warning is read before its keys.
const TIGHTEST = 4;

export function fit(step) {
  if (!step) return;
  const above = step.previousElementSibling?.getBoundingClientRect().bottom ?? step.getBoundingClientRect().top;
  const from = step.parentElement.getBoundingClientRect().top;
  step.style.setProperty("--above", `${Math.max(above - from, 0)}px`);
  const isOver = () => step.getBoundingClientRect().height > parseFloat(getComputedStyle(step).minHeight) + 0.5;
  let tight = 0;
  step.removeAttribute("data-over");
  do step.dataset.tight = String(tight);
  while (isOver() && ++tight <= TIGHTEST);
  step.toggleAttribute("data-over", tight > TIGHTEST);
}
