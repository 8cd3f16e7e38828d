// A term of the trade that is touched where it stands (site_src/content/touched.py marks it): its two sentences on a sheet, and the way to its place.
export function startTerms() {
  const sheet = document.getElementById("term");
  if (!(sheet instanceof HTMLDialogElement) || !sheet.showModal) return; // an old phone follows the link
  const place = sheet.querySelector("a");
  document.addEventListener("click", (event) => {
    const term = event.target instanceof Element ? event.target.closest("a.term") : null;
    if (!(term instanceof HTMLAnchorElement)) return;
    event.preventDefault();
    sheet.querySelector("b").textContent = term.dataset.term;
    sheet.querySelector("p").textContent = term.dataset.says;
    place.href = term.href;
    sheet.showModal();
  });
  sheet.querySelector("button").addEventListener("click", () => sheet.close());
  sheet.addEventListener("click", (event) => {
    if (event.target === sheet) sheet.close(); // beside it
  });
}
