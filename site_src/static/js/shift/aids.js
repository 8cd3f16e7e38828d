// Aids for a cab: the step read aloud by a voice of this phone, and a buzz when a time is over. Both off until wanted.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { choose, chosen } from "../shared/choices.js";
import { colon } from "../shared/site.js";

const BUZZ_MS = [300, 150, 300];
const speech = "speechSynthesis" in window ? window.speechSynthesis : null;

const isOn = (name) => chosen(name, "off") === "on";

export class Aids {
  last = null;

  constructor({ words, redraw }) {
    this.words = words;
    this.redraw = redraw;
    speech?.addEventListener?.("voiceschanged", redraw); // voices come late
    addEventListener("pagehide", () => speech?.cancel());
  }

  // A voice that needs no signal and speaks the page's language, or undefined.
  get voice() {
    return speech?.getVoices().find((voice) => voice.localService && voice.lang.startsWith(document.documentElement.lang));
  }

  // Read a text, once: the same text again is not read again.
  say(text) {
    if (text === this.last) return;
    this.last = text;
    if (!speech) return;
    speech.cancel();
    if (!isOn("aloud") || !this.voice) return;
    const said = new SpeechSynthesisUtterance(text);
    said.voice = this.voice;
    said.lang = this.voice.lang;
    speech.speak(said);
  }

  buzz() {
    if (isOn("vibrate")) navigator.vibrate?.(BUZZ_MS);
  }

  toggle(name) {
    choose(name, isOn(name) ? "off" : "on");
    this.last = null;
    if (name === "vibrate") this.buzz(); // so that the hand knows it
    this.redraw();
  }
}

export function aidsView(aids) {
  const { shift } = aids.words;
  const key = (name, label) => html`
    <button type="button" class="key" aria-pressed=${isOn(name)} @click=${() => aids.toggle(name)}>
      ${label}${colon} ${isOn(name) ? shift.aloud_on : shift.aloud_off}</button>`;
  return html`
    <div class="aids">
      ${aids.voice ? key("aloud", shift.aloud) : html`<p>${shift.aloud_none}</p>`}
      ${navigator.vibrate ? key("vibrate", shift.vibrate) : nothing}
    </div>`;
}
