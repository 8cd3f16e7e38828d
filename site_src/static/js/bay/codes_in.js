// Square codes of another phone's log, each opened as a link, wherever its camera opens it: they wait in local storage until all are there,
// and nothing comes into the log before a touch says so.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chosen, drop, jot } from "../shared/choices.js";
import { fill, scoped } from "../shared/site.js";
import { live } from "../shared/notice.js";
import { Camera, canRead } from "./camera.js";
import { frameOf, joined, MARK } from "./frames.js";

const NAME = "log-codes";

// The set that waits: { set, of, letters: a text or null for each code }, or null.
function waiting() {
  try {
    const { set, of, letters } = JSON.parse(chosen(NAME, "null"));
    return Array.isArray(letters) && letters.length === of ? { set, of, letters } : null;
  } catch {
    return null; // nothing of ours, or nothing
  }
}

export class Arriving {
  isDamaged = false;
  content = null; // of a whole set
  camera = null;
  set = waiting();

  constructor({ redraw }) {
    this.redraw = redraw;
    this.camera = new Camera({ changed: () => this.redraw(), read: (text) => this.#read(text) });
    addEventListener("hashchange", () => this.#open());
    addEventListener("storage", ({ key }) => key === scoped(NAME) && this.#look());
    this.#open();
  }

  async #open() {
    const { hash } = location;
    if (hash.startsWith(MARK)) {
      history.replaceState(null, "", location.pathname + location.search);
      await this.#take(hash);
    }
    await this.#look();
  }

  async #take(fragment) {
    const frame = await frameOf(fragment);
    this.isDamaged = frame === null;
    if (frame) this.#put(frame);
  }

  // A code that the camera sees, on whatever host it was made; done once all are there.
  async #read(text) {
    const at = text.indexOf(MARK);
    if (at < 0) return;
    await this.#take(text.slice(at));
    await this.#look();
    if (this.content) this.camera.stop();
  }

  // One more code; of another set than the one that waits, the first of its own.
  #put({ set, at, of, letters }) {
    const before = waiting();
    const there = before?.set === set && before.of === of ? before.letters : Array(of).fill(null);
    jot(NAME, JSON.stringify({ set, of, letters: there.map((part, place) => (place === at - 1 ? letters : part)) }));
  }

  async #look() {
    this.set = waiting();
    this.content = null;
    if (this.set && !this.missing.length) {
      try {
        const text = await joined(this.set.set, this.set.letters);
        this.content = { text, ...JSON.parse(text) };
      } catch {
        this.drop();
        this.isDamaged = true;
      }
    }
    this.redraw();
  }

  get missing() {
    return this.set.letters.flatMap((part, place) => (part === null ? [place + 1] : []));
  }

  file = (name) => new File([this.content.text], name, { type: "application/json" });

  drop() {
    drop(NAME);
    Object.assign(this, { set: null, content: null, isDamaged: false });
    this.redraw();
  }
}

const factsOf = ({ set, missing }) => ({ of: set.of, here: set.of - missing.length, missing: missing.join(", "), set: String(set.set).toUpperCase() });

// How many are here, where there is no rig whose log they could join.
export const arrivedView = (arriving, { codes: words }) => html`
  ${live(arriving.isDamaged ? html`<p class="refusal">${words.damaged}</p>` : nothing)}
  ${live(arriving.set ? html`<p class="notice">${fill(words.no_rig, factsOf(arriving))}</p>` : nothing)}`;

// `take(files)` lets them into the log.
export function arrivingView(arriving, { codes: words }, take) {
  const { set, content, isDamaged, camera } = arriving;
  const facts = set && { ...factsOf(arriving), rig: String(content?.rig_name).slice(0, 60), count: content?.records?.length };
  const takeIn = async () => {
    await take([arriving.file(words.name)]);
    arriving.drop();
  };
  return html`
    ${canRead() ? html`
      <button type="button" class="key key-wide" aria-pressed=${camera.isOn ? "true" : "false"} @click=${() => (camera.isOn ? camera.stop() : camera.start())}>${words.read}</button>
      ${camera.isOn ? html`<video id="camera" class="photo" muted playsinline></video>` : nothing}
      ${live(camera.isRefused ? html`<p class="refusal">${words.no_camera}</p>` : nothing)}` : nothing}
    ${live(isDamaged ? html`<p class="refusal">${words.damaged}</p>` : nothing)}
    ${live(set ? html`<p class="notice">${fill(content ? words.whole : words.part, facts)}</p>` : nothing)}
    ${set ? html`<p class="bay-others"><button type="button" class="key" @click=${() => arriving.drop()}>${words.drop}</button>
      ${content ? html`<button type="button" class="key key-act" @click=${takeIn}>${words.take}</button>` : nothing}</p>` : nothing}`;
}
