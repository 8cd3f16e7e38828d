// Day, night, or as the phone has it.
import { choose, chosen } from "./choices.js";

const AS_PHONE = "(prefers-color-scheme: dark)";
const MEDIA = { auto: AS_PHONE, day: "not all", night: "all" };
const phone = matchMedia(AS_PHONE);

export const look = () => chosen("look", "auto");

export const isNight = () => (look() in MEDIA && look() !== "auto" ? look() === "night" : phone.matches);

// Choose how every page looks; `changed` listeners hear of it.
export function chooseLook(name) {
  choose("look", name);
  for (const part of /** @type {NodeListOf<HTMLLinkElement>} */ (document.querySelectorAll("[data-night]"))) part.media = MEDIA[name];
  document.dispatchEvent(new CustomEvent("look"));
}

export function onLook(listen) {
  document.addEventListener("look", listen);
  phone.addEventListener("change", listen);
}
