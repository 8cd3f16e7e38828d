"""What a page that is acted on does to a slow phone's drawing thread as it opens, offline and cold: when it is painted, when its
answers stand, the longest block, what moved.

    python tests/bench/blocks.py [DIST]      builds, or takes a built site; prints one line a page

The processor is slowed six times, and that slows the drawing thread alone: Chromium does not slow workers, so what the
interpreter's thread takes stands here as on a fast phone. Medians of cold opens with a profile on disk; the longest block is the longest of all.
"""
import pathlib
import statistics
import sys
import tempfile
import threading

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from playwright.sync_api import sync_playwright

import build
from tests.browser import ARGUMENTS, PHONE, chromium_path
from tests.phone.history import PROFILE, SEED

SLOWED, OPENS, SETTLED_MS = 6, 7, 1500
PAGES = ["", "pressure/", "shift/scene/", "diagnose/", "water/", "water/tank/", "danger/", "diagnose/water/", "test/run/", "rig/"]
WATCH = """
window.seen = { blocks: [], moved: 0, shown: null };
new PerformanceObserver((list) => list.getEntries().forEach(({ startTime, duration }) => seen.blocks.push([startTime, duration])))
  .observe({ type: "longtask", buffered: true });
new PerformanceObserver((list) => list.getEntries().forEach(({ value, hadRecentInput }) => { if (!hadRecentInput) seen.moved += value; }))
  .observe({ type: "layout-shift", buffered: true });
{
  const FIGURES = "output, .bed-figure:not([aria-hidden] *)";
  const look = () => {
    const figure = [...document.querySelectorAll(FIGURES)].find((each) => /\\d/.test(each.textContent) && each.checkVisibility());
    if (figure) seen.shown = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}
"""
TIMES = """() => ({
  painted: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? null,
  rig: performance.getEntriesByName("rig-answers")[0]?.startTime ?? null,
  live: performance.getEntriesByName("live-answer")[0]?.startTime ?? null,
  ...window.seen,
})"""


def opened(context, address, slowed=SLOWED):
    """The times of one cold open, ms from the start of its navigation."""
    page = context.new_page()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    page.add_init_script(WATCH)
    page.goto(address)
    page.wait_for_timeout(SETTLED_MS)
    times = page.evaluate(TIMES)
    page.close()
    return times


def middle(times, name):
    """The median of what was seen, or a dash where a page has none."""
    found = [each[name] for each in times if each[name] is not None]
    return f"{statistics.median(found):.0f}" if found else "-"


def told(address, times):
    blocks = [duration for each in times for _, duration in each["blocks"]]
    longest = [max((duration for _, duration in each["blocks"]), default=0) for each in times]
    moved = max(each["moved"] for each in times)
    print(f"{address or 'start':18} first paint {middle(times, 'painted'):>5}  figure {middle(times, 'shown'):>5}  rig-answers {middle(times, 'rig'):>5}"
          f"  live-answer {middle(times, 'live'):>5}  longest block {statistics.median(longest):.0f} (of all {max(blocks, default=0):.0f})  moved {moved:.3f}")


def main():
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        dist = pathlib.Path(sys.argv[1] if sys.argv[1:] else pathlib.Path(folder) / "dist")
        if not sys.argv[1:]:
            build.build(dist)
        serving = build.server(dist, 0)
        threading.Thread(target=serving.serve_forever, daemon=True).start()
        base = f"http://127.0.0.1:{serving.server_port}/"
        context = playwright.chromium.launch_persistent_context(pathlib.Path(folder) / "profile", executable_path=chromium_path(), args=ARGUMENTS, **PHONE)
        page = context.new_page()
        page.goto(base + "test/")
        page.evaluate(SEED, {"tests": [], "rig": PROFILE})
        page.goto(base + "all/")
        page.locator("#readiness[data-state=yes]").wait_for(timeout=60000)
        page.close()
        context.set_offline(True)
        serving.shutdown()
        serving.server_close()
        for address in PAGES:
            opened(context, base + address)  # what it keeps for the next
            told(address, [opened(context, base + address) for _ in range(OPENS)])
        context.close()


if __name__ == "__main__":
    main()
