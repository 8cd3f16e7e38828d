// A rig whose pump is out of service: a card into pump stops with it first, and goes on in the technician's role alone, for a test
// after repair. Who went on is written in the rig's log.
import { html, render } from "../../vendor/lit-html/lit-html.js";
import { Log } from "../bay/log.js";
import { chosen, choose } from "../shared/choices.js";
import { toHeading } from "../shared/focus.js";
import { sentenceOf, statusOf } from "../shared/rig_status.js";
import { home } from "../shared/site.js";

export const isOut = (rig) => Boolean(rig && statusOf(rig.id)?.stops_pump);

// Resolves once a technician goes on, by name.
export function passed({ rig, words, place }) {
  return new Promise((goOn) => {
    let name = chosen("bay-name", "");
    const on = async () => {
      choose("bay-name", name.trim());
      const log = new Log(rig, []);
      await log.add("passed", { card: location.pathname.split("/").filter(Boolean).at(-1) }, { by: name.trim() });
      render(html``, place);
      goOn(true);
    };
    const draw = () => render(html`
      <section class="alarm out-first" role="alert"><h2>${sentenceOf(statusOf(rig.id), words.rig_status)}</h2><p>${words.out_first.only}</p></section>
      <div class="field"><label for="technician">${words.out_first.name}</label><span class="typed"><input id="technician" autocomplete="name" maxlength="60" .value=${name} @input=${({ target }) => { name = target.value; draw(); }}></span></div>
      <p><a class="key key-wide" href=${new URL("checks/", home).href}>${words.out_first.bay}</a></p>
      <div class="dock"><a class="key key-act" href=${home.href}>${words.out_first.stop}</a>
        <button type="button" class="key key-trouble" ?disabled=${!name.trim()} @click=${on}>${words.out_first.go_on}</button></div>`, place);
    draw();
    toHeading(place);
  });
}
