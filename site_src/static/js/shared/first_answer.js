// Paints what the beds of the start page were worked out to last, before any module runs, where that was for the rig, the units,
// the language and the version of now. start.js draws it anew, and shows where the live answer is another.
import { chosen, onceRead, scoped } from "./early.js";

{
  const { version } = document.currentScript.dataset;
  const { lang, dataset } = document.documentElement;
  const last = lastAnswer();
  const make = (tag, className, ...inside) => {
    const made = document.createElement(tag);
    if (className) made.className = className;
    made.append(...inside);
    return made;
  };
  const bed = ({ name, detail, pressure, is_over: isOver, address, bed: id }) => {
    const isChanged = pressure !== null && id === changedBed();
    const link = make("a", "bed", make("span", "", name, make("small", "", pressure === null ? "" : detail), ...(isChanged ? [make("small", "bed-changed", last.changed)] : [])),
      pressure === null ? make("b", "bed-none", detail) : make("b", isOver ? "bed-figure bed-over" : "bed-figure", pressure));
    link.href = isChanged ? last.more.address : address;
    return make("li", "", link);
  };
  const more = ({ text, address }) => {
    const arrow = make("span", "", "›");
    arrow.ariaHidden = "true";
    return Object.assign(make("a", "beds-more", text, arrow), { href: address });
  };
  // The bed whose layout on Pressure is another than its own: see pressure/origin.js.
  function changedBed() {
    for (const store of [sessionStorage, localStorage]) {
      const kept = JSON.parse(store.getItem(scoped("answer:origin")));
      if (kept?.basis === JSON.stringify([chosen("rig")])) return kept.changed;
    }
    return null;
  }
  onceRead("beds", paint);

  function paint() {
    if (!last) return;
    const place = document.getElementById("beds");
    place.querySelector(".beds-head span").textContent = last.unit;
    place.replaceChildren(place.querySelector(".beds-head"), make("ul", "", ...last.rows.map(bed)), more(last.more));
    document.getElementById("rig").textContent = last.rig;
    window.painted = last.rows;
    performance.mark("rig-answers");
  }

  function lastAnswer() {
    try {
      const last = JSON.parse(localStorage.getItem(scoped("answer:start")));
      const of = [chosen("rig"), chosen("units") ?? dataset.system, version, lang];
      return last?.rows.length && JSON.stringify(last.of) === JSON.stringify(of) ? last : null;
    } catch {
      return null; // no storage, or not ours: dashes stand
    }
  }
}
