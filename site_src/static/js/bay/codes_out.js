// A small log shown as square codes, one after another, for the camera of another phone.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { codeView } from "../shared/code.js";
import { fill } from "../shared/site.js";
import { live } from "../shared/notice.js";
import { inOrder } from "./arrivals.js";
import { contentOf } from "./exchange.js";
import { framesOf, MOST_FRAMES } from "./frames.js";

const byId = (one, other) => (one.id < other.id ? -1 : 1);

export class Codes {
  isOpen = false;
  frames = null;
  at = 0;
  since = "";
  count = 0;
  page = null;
  redraw = null;

  constructor(page, redraw) {
    Object.assign(this, { page, redraw });
  }

  async turn() {
    this.isOpen = !this.isOpen;
    await this.look();
  }

  // The codes of what was written since a day, of everything where none is chosen; photos go in the file.
  async look(since = this.since) {
    const from = since ? new Date(`${since}T00:00`).getTime() : 0;
    const { rig, log } = this.page;
    const records = log.records.filter(({ kind, at_ms: at }) => kind !== "photo" && at >= from).sort(byId);
    Object.assign(this, { since, at: 0, count: records.length });
    const frames = records.length ? await framesOf(contentOf(rig, records.map((record) => JSON.stringify(inOrder(record))))) : [];
    if (this.since !== since) return;
    this.frames = frames;
    this.redraw();
  }

  show(at) {
    this.at = at;
    this.redraw();
  }
}

export function codesView(codes) {
  const { frames, at, page: { words } } = codes;
  if (!codes.isOpen) return nothing;
  const link = frames?.length ? new URL(frames[at], location.href.split("#")[0]).href : null;
  const facts = { at: at + 1, of: frames?.length, set: link && setOf(frames[at]), count: codes.count, most: MOST_FRAMES };
  return html`
    <p>${words.codes.explain}</p>
    <label class="field"><span>${words.codes.since}</span><input id="since" type="date" .value=${codes.since} @input=${({ target }) => codes.look(target.value)}></label>
    ${live(frames === null ? html`<p class="refusal">${fill(words.codes.too_many, facts)}</p>` : link ? html`<p><b>${fill(words.codes.frame, facts)}</b></p>` : html`<p>${words.codes.none}</p>`)}
    ${link ? codeView(link, fill(words.codes.frame, facts)) : nothing}
    ${frames?.length > 1 ? html`<button type="button" class="key key-wide key-act" @click=${() => codes.show((at + 1) % frames.length)}>${words.codes.next}</button>` : nothing}`;
}

const setOf = (fragment) => fragment.slice(fragment.indexOf("=") + 1).split(".")[0].toUpperCase();
