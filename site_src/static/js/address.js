// What a page holds, in its address, so that it can be handed to another phone.
const OWN = { own: true }; // an address this page wrote itself, which may lag behind what was entered
const WRITE_MS = 300; // browsers refuse an address that changes at every tap of a held key

// The address of a page whose fragment is `mark` and a value as JSON. `clean(value)` rebuilds what is sound and throws
// where something is strange; a fragment of more than `longest` characters is not read at all.
export function addressOf({ mark, longest, clean }) {
  const fragment = (value) => mark + encodeURIComponent(JSON.stringify(value));
  let writing;

  return {
    isOwn: () => !location.hash || Boolean(history.state?.own),

    // The value of the address; null where it holds none of another's making, undefined where it cannot be read.
    read() {
      if (history.state?.own || !location.hash.startsWith(mark)) return null;
      if (location.hash.length > longest) return undefined;
      try {
        return clean(JSON.parse(decodeURIComponent(location.hash.slice(mark.length))));
      } catch {
        return undefined;
      }
    },

    // Write a value soon, unless a link was followed by then.
    write(value) {
      clearTimeout(writing);
      const { href } = location;
      writing = setTimeout(() => location.href === href && history.replaceState(OWN, "", fragment(value)), WRITE_MS);
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
