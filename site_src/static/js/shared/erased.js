// All of the site is being erased from this phone, see erase.js: whatever other page of it is open shows nothing more, and writes nothing more.
import { scoped } from "./site.js";

const channel = "BroadcastChannel" in window ? new BroadcastChannel(scoped("erased")) : null;

export const tellErased = () => channel?.postMessage(""); // every page but this one hears it
channel?.addEventListener("message", () => location.replace("about:blank"));
