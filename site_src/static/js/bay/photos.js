// Photos of a defect: taken or chosen, scaled to what a file can carry, and records of the log like all else.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

const LONGEST_SIDE = 1280;
const MOST_BYTES = 200_000;
const QUALITIES = [0.8, 0.65, 0.5, 0.35];

// A kept picture onto its canvas: the page's policy loads no picture that is not a file of the site.
async function paint(canvas, picture) {
  const bytes = Uint8Array.from(atob(picture.split(",")[1]), (letter) => letter.charCodeAt(0));
  const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/jpeg" }));
  Object.assign(canvas, { width: bitmap.width, height: bitmap.height });
  canvas.getContext("2d").drawImage(bitmap, 0, 0);
}

const asText = (blob) => new Promise((resolve, reject) => {
  const reader = new FileReader();
  reader.onload = () => resolve(reader.result);
  reader.onerror = () => reject(reader.error);
  reader.readAsDataURL(blob);
});

// A picture as the text of a JPEG of at most 200 kB; null for a file that is none.
async function scaled(file) {
  let picture;
  try {
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    return null;
  }
  for (let side = LONGEST_SIDE; side >= 320; side /= 2) {
    const by = Math.min(1, side / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    Object.assign(canvas, { width: Math.round(picture.width * by), height: Math.round(picture.height * by) });
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    for (const quality of QUALITIES) {
      const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
      if (blob && blob.size <= MOST_BYTES) return asText(blob);
    }
  }
  return null;
}

export class Photos {
  #refused = false;
  log = null;
  redraw = null;

  constructor(log, redraw) {
    Object.assign(this, { log, redraw });
  }

  async #take(defect, file) {
    if (!file) return;
    const picture = await scaled(file);
    this.#refused = picture === null;
    if (picture) await this.log.add("photo", { defect: defect.id, picture });
    this.redraw();
  }

  // After the page was drawn: each picture on its canvas, once.
  paint(place) {
    for (const canvas of place.querySelectorAll("canvas[data-photo]:not([data-painted])")) {
      canvas.dataset.painted = "";
      paint(canvas, this.log.of("photo").find(({ id }) => id === canvas.dataset.photo).picture);
    }
  }

  view(defect, words) {
    return html`
      ${this.log.of("photo").filter((record) => record.defect === defect.id).map(({ id }) => html`<canvas class="bay-photo" role="img" aria-label=${words.defect.photo_of} data-photo=${id}></canvas>`)}
      ${this.#refused ? html`<p class="refusal" role="alert">${words.defect.no_photo}</p>` : nothing}
      <label class="key key-wide key-file"><span>${words.defect.photo}</span><input type="file" accept="image/*" capture="environment" @change=${({ target }) => this.#take(defect, target.files[0])}></label>`;
  }
}
