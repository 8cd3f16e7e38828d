// Square codes read by this phone's own camera, where its browser can read them; elsewhere its camera app opens each as a link.
const LOOK_MS = 250;

export const canRead = () => "BarcodeDetector" in window && Boolean(navigator.mediaDevices?.getUserMedia);

export class Camera {
  #stream = null;
  #timer = 0;
  isOn = false;
  isRefused = false;
  read = null;
  changed = null;

  // read(text): what a code says; changed(): on, off, or refused by the person.
  constructor({ read, changed }) {
    Object.assign(this, { read, changed });
  }

  async start() {
    try {
      this.#stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    } catch {
      this.isRefused = true;
      return this.changed();
    }
    Object.assign(this, { isOn: true, isRefused: false });
    this.changed();
    const video = /** @type {HTMLVideoElement} */ (document.getElementById("camera"));
    video.srcObject = this.#stream;
    await video.play();
    const detector = new /** @type {any} */ (globalThis).BarcodeDetector({ formats: ["qr_code"] });
    const look = async () => {
      try {
        for (const { rawValue } of await detector.detect(video)) await this.read(rawValue);
      } catch {
        // no picture yet
      }
      if (this.isOn) this.#timer = window.setTimeout(look, LOOK_MS);
    };
    await look();
  }

  stop() {
    clearTimeout(this.#timer);
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#stream = null;
    this.isOn = false;
    this.changed();
  }
}
