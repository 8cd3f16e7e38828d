// Photos: taken or chosen, scaled to what a file can carry, shown where they belong. Whoever has them keeps them.
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
    picture = await createImageBitmap(file); // the way up that the picture itself says
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

// All that can be a photo's picture here: what `scaled` makes, whatever a file says.
const MOST_TEXT = 266_700; // as calc.service.file has it
export const isPicture = (text) => typeof text === "string" && text.length <= MOST_TEXT && /^data:image\/jpeg;base64,[A-Za-z0-9+/]+={0,2}$/.test(text);

export class Photos {
  #refused = null;
  #justAdded = new Set(); // on this page: they went nowhere yet, and can be taken off
  /** @type {any} */
  of = null;
  /** @type {any} */
  add = null;
  /** @type {any} */
  drop = null;
  /** @type {any} */
  redraw = null;

  // of: the photos of something, [{ id, picture }]; add: keeps one more; drop: takes one away that was just added; redraw: the page
  constructor({ of, add, redraw, drop = null }) {
    Object.assign(this, { of, add, redraw, drop });
  }

  async #take(owner, input) {
    const [file] = input.files;
    input.value = ""; // the same one can be chosen again
    if (!file) return;
    const picture = await scaled(file);
    this.#refused = picture === null ? owner : null;
    if (picture) this.#justAdded.add((await this.add(owner, picture))?.id);
    this.redraw();
  }

  // After the page was drawn: each picture on its canvas, once.
  paint(place, photos) {
    for (const canvas of place.querySelectorAll("canvas[data-photo]")) {
      if (canvas.dataset.painted === canvas.dataset.photo) continue;
      canvas.dataset.painted = canvas.dataset.photo;
      paint(canvas, photos.find(({ id }) => id === canvas.dataset.photo).picture).catch(() => {}); // a picture that is none stays empty
    }
  }

  // words: photo, photo_of, no_photo
  view(owner, words) {
    return html`${this.of(owner).map((photo) => html`${photoView(photo, words.photo_of)}
      ${this.drop && this.#justAdded.has(photo.id) ? html`<button type="button" class="key" @click=${() => this.drop(photo.id)}>${words.photo_off}</button>` : nothing}`)}${this.takeView(owner, words)}`;
  }

  takeView(owner, words) {
    return html`
      ${this.#refused === owner ? html`<p class="refusal" role="alert">${words.no_photo}</p>` : nothing}
      <label class="key key-wide key-file"><span>${words.photo}</span><input type="file" accept="image/*" capture="environment" @change=${({ target }) => this.#take(owner, target)}></label>`;
  }
}

export const photoView = ({ id }, label) => html`<canvas class="photo" role="img" aria-label=${label} data-photo=${id}></canvas>`;
