// What a screen reader would say unasked: changes within a live region that was there before, and alerts as they come.
(() => {
  const LIVE = "[role=status], [role=alert], [aria-live], output";
  const last = new WeakMap();
  const said = (node) => node.nodeType === Node.TEXT_NODE ? node.data : node.ariaHidden === "true" ? "" : [...node.childNodes].map(said).join("");
  const text = (region) => said(region).replace(/\s+/g, " ").trim();
  const notes = [];

  const note = (region) => {
    const now = text(region);
    if (now && now !== last.get(region)) notes.push(now);
    last.set(region, now);
  };

  document.querySelectorAll(LIVE).forEach((region) => last.set(region, text(region)));
  new MutationObserver((changes) => {
    for (const { target, addedNodes } of changes) {
      const element = target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
      const region = element?.closest(`${LIVE}, [role=timer]`);
      if (region?.isConnected && region.matches(LIVE)) note(region);
      for (const added of addedNodes) {
        if (added.nodeType !== Node.ELEMENT_NODE) continue;
        for (const one of [added, ...added.querySelectorAll(LIVE)]) {
          if (one.matches("[role=alert]")) note(one);
          else if (one.matches(LIVE) && !last.has(one)) last.set(one, text(one));
        }
      }
    }
  }).observe(document.body, { childList: true, subtree: true, characterData: true });

  window.heard = () => notes.splice(0);
})();
