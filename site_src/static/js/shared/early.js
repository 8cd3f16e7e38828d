// What is chosen on this phone, for what runs before any module and outside of one: the same as scoped() of site.js and chosen() of choices.js.
const path = new URL(/** @type {HTMLScriptElement} */ (document.currentScript).src).pathname.replace(/static\/.*$/, ""); // of the site

export const scoped = (name) => (path === "/" ? name : `${path} ${name}`);

export function chosen(name) {
  try {
    return localStorage.getItem(scoped(name)) ?? (name === "carried" ? null : localStorage.getItem(name));
  } catch {
    return null; // no storage: the phone's own choice stands
  }
}

// Call as soon as a part of the page is read whole, so before the first paint.
export function onceRead(id, paint) {
  const watch = new MutationObserver(() => {
    if (!document.querySelector(`#${id} + *`)) return;
    watch.disconnect();
    paint();
  });
  watch.observe(document.documentElement, { childList: true, subtree: true });
}
