// A rig whose pump is out of service: a card into pump stops with it first, and goes on in the technician's role alone, for a test
// after repair. Who went on is written in the rig's log.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { isName } from "../bay/agreed.js";
import { Log } from "../bay/log.js";
import { toHeading } from "../shared/focus.js";
import { sentenceOf, showStatus, statusOf } from "../shared/rig_status.js";
import { SecondTouch } from "../shared/second_touch.js";
import { home } from "../shared/site.js";

// Resolves once a technician goes on, by a name typed here and in two touches.
export function passed({ rig, words, place }) {
  return new Promise((goOn) => {
    let name = "";
    const second = new SecondTouch(() => draw());
    const type = ({ target }) => {
      name = target.value;
      second.lapse();
      draw();
    };
    const on = async () => {
      const log = new Log(rig, []);
      await log.add("passed", { card: location.pathname.split("/").filter(Boolean).at(-1) }, { by: name.trim() });
      render(html``, place);
      delete document.body.dataset.gate;
      showStatus();
      goOn(true);
    };
    const draw = () => render(html`
      <section class="alarm out-first" role="alert"><h2>${sentenceOf(statusOf(rig.id), words.rig_status, true)}</h2><p>${words.out_first.only}</p></section>
      <label class="field"><span>${words.out_first.name}</span><input id="technician" autocomplete="off" maxlength="60" .value=${name} @input=${type}></label>
      <p><a class="key key-wide" href=${new URL("checks/", home).href}>${words.out_first.bay}</a></p>
      <div class="dock"><a class="key key-act" href=${home.href}>${words.out_first.stop}</a>
        <button type="button" class="key key-trouble" ?disabled=${!isName(name)} @click=${() => second.touch(on)}>${isName(name) ? words.out_first[second.isAsked ? "sure" : "go_on"] : words.out_first.waits}</button></div>`, place);
    document.body.dataset.gate = "";
    showStatus();
    draw();
    toHeading(place);
  });
}
