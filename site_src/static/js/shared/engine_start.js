// Starts the interpreter's thread before everything else of a page that computes. engine.js takes it over, and begins another
// where it ended. Where a browser has none there is no `begin`, and engine.js runs the interpreter itself.
{
  const { worker, name } = document.currentScript.dataset;
  const address = new URL(worker, document.baseURI).href;
  // Where the browser takes a script's address only from a policy, this one gives the interpreter's and no other.
  const trusted = window.trustedTypes?.createPolicy("engine", { createScriptURL: () => address }).createScriptURL("") ?? address;
  const begin = () => {
    const begun = { worker: new Worker(trusted, { type: "module", name }), hasFailed: false };
    begun.worker.onerror = () => (begun.hasFailed = true);
    return begun;
  };
  window.engine = { address, begin, first: null };
  try {
    window.engine.first = begin();
  } catch {
    window.engine.begin = null;
  }
}
