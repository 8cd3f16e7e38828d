// What a person can read on the Pressure page: words beside numbers, what is drawn, and the biggest number.
// Returned as text only; nothing of the page's own state is looked at.
async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  // What a person reads, who looks a moment after the last touch: no dashes stand any more.
  const settled = async () => {
    await new Promise((done) => setTimeout(done, 80));
    for (let turn = 0; turn < 500 && document.querySelector("output.answer-figure b[aria-hidden]"); turn += 1) await frame();
  };
  // Touched, and drawn.
  const touched = async (key) => {
    key().click();
    for (let turn = 0; turn < 500 && key().getAttribute("aria-pressed") !== "true"; turn += 1) await frame();
    await frame();
  };
  const text = (element) => element?.textContent.replace(/\s+/g, " ").trim() ?? "";
  const chosen = (group) => {
    const chip = [...group.querySelectorAll("label.chip")].find((label) => label.querySelector("input").checked);
    const list = group.querySelector("select");
    return chip ? text(chip) : list?.value ? text(list.selectedOptions[0]) : "";
  };
  const groups = (within) => Object.fromEntries([...within.querySelectorAll("fieldset.chips")].map((group) => [text(group.querySelector("legend")), chosen(group)]));
  const fields = (within) => Object.fromEntries([...within.querySelectorAll("input[inputmode=decimal]")].map((input) => [
    text(within.querySelector(`label[for="${input.id}"]`)),
    { text: input.value, unit: text(document.getElementById(`${input.id}-unit`)), refused: text(document.getElementById(`${input.id}-refused`)) },
  ]));
  const settings = () => document.querySelector("[data-settings]");
  const tabs = () => [...settings().querySelectorAll(".tab")];
  const keys = () => [...document.querySelectorAll("button.lay-line")];

  // The ends of each hose as it is drawn, in the middle of those side by side: a line begins where the one that feeds it ends.
  const drawnOf = (id) => {
    const { left, top } = document.querySelector("[data-pane=line] .lay-drawn").getBoundingClientRect();
    const paths = [...document.querySelectorAll(`[data-pane=line] .lay-hose[data-line="${id}"] .line-pipe`)];
    const ends = paths.map((path) => {
      const matrix = path.getScreenCTM();
      return [0, path.getTotalLength()].map((length) => path.getPointAtLength(length).matrixTransform(matrix)).map(({ x, y }) => ({ x: x - left, y: y - top }));
    });
    const middle = (end) => ["x", "y"].map((axis) => ends.reduce((sum, each) => sum + each[end][axis], 0) / ends.length);
    return { count: paths.length, from: middle(0), to: middle(1) };
  };

  await settled();
  const isTurned = settings().querySelector(".tabs") === null; // what flows now: turned back to read what is entered
  const turn = () => document.querySelector(".dock .key-act").click();
  if (isTurned) {
    turn();
    await settled();
  }
  const selected = keys().findIndex((key) => key.getAttribute("aria-pressed") === "true");
  const opened = tabs().findIndex((tab) => tab.getAttribute("aria-pressed") === "true");
  const lines = [];
  for (let place = 0; place < keys().length; place += 1) {
    await touched(() => keys()[place]);
    const title = text(keys()[place].querySelector(".lay-name"));
    const line = { title, name: title.split(",")[0], isChosen: place === selected, drawn: drawnOf(keys()[place].dataset.line), groups: {}, fields: {} };
    for (let tab = 0; tab < tabs().length; tab += 1) {
      await touched(() => tabs()[tab]);
      Object.assign(line.groups, groups(settings()));
      Object.assign(line.fields, fields(settings()));
    }
    lines.push(line);
  }
  await touched(() => keys()[selected]);
  await touched(() => tabs()[Math.min(opened, tabs().length - 1)]);
  const figure = document.querySelector("output.answer-figure");
  return {
    lines,
    selected,
    number: figure.matches("[data-stale]") ? null : text(figure),
    instead: text(figure),
    label: text(document.getElementById("answer-label")),
    notes: [...document.querySelectorAll(".notice, .refusal")].map(text),
    flow: text(document.querySelector(".plate-head")?.lastElementChild),
  };
}
