// The first drawing of the page, a part of it a task, so that touches and frames come in between: what is on the screen first.
export const [LINE, TRAY, WHOLE] = [1, 2, 3];

// `draw(parts, stage)` draws what is handed over as far as that stage, `settle()` measures what stands; `isOf(parts)` says whether they are
// still of what is on the page: where not, another drawing is on its way.
export function inStages({ draw, settle, isOf }) {
  let stage = LINE;
  let latest = null;
  let isGoingOn = false;

  function goOn() {
    isGoingOn = false;
    stage += 1;
    if (isOf(latest)) paint(latest);
    else isGoingOn = stage < WHOLE && Boolean(setTimeout(goOn));
    if (stage === WHOLE) setTimeout(settle);
  }

  function paint(parts) {
    latest = parts;
    draw(parts, stage);
    if (stage < WHOLE && !isGoingOn) isGoingOn = Boolean(setTimeout(goOn));
  }

  // Once the whole page stands, a drawing is one and measured at once.
  return (parts) => {
    const isWhole = stage === WHOLE;
    paint(parts);
    if (isWhole) settle();
  };
}
