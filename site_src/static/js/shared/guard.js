// When a script of the page did not arrive, or failed: what scripts draw goes from the screen, and the page says so. Where no script of
// the page ran, offline.js among them, it has the service worker fetch the site, which asks for each file until it comes.
// Runs before every other script and uses none of them.
{
  const NOT_HERE = { Missing: "missing", TooOld: "old" }; // faults of engine.js and site.js; any other is a bug
  const AGAIN_MS = [5000, 60000];
  const worker = new URL("../../../sw.js", /** @type {HTMLScriptElement} */ (document.currentScript).src).href;
  let reason = null;

  let address = null;
  const install = (wait = AGAIN_MS[0]) => {
    address ??= window.trustedTypes?.createPolicy("worker", { createScriptURL: () => worker }).createScriptURL("") ?? worker;
    navigator.serviceWorker?.register(address, { updateViaCache: "none" })
      .then((found) => {
        const begun = found?.installing;
        begun?.addEventListener("statechange", () => begun.state === "redundant" && setTimeout(install, wait));
      })
      .catch(({ name }) => name === "TypeError" && setTimeout(install, wait, Math.min(2 * wait, AGAIN_MS[1]))); // it did not come; others are final
  };

  const down = (kind) => {
    reason ??= kind;
    const notice = document.getElementById("down");
    if (!notice) return addEventListener("DOMContentLoaded", () => down(kind), { once: true });
    for (const part of document.querySelectorAll("[data-drawn]")) part.hidden = true;
    for (const part of notice.querySelectorAll("[data-down]")) part.hidden = part.dataset.down !== reason;
    notice.hidden = false;
    notice.querySelector("button").onclick = () => location.reload();
    // A part that the host did not send comes from the phone as soon as all of it is there.
    if (reason === "missing") navigator.serviceWorker?.addEventListener("controllerchange", () => location.reload(), { once: true });
  };
  // A script that the browser cannot read, since it is written in a later grammar, names no place that was running; a text read by a script does.
  const isUnread = (thrown) => thrown?.name === "SyntaxError" && !/:\d+:\d+/.test(thrown.stack);
  const fault = (thrown) => down(isUnread(thrown) ? "old" : NOT_HERE[thrown?.name] ?? "fault");

  addEventListener("error", ({ target, filename, error }) => {
    const isOurs = !filename || filename.startsWith(location.origin); // others' are a browser's extensions
    if (target === window && isOurs) fault(error);
    else if (target instanceof HTMLScriptElement) {
      down("missing");
      if (target.type === "module" && !address) install();
    }
  }, true);
  addEventListener("unhandledrejection", (event) => fault(event.reason));
}
