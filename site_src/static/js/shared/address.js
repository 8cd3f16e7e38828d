// What a page holds, as a link that can be handed to another phone. The address of the page changes only when it is shared.
import { oneReading } from "./one_reading.js";
const OLD_OWN = "&tab="; // links of an older version end in a mark of their tab

// Which fragment this tab wrote itself. It goes with the tab, and so does what it is a link to.
const own = {
  write(fragment) {
    try {
      sessionStorage.setItem("shared", fragment);
    } catch {
      // no storage: after a reload it is taken for a link that was followed
    }
  },
  is(fragment) {
    try {
      return sessionStorage.getItem("shared") === fragment;
    } catch {
      return false;
    }
  },
};

// Hand a link on, or a text: { url } or { text }. Resolves to what became of it: "sent" by the share sheet, "copied", "refused" by the person, or "unsent".
export async function handOn(what) {
  try {
    if (!navigator.share) {
      await navigator.clipboard.writeText(what.url ?? what.text);
      return "copied";
    }
    await navigator.share(what);
    return "sent";
  } catch (refusal) {
    return refusal?.name === "AbortError" ? "refused" : "unsent";
  }
}

const clear = () => history.replaceState(null, "", location.pathname + location.search);

// The address of a page whose fragment is `mark` and a value as JSON; links of an older version may have begun with `old`. `clean(value)` rebuilds what is sound and throws
// where something is strange; a fragment of more than `longest` characters is not read at all.
export function addressOf({ mark, old = mark, longest, clean: cleaned }) {
  const fragmentOf = (value) => mark + encodeURIComponent(JSON.stringify(oneReading(value)));
  const begun = () => [mark, old].find((each) => location.hash.startsWith(each));
  const isHere = () => begun() !== undefined;

  return {
    // The value of a link that was followed: null where there is none, undefined where it cannot be read, and then the address is rid of it.
    take() {
      const { hash } = location;
      if (!isHere() || own.is(hash)) return null;
      try {
        if (hash.length > longest) throw new RangeError("too long");
        return cleaned(JSON.parse(decodeURIComponent(hash.slice(begun().length).split(OLD_OWN)[0])));
      } catch {
        clear();
        return undefined;
      }
    },

    // A link that is no longer to what the page holds does not stay in its address.
    leave: () => isHere() && clear(),

    // Hand a value on. Resolves as handOn does, "written" where it is in the address only. One that is not this phone's `isOwn` stays a link that was followed.
    async share(value, isOwn) {
      const fragment = fragmentOf(value);
      history.replaceState(null, "", fragment);
      if (isOwn) own.write(location.hash);
      const became = await handOn({ url: new URL(fragment, location.href).href });
      return became === "unsent" ? "written" : became;
    },
  };
}
