// The page: the plate and the picture, the tray, what lies one tap away, and the dock.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { beside } from "../shared/notice.js";
import { fill } from "../shared/site.js";
import { rigNamed } from "../rig/named.js";
import { boundsView } from "./bounds.js";
import { dockView, readyView } from "./dock.js";
import { fallView } from "./fall.js";
import { figuresView } from "./figures.js";
import { paperView } from "./paper.js";
import { pictureView } from "./picture.js";
import { plateView } from "./plate.js";
import { pumpView } from "./pump.js";
import { savedView } from "./saved.js";
import { TRAY, WHOLE } from "./stages.js";
import { NOW } from "./tabs.js";
import { trayView } from "./tray.js";

export function pageView(page) {
  const { notice, faults, rig, words, printed, stage } = page;
  return html`
    <div class="pane" data-pane="line">
      ${beside(notice, "top", words.pressure)}
      ${paperView({ rig, words, printed })}
      ${plateView(page)}
      ${pictureView(page)}
      ${faults?.length ? rigNamed(rig, faults, words) : nothing}
    </div>
    <div class="pane" data-pane="tray">
      ${stage < TRAY ? nothing : trayView(page)}
    </div>
    <div class="pane" data-pane="work">${stage < WHOLE ? nothing : foldsView(page)}</div>
    ${stage < TRAY ? nothing : dockView(page)}`;
}

// Where the friction figures of the hose in sight come from: the rig's own are named, each with whose they are.
function figuresFrom({ lines, shelf, sizeAlone, words }) {
  const own = lines.flatMap((line) => {
    const { origin } = shelf.hoses[line.hose];
    return origin && origin !== "handbook" ? fill(words.pressure.own_figure, { hose: sizeAlone({ ...line, runs: "1" }), origin: words.pressure[`origin_${origin}`] }) : [];
  });
  return own.length ? fill(words.pressure.own_figures, { hoses: [...new Set(own)].join(" · ") }) : words.pressure.nominal;
}

// What lies one tap away.
const foldsView = (page) => {
  const { layout, answer, refusal, notice, faults, tab, rig, words, act, saved } = page;
  return html`
      <div class="folds">
        ${tab === NOW ? html`<p class="plate-note">${termed(words.now.held)}</p>` : nothing}
        ${faults?.length ? nothing : rigNamed(rig, faults, words)}
        ${readyView(page)}
        ${(answer || !refusal) && tab !== NOW ? html`${pumpView(page)}${boundsView(page)}${fallView(page)}${figuresView(page)}` : nothing}
        <div class="rows">
          <button type="button" class="key key-wide" @click=${act.share}>${words.pressure.share}</button>
          ${beside(notice, "share", words.pressure)}
          <button type="button" class="key key-wide" @click=${() => window.print()}>${words.pressure.print}</button>
        </div>
        ${savedView({ saved, layout, words })}
        <div class="rows">
          <button type="button" class="key key-wide" @click=${act.afresh}>${words.pressure.afresh}</button>
          ${beside(notice, "afresh", words.pressure)}
        </div>
        <p class="smallprint">${figuresFrom(page)} ${words.pressure.service}</p>
      </div>`;
};
