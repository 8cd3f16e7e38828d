// What a person can read on the Pressure page: words beside numbers, what is drawn, and the biggest number.
// Returned as text only; nothing of the page's own state is looked at.
async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
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
  // Where a row's hose begins on the screen: the farther right, the more joints lie before it.
  const startOf = (row) => Math.round(row.querySelector(".map-hose").getBoundingClientRect().left);

  const settings = () => document.querySelector("[data-settings], .map ~ section[aria-label]");
  const keys = () => [...document.querySelectorAll(".map-key")];
  const selected = keys().findIndex((key) => key.getAttribute("aria-pressed") === "true");
  const lines = [];
  for (let place = 0; place < keys().length; place += 1) {
    keys()[place].click();
    await frame();
    for (const part of settings().querySelectorAll("details:not([open])")) part.open = true;
    for (let waited = 0; waited < 40 && [...settings().querySelectorAll("details")].some((part) => part.children.length < 2); waited += 1) await frame();
    const row = keys()[place].closest(".map-row");
    lines.push({ name: text(row.querySelector(".map-told b")), start: startOf(row), drawn: row.querySelectorAll(".map-hose").length, groups: groups(settings()), fields: fields(settings()) });
  }
  keys()[selected].click();
  await frame();
  const figure = document.querySelector("output.answer-figure");
  return {
    lines,
    selected,
    number: figure.matches("[data-stale]") ? null : text(figure),
    instead: text(figure),
    label: text(document.getElementById("answer-label")),
    notes: [...document.querySelectorAll(".notice, .refusal")].map(text),
    everywhere: groups(document.getElementById("pressure")),
  };
}
