// The page of a closed site: hands out, as one file, all that was entered on this phone. Another install of the site reads rigs, tests and
// logs from it (shared/entries.js), and so does the report.
{
  const root = new URL(".", /** @type {HTMLScriptElement} */ (document.currentScript).src);
  const name = root.pathname === "/" ? "panelhand" : `panelhand ${root.pathname}`;
  const mark = root.pathname === "/" ? "note:" : `${root.pathname} note:`;
  const done = (asked) => new Promise((take, fail) => {
    asked.onsuccess = () => take(asked.result);
    asked.onerror = () => fail(asked.error);
  });

  // Every store of the database, by key; and what waited in a note for the database.
  async function entries() {
    const all = {};
    const opening = indexedDB.open(name);
    opening.onupgradeneeded = () => opening.transaction.abort(); // there is none
    const opened = await done(opening).catch(() => null);
    for (const store of opened?.objectStoreNames ?? []) {
      const at = opened.transaction(store).objectStore(store);
      const [keys, values] = await Promise.all([done(at.getAllKeys()), done(at.getAll())]);
      all[store] = Object.fromEntries(keys.map((key, place) => [key, values[place]]));
    }
    opened?.close();
    const notes = Object.keys(localStorage).filter((key) => key.startsWith(mark));
    if (notes.length) all.notes = Object.fromEntries(notes.map((key) => [key.slice(mark.length), JSON.parse(localStorage.getItem(key))]));
    return all;
  }

  const state = document.getElementById("state");
  document.getElementById("save").addEventListener("click", async () => {
    const all = await entries();
    const count = Object.values(all).reduce((sum, store) => sum + Object.keys(store).length, 0);
    state.textContent = count ? state.dataset.saved.replace("{count}", String(count)) : state.dataset.none;
    if (!count) return;
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify({ format: "entries", schema: 1, ...all }, null, 1)], { type: "application/json" }));
    link.download = "entries.json";
    link.click();
  });
  navigator.serviceWorker?.register(new URL("sw.js", root), { scope: root.href, updateViaCache: "none" }).catch(() => {});
}
