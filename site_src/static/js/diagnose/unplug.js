// What was capped, plugged, blanked or shut in a leak hunt, until each is open again.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

// tick: where the hunt is over, what opens a row; calc.diagnosis.leak says which may be opened next.
export const unplugView = ({ state, left, plugs, words, tick = null }) => (state.plugged.length ? html`
  <h2>${words.leak.plugged}</h2>
  ${left.open.length ? html`<p role="status"><b>${fill(words.leak.unfinished, { count: left.open.length })}</b> ${tick ? words.leak.first : nothing}</p>` : nothing}
  <ul class="plugs">${plugs.filter(({ id }) => state.plugged.includes(id)).map(({ id }) => html`
    <li>
      <span><b>${words.plug[id]}</b>${left.open.includes(id) ? words.leak.tagged : html`✓ ${words.leak.opened}`}</span>
      ${tick && left.open.includes(id) ? html`
        <button type="button" class="key" ?disabled=${!left.next.includes(id)} aria-label="${words.plug[id]}. ${words.leak.open_now}" @click=${() => tick(id)}>${words.leak.open_now}</button>` : nothing}
    </li>`)}
  </ul>` : nothing);
