// Keep the screen on while a card runs; says whether it can.
export function stayAwake(tell) {
  const ask = async () => {
    if (document.visibilityState !== "visible") return;
    try {
      const lock = await navigator.wakeLock.request("screen");
      tell(true);
      lock.addEventListener("release", () => tell(false));
    } catch {
      tell(false);
    }
  };
  document.addEventListener("visibilitychange", ask);
  return ask();
}
