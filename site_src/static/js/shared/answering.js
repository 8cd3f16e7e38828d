// A page's answer, always the one to the entries on the screen. `question()` puts the page's one question, from its state as
// it is, and promises the answer; `draw(answer)` draws the page, with dashes for null: no answer yet.
export function answering(question, draw) {
  let answer = null;
  let newest = 0;
  const redraw = () => draw(answer); // what calc has no part in: a fold, a notice
  return {
    redraw,
    // After each change of what the question is made of. Draws once where the answer comes before the screen is next painted,
    // else first with dashes; an answer that comes after a newer question was put is dropped.
    async change() {
      const mine = ++newest;
      answer = null;
      requestAnimationFrame(() => mine === newest && answer === null && redraw());
      const arrived = await question();
      if (mine !== newest) return;
      answer = arrived;
      redraw();
    },
  };
}
