// Entries as they are kept and sent: in the one spelling that every language reads alike. Of what a page accepts only a single
// comma before three digits hangs on its language (calc.base.entry): with a decimal point it sets thousands apart and goes; with a
// decimal comma it is the decimal mark and becomes a point. What is asked about stays asked about.
import { decimal } from "./site.js";

const EITHER = /^\s*([-\u2212]?[1-9]\d{0,2}),(\d{3})\s*(@\w+)?$/;

// A value, plain data, with each entry in it so written. What is signed stays to the letter.
export function oneReading(value) {
  if (typeof value === "string") return value.replace(EITHER, (_, whole, last, system = "") => `${whole}${decimal === "." ? "" : "."}${last}${system}`);
  if (Array.isArray(value)) return value.map(oneReading);
  if (value === null || typeof value !== "object" || Object.getPrototypeOf(value) !== Object.prototype || value.signed?.length) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, oneReading(each)]));
}
