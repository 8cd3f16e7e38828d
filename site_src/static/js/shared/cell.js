// What goes into a spreadsheet.
const WITHIN = /([;\t\r\n])((?:[^\S\t\r\n]|")*)(?=[=+\-@＝＋－＠])/g; // wherever some spreadsheet begins a cell of its own
const START = /^(?=[\s"]*[=+\-@＝＋－＠\t\r])/;

// A cell of a spreadsheet: quoted, and never one that it would run as a formula.
export function cell(value) {
  const text = String(value ?? "");
  const inert = /^-?\d+([.,]\d+)?$/.test(text) ? text : text.replace(WITHIN, "$1'$2").replace(START, "'");
  return /[",;\t\r\n]/.test(inert) || inert !== text ? `"${inert.replaceAll('"', '""')}"` : inert;
}
