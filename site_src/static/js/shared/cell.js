// What goes into a spreadsheet.
// By the mark that parts cells: wherever a spreadsheet of another country begins a cell of its own.
const WITHIN = { ",": /([;\t\r\n])((?:[^\S\t\r\n]|")*)(?=[=+\-@＝＋－＠])/g, ";": /([,\t\r\n])((?:[^\S\t\r\n]|")*)(?=[=+\-@＝＋－＠])/g };
const START = /^(?=[\s"]*[=+\-@＝＋－＠\t\r])/;

// A cell of a spreadsheet: quoted, and never one that it would run as a formula.
export function cell(value, mark = ",") {
  const text = typeof value === "number" && mark === ";" ? String(value).replace(".", ",") : String(value ?? "");
  if (/^-?\d+([.,]\d+)?$/.test(text) && !text.includes(mark)) return text;
  const inert = /^-?\d+([.,]\d+)?$/.test(text) ? text : text.replace(WITHIN[mark], "$1'$2").replace(START, "'");
  return /[",;\t\r\n]/.test(inert) || inert !== text ? `"${inert.replaceAll('"', '""')}"` : inert;
}

// Rows as a file that a spreadsheet of the page's language opens with numbers for numbers: where the decimal mark is a comma, semicolons part cells.
export function table(rows, decimal) {
  const mark = decimal === "," ? ";" : ",";
  return `\ufeff${rows.map((row) => row.map((value) => cell(value, mark)).join(mark)).join("\r\n")}\r\n`;
}
