// Paints the plate and the picture of the kept layout as they last stood, before any module runs, where they were of the layout that the
// page will open on, the rig, the units, the language and the version of now. pressure/first.js keeps them; pressure.js draws them again.
import { chosen, onceRead, scoped } from "./early.js";
import { built } from "./snapshot.js";

{
  const { version } = document.currentScript.dataset;
  const { lang, dataset } = document.documentElement;
  const read = (store, name) => {
    try {
      return JSON.parse(store().getItem(name)) ?? null;
    } catch {
      return null; // no storage, or not ours: dashes stand
    }
  };
  onceRead("pressure", paint);

  function paint() {
    const first = lastFirst();
    if (!first) return;
    document.getElementById("pressure").replaceChildren(built(first.shown));
    document.getElementById("answer-label").textContent = first.label;
    window.painted = first.pressure;
    performance.mark("first-answer");
  }

  function lastFirst() {
    if (location.hash) return null; // a layout, or a bed, that is followed
    const draft = read(() => sessionStorage, "draft:pressure") ?? read(() => localStorage, scoped("worked:pressure"))?.draft;
    if (draft === undefined) return null; // not known before the database is read
    const of = JSON.stringify([draft, chosen("rig") || null, chosen("profiles") ?? "", chosen("units") ?? dataset.system, version, lang, innerWidth]);
    const first = read(() => localStorage, scoped("answer:pressure"))?.first;
    return first && JSON.stringify(first.of) === of ? first : null;
  }
}
