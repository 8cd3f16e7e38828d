// Dates and times of day as this page's language says them, the phone's own way of it where it speaks that language.
const { lang } = document.documentElement;
const locale = navigator.languages.find((each) => each.split("-")[0] === lang) ?? lang;
/** @type {Intl.DateTimeFormatOptions} */
const SHORT = { hour: "2-digit", minute: "2-digit" };
/** @type {Intl.DateTimeFormatOptions} */
const DAY = { year: "numeric", month: "short", day: "numeric" };

export const clockTime = (at) => new Date(at).toLocaleTimeString(locale, { ...SHORT, second: "2-digit" });
export const shortTime = (at) => new Date(at).toLocaleTimeString(locale, SHORT);
export const dayTime = (at) => new Date(at).toLocaleTimeString(locale, { ...SHORT, hourCycle: "h23" });
export const day = (at) => new Date(at).toLocaleDateString(locale, DAY);
export const dayAndTime = (at) => new Date(at).toLocaleString(locale, { dateStyle: "medium", timeStyle: "short" });

// Minutes that this phone's clock is ahead of UTC, as calc.bay.board takes them.
export const aheadMin = () => -new Date().getTimezoneOffset();

export const two = (part) => String(part).padStart(2, "0");

// A day where the phone is, as a date field has it: 2026-11-29.
export const dateField = (at = new Date()) => [at.getFullYear(), at.getMonth() + 1, at.getDate()].map(two).join("-");

// A count of seconds as a clock shows it: 4:07, 1:04:07.
export const minutes = (seconds) => {
  const whole = Math.floor(Math.max(seconds, 0));
  const hours = Math.floor(whole / 3600);
  return `${hours ? `${hours}:` : ""}${hours ? two(Math.floor(whole / 60) % 60) : Math.floor(whole / 60)}:${two(whole % 60)}`;
};
