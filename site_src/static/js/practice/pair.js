// Two phones and one fault: its code on this phone, whichever of the two it is. No fault is said here before the end.
import { handOn } from "../shared/address.js";
import { calc, Refusal } from "../shared/engine.js";
import { root } from "../shared/site.js";

const [HIDDEN, WENT] = ["#hid=", "#went="];
const SALTS = 65_536;

const linkOf = (mark, code) => new URL(`practice/${mark}${code}`, root).href;
const salt = () => crypto.getRandomValues(new Uint16Array(1))[0] % SALTS;

export class Pair {
  hidden = null; // a code that this phone made and its link, with what was drawn by lot or not
  task = null; // of a code that was opened here
  code = null;
  debrief = null;
  back = null; // the link that shows the other phone how it went
  showsBack = false;
  refused = null;
  notice = null;

  constructor({ data, units, redraw }) {
    this.models = data.models;
    this.units = units;
    this.words = data.words.debrief;
    this.redraw = redraw;
  }

  async hide(task, fault, isDrawn) {
    const code = await calc.ask("handed.plant", { task, fault, salt: salt() });
    this.hidden = { code, link: linkOf(HIDDEN, code), isDrawn };
    this.redraw();
  }

  // Take what the address brings. True where it was one of these codes, sound or not.
  async take() {
    const mark = [HIDDEN, WENT].find((each) => location.hash.startsWith(each));
    if (!mark) return false;
    const code = location.hash.slice(mark.length);
    this.#forget();
    try {
      const { kind, task } = await calc.ask("debrief.kind", { code });
      if (kind === "return") await this.#judge(code);
      else Object.assign(this, { task, code });
    } catch (fault) {
      if (!(fault instanceof Refusal)) throw fault;
      this.leave();
      this.refused = this.words[`refused_${fault.code === "newer" ? "newer" : "broken"}`];
    }
    return true;
  }

  // A run of this phone is over: the same page for both, where another phone hid the fault.
  async end(run, named, proof) {
    const code = await calc.ask("handed.sent_back", { run, named, proof, salt: salt() });
    this.back = this.code && linkOf(WENT, code);
    history.replaceState(null, "", WENT + code); // a reload shows it again
    await this.#judge(code);
  }

  async #judge(code) {
    this.debrief = await calc.ask("debrief.debrief", { code }, { models: this.models, units: this.units });
  }

  send = async (link) => {
    const became = await handOn({ url: link });
    if (became !== "sent") this.notice = { copied: this.words.copied, unsent: this.words.uncopied }[became] ?? null;
    this.redraw();
  };

  leave() {
    this.#forget();
    if (location.hash) history.replaceState(null, "", location.pathname + location.search);
  }

  #forget() {
    Object.assign(this, { hidden: null, task: null, code: null, debrief: null, back: null, showsBack: false, refused: null, notice: null });
  }
}
