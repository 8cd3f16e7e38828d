// The links to the tables lead to those in the units that are chosen.
import { home } from "../shared/site.js";

export function linkTables(system) {
  for (const link of document.querySelectorAll("a[data-table]")) link.href = new URL(`tables/${system}/${link.dataset.table}/index.html`, home).href;
}
