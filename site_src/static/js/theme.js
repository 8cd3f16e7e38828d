// Day or night as chosen on this phone; without a choice, as the phone. Runs before first paint.
{
  const media = { day: "not all", night: "all" };
  let chosen = null;
  try {
    chosen = localStorage.getItem("look");
  } catch {
    // no storage: the phone's own choice stands
  }
  if (chosen in media) document.getElementById("night").media = media[chosen];
}
