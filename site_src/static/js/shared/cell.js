// What goes into a spreadsheet.
const FORMULA = /(^|[;\t\r\n])(\s*)(?=[=+\-@＝＋－＠\t\r])/g; // at the start, and wherever some spreadsheet begins a cell of its own

// A cell of a spreadsheet: quoted, and never one that it would run as a formula.
export function cell(value) {
  const text = String(value ?? "");
  const inert = /^-?\d+([.,]\d+)?$/.test(text) ? text : text.replace(FORMULA, "$1'$2");
  return /[",;\r\n]/.test(inert) || inert !== text ? `"${inert.replaceAll('"', '""')}"` : inert;
}
