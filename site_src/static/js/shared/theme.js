// Day or night, and the language, as chosen on this phone; without a choice, as the phone. Runs before first paint.
import { chosen } from "./early.js";

{
  const media = { day: "not all", night: "all" };
  const look = chosen("look");
  if (look in media) for (const part of /** @type {NodeListOf<HTMLLinkElement>} */ (document.querySelectorAll("[data-night]"))) part.media = media[look];

  const offered = [...document.querySelectorAll("link[rel=alternate][hreflang]")];
  const wanted = [chosen("language"), ...navigator.languages.flatMap((name) => [name, name.split("-")[0]])].find((name) =>
    offered.some((link) => link.hreflang === name));
  // A phone that carries the site goes to no page that it does not have; offline.js sees to it that it gets what is wanted.
  const carried = chosen("carried")?.split(" ");
  if (wanted) document.documentElement.dataset.wanted = wanted;
  if (wanted && (carried?.includes(wanted) ?? true) && wanted !== document.documentElement.lang) {
    const { href } = offered.find((link) => link.hreflang === wanted);
    location.replace(href + location.search + location.hash);
  }
}
