// A page's answer, always the one to the entries on the screen. `question()` puts the page's one question, from its state as
// it is, and promises the answer; `draw(answer)` draws the page, with dashes for null: no answer yet.
const PATIENCE_MS = 50; // less is seen as at once, and no finger taps twice in it

// Whether the hand has just changed what stands in a control, before anything was drawn.
let isEntered = false;
const entered = () => {
  isEntered = true;
  requestAnimationFrame(() => (isEntered = false));
};
for (const kind of ["input", "change"]) addEventListener(kind, entered, { capture: true });

export function answering(question, draw) {
  let answer = null;
  let newest = 0;
  const redraw = () => draw(answer); // what calc has no part in: a fold, a notice
  return {
    redraw,
    // After each change of what the question is made of. Draws once where the answer comes soon: before the next paint where an
    // entry already stands in its control, else within PATIENCE_MS, in which the screen stays as it was, entries and all. Where
    // it comes later it draws dashes first, unless there is an answer that `stands`, kept from just this question: as a page begins to run.
    // An answer that comes after a newer question was put is dropped.
    async change(stands = null) {
      const mine = ++newest;
      answer = stands;
      const dashes = () => mine === newest && answer === null && redraw();
      if (isEntered) requestAnimationFrame(dashes);
      else setTimeout(dashes, PATIENCE_MS);
      const arrived = await question();
      if (mine !== newest) return;
      answer = arrived;
      redraw();
    },
  };
}
