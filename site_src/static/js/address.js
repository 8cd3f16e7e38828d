// What a page holds, in its address, so that it can be handed to another phone.
const WRITE_MS = 300; // browsers refuse an address that changes at every tap of a held key
const OWN = "&tab=";

// A name of this tab. An address that bears it was written by the page itself and may lag behind what was entered since.
const tab = (() => {
  const name = () => String(Math.random()).slice(2);
  try {
    return (sessionStorage.tab ??= name());
  } catch {
    return name(); // no storage: nothing else is kept either, so the address is all there is
  }
})();

// The address of a page whose fragment is `mark` and a value as JSON. `clean(value)` rebuilds what is sound and throws
// where something is strange; a fragment of more than `longest` characters is not read at all.
export function addressOf({ mark, longest, clean }) {
  const fragment = (value) => mark + encodeURIComponent(JSON.stringify(value));
  const isOwn = () => !location.hash || location.hash.endsWith(OWN + tab);
  let writing;

  return {
    isOwn,

    // The value of the address; null where it holds none of another's making, undefined where it cannot be read.
    read() {
      if (isOwn() || !location.hash.startsWith(mark)) return null;
      if (location.hash.length > longest) return undefined;
      try {
        return clean(JSON.parse(decodeURIComponent(location.hash.slice(mark.length).split(OWN)[0])));
      } catch {
        return undefined;
      }
    },

    // Write a value soon, unless a link was followed by then.
    write(value) {
      clearTimeout(writing);
      const { href } = location;
      writing = setTimeout(() => location.href === href && history.replaceState(null, "", fragment(value) + OWN + tab), WRITE_MS);
    },

    // Hand a value on; `copied` is called where the link went to the clipboard.
    async share(value, copied) {
      const url = new URL(fragment(value), location.href).href;
      try {
        if (navigator.share) await navigator.share({ url });
        else {
          await navigator.clipboard.writeText(url);
          copied();
        }
      } catch {
        // the person turned it down, or the browser did: the address bar still holds it
      }
    },
  };
}
