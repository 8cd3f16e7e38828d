// A file handed on, by the share sheet or as a download.
import { file, root } from "./files.js";

// A file whose name says which version of the site wrote it, as All pages shows it.
async function signed(given) {
  try {
    const { version } = await (await file(new URL("version.json", root))).json();
    return new File([given], given.name.replace(/(\.\w+)$/, `.v${version}$1`), { type: given.type });
  } catch {
    return given; // a site that is served without its version
  }
}

// Hand a file to the share sheet, or save it.
export async function send(given) {
  const shared = await signed(given);
  if (navigator.canShare?.({ files: [shared] })) {
    try {
      await navigator.share({ files: [shared] });
      return;
    } catch (turnedDown) {
      if (turnedDown.name === "AbortError") return;
    }
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(shared);
  link.download = shared.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
