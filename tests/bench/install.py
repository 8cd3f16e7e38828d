"""How long a phone takes to be ready, and what it fetches, from the address typed on: over links of four kinds, and again for a release that
changes one sentence. The address is typed again where no page came; from then on nobody touches it.

    nice .venv/bin/python tests/bench/install.py [gzip or br] [FIRST LINK, COUNTED FROM 0]
"""
import contextlib
import pathlib
import shutil
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from playwright.sync_api import Error, sync_playwright

import build
from site_src.publish import release
from tests.browser import ARGUMENTS, PHONE, chromium_path
from tests.slow_host import Link, slow_server

LINKS = {"no latency": Link(), "60 ms, 1.5 Mbit/s": Link(1.5e6 / 8, 0.06), "400 ms, 400 kbit/s": Link(4e5 / 8, 0.4),
         "600 ms, 50 kbit/s, one request in five lost": Link(5e4 / 8, 0.6, loss=0.2)}
MOST_OPENED = 50
SENTENCE = "<p>This sentence came later.</p></main>"
INSTALLED = """async () => {
  const registration = await navigator.serviceWorker.ready;
  await registration.update();
  const worker = registration.installing;
  if (worker) await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  return registration.waiting?.state;
}"""


def opened(page, base):
    """Type the address until the page comes, and the script that runs before the others: without those there is nothing of ours to go on by itself."""
    for times in range(1, MOST_OPENED):
        with contextlib.suppress(Error):
            page.goto(base, wait_until="domcontentloaded", timeout=120000)
            if page.evaluate("performance.getEntriesByType('resource').some(({ name, responseStatus }) => name.endsWith('/first.js') && responseStatus === 200)"):
                return times
    raise SystemExit(f"The page did not come in {MOST_OPENED} times.")


def timed(browser, dist, link, name, kind):
    """Install once over a link, then a release over the same; prints both."""
    server = slow_server(dist, link, kind=kind)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    base = f"http://127.0.0.1:{server.server_port}/"
    context = browser.new_context(**PHONE, locale="en-US")
    page = context.new_page()
    began = time.monotonic()
    times = opened(page, base)
    page.locator("#readiness[data-state=yes]").wait_for(timeout=1200000)
    print(f"{name}: Ready after {time.monotonic() - began:.1f} s, {link.requests} requests, {link.lost} of them lost, {link.bytes / 1000:.0f} kB; opened {times} times", flush=True)
    before, requests = link.bytes, link.requests
    began = time.monotonic()
    changed = dist / "cautions" / "index.html"
    first = changed.read_text(encoding="utf-8")
    changed.write_text(first.replace("</main>", SENTENCE), encoding="utf-8")
    release.write(dist)
    state = page.evaluate(INSTALLED)
    print(f"  one sentence: {state} after {time.monotonic() - began:.1f} s, {link.requests - requests} requests, {(link.bytes - before) / 1000:.1f} kB", flush=True)
    changed.write_text(first, encoding="utf-8")
    release.write(dist)
    context.close()
    server.shutdown()


def main():
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        dist = pathlib.Path(folder) / "dist"
        build.build(dist)
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=ARGUMENTS)
        for name, link in list(LINKS.items())[int(sys.argv[2]) if len(sys.argv) > 2 else 0:]:
            timed(browser, dist, link, name, sys.argv[1] if len(sys.argv) > 1 else "gzip")
        browser.close()
        shutil.rmtree(dist)


if __name__ == "__main__":
    main()
