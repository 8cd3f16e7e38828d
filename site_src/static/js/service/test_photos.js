// Photos of a test, a gauge or a defect, in a store of their own beside it: { id, test, part, at_ms, picture }. None goes to the interpreter.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { mark } from "../shared/mark.js";
import { isPicture, photoView, Photos } from "../shared/photos.js";
import { colon, fill } from "../shared/site.js";
import { dropRecord, keepRecord, keptRecords } from "../shared/store.js";
import { day, dayTime } from "../shared/times.js";
import { digestsOf } from "./digest.js";

const STORE = "photos";
export const MOST_PHOTOS = 8; // of one test: with them its file stays half as large as one may be
const MOST_NAME = 200;

// In the order of their tests.
export async function photosOf(...ids) {
  const all = (await keptRecords(STORE)).sort((one, other) => one.at_ms - other.at_ms);
  return ids.flatMap((id) => all.filter(({ test }) => test === id));
}

// The photos of an open test, taken on its parts.
export async function testPhotos(record, redraw) {
  const kept = await photosOf(record.id);
  const photos = new Photos({
    of: (part) => kept.filter((photo) => photo.part === part),
    async add(part, picture) {
      const photo = { id: mark(), test: record.id, part, at_ms: Date.now(), picture };
      kept.push(photo);
      await keepRecord(STORE, photo);
    },
    redraw,
  });
  return {
    paint: (place) => photos.paint(place, kept),
    view(part, { words, record: { finished_ms: finished } }) {
      const of = fill(words.photo.photo_of, { part: words.test_name[part] });
      const taken = photos.of(part).map((photo) => photoView(photo, of));
      return html`${taken}${finished !== null ? nothing : kept.length >= MOST_PHOTOS ? html`<p>${fill(words.photo.most, { count: MOST_PHOTOS })}</p>` : photos.takeView(part, words.photo)}`;
    },
  };
}

// On the sheet: each with its part and when it was taken, and whether it is what was signed. pictured: the photos' digests as they are here.
export function photosView({ photos, pictured, record: { photographed }, words }) {
  const gone = Object.keys(photographed ?? {}).filter((id) => !(id in pictured)).length;
  if (photos.length + gone === 0) return nothing;
  return html`
  <section class="sheet-photos"><h3>${words.photo.title}</h3>
    ${photos.map((photo) => {
      const part = words.test_name[photo.part] ?? photo.part;
      return html`<figure>${photoView(photo, fill(words.photo.photo_of, { part }))}<figcaption>${part}${colon} ${day(photo.at_ms)}, ${dayTime(photo.at_ms)}${photographed && photographed[photo.id] !== pictured[photo.id]
        ? html` <b>${words.photo.not_signed}</b>` : nothing}</figcaption></figure>`;
    })}
    ${gone ? html`<p><b>${fill(words.photo.gone, { count: gone })}</b></p>` : nothing}</section>`;
}

export function paintPhotos(place, photos) {
  new Photos({ of: null, add: null, redraw: null }).paint(place, photos);
}

const isName = (text) => typeof text === "string" && text !== "" && text.length <= MOST_NAME;
const isPhoto = (photo) => isName(photo?.id) && isName(photo.part) && Number.isFinite(photo.at_ms) && isPicture(photo.picture);

// A test from a file apart from its photos: those that can be photos of it, never more than one may have. `others`: all photos of a phone whose entries the file holds.
export function apart(given, others) {
  if (typeof given !== "object" || given === null) return { record: given, photos: [] };
  const { photos = others.filter((photo) => photo?.test === given.id), ...record } = given;
  return { record, photos: (Array.isArray(photos) ? photos : []).filter(isPhoto).slice(0, MOST_PHOTOS).map(({ id, part, at_ms, picture }) => ({ id, test: record.id, part, at_ms, picture })) };
}

// Photos that came with a test, kept where it is: those that are here stay as they are, and of a signed test only those that were signed are taken. Resolves to how many
// are others than those.
export async function takePhotos({ id, photographed }, photos) {
  const digests = photographed ? await digestsOf(photos) : {};
  const own = photos.filter((photo) => !photographed || photographed[photo.id] === digests[photo.id]);
  const all = await keptRecords(STORE);
  const room = MOST_PHOTOS - all.filter(({ test }) => test === id).length;
  for (const photo of own.filter((each) => !all.some((kept) => kept.id === each.id)).slice(0, Math.max(room, 0))) await keepRecord(STORE, photo);
  return photos.length - own.length;
}

// With the test they are of, off this phone; resolves to those that went.
export async function dropPhotos(id) {
  const photos = await photosOf(id);
  for (const photo of photos) await dropRecord(STORE, photo.id);
  return photos;
}
