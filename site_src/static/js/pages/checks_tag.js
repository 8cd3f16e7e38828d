// The tag: what the rig may not do, large enough to be read from the cab door, held up or printed.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { whatOf } from "../shared/rig_status.js";
import { colon, fill } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";
import { opened } from "../bay/opened.js";
import { numberOf } from "../bay/paper.js";
import { toBay } from "../bay/sentences.js";

const MOST = 4; // defects that a tag has room for
const LONG = 200; // letters of them, from which on they are set smaller on paper
const place = document.getElementById("bay");
const page = await opened(place);
if (page) await start();

async function start() {
  const { words, log, rig } = page;
  const { state, defects } = await log.standing();
  const own = defects.filter((defect) => defect.state === state);
  const [worst] = own;
  const shown = own.slice(0, MOST);
  const isLong = shown.map((defect) => whatOf(defect) + defect.limits).join("").length > LONG;
  if (!words.tag[state]) return render(html`<p>${words.tag.none}</p><div class="dock">${toBay(words)}</div>`, place);
  render(html`
    <section class="tag" data-state=${state} ?data-long=${isLong}>
      <p class="tag-rig">${rig.name}</p>
      <h2 class="tag-state">${words.tag[state]}</h2>
      <p class="tag-never">${words.never[state]}</p>
      ${shown.map((defect) => html`<p class="tag-what">${whatOf(defect)} <small>${numberOf(defect)}</small>${defect.limits ? html`<br><b>${defect.limits}</b>` : nothing}</p>`)}
      ${own.length > MOST ? html`<p class="tag-what">${fill(words.rig_status.more, { count: own.length - MOST })}</p>` : nothing}
      <p class="tag-by">${fill(words.tag.placed, { by: worst.by || "–", time: dayAndTime(worst.at_ms) })}<br>
        ${words.tag.officer}${colon} ${worst.decided_by ?? words.tag.undecided}<br>${words.tag.remove}</p>
    </section>
    <div class="dock bay-dock"><button type="button" class="key" @click=${() => window.print()}>${words.bay.print}</button>
      <button type="button" class="key key-act" @click=${() => place.querySelector(".tag").requestFullscreen?.()}>${words.tag.hold_up}</button></div>`, place);
}
