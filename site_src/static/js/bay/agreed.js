// What calc.bay.records has too, for what a page says as it is typed: tests/agreed.json holds both to it.

// Whether an answer is good by what was read and timed.
export const isWhole = ({ answer, reading, clock }) => answer === "good" && reading !== "not_read" && clock !== "not_run";

// Somebody's name or initials: two different letters at least; what is beyond ASCII is one, since calc's interpreter knows no letters there.
export const isName = (text) => new Set(text.toLowerCase().match(/[a-z\u0080-\u{10ffff}]/gu)).size > 1;
