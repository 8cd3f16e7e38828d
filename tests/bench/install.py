"""How long a phone takes to be ready, and what it fetches: over links of three kinds, and again for a release that changes one sentence.

    nice .venv/bin/python tests/bench/install.py [FIRST LINK, COUNTED FROM 0]
"""
import pathlib
import shutil
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from playwright.sync_api import sync_playwright

import build
from site_src.publish import release
from tests.browser import ARGUMENTS, PHONE, chromium_path
from tests.slow_host import Link, slow_server

LINKS = {"no latency": Link(), "60 ms, 1.5 Mbit/s": Link(1.5e6 / 8, 0.06), "400 ms, 400 kbit/s": Link(4e5 / 8, 0.4)}
SENTENCE = "<p>This sentence came later.</p></main>"
INSTALLED = """async () => {
  const registration = await navigator.serviceWorker.ready;
  await registration.update();
  const worker = registration.installing;
  if (worker) await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  return registration.waiting?.state;
}"""


def timed(browser, dist, link, name):
    """Install once over a link, then a release over the same; prints both."""
    server = slow_server(dist, link)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    base = f"http://127.0.0.1:{server.server_port}/"
    context = browser.new_context(**PHONE, locale="en-US")
    page = context.new_page()
    began = time.monotonic()
    page.goto(base)
    page.locator("#readiness[data-state=yes]").wait_for(timeout=300000)
    print(f"{name}: Ready after {time.monotonic() - began:.1f} s, {link.requests} requests, {link.bytes / 1000:.0f} kB", flush=True)
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
        for name, link in list(LINKS.items())[int(sys.argv[1]) if len(sys.argv) > 1 else 0:]:
            timed(browser, dist, link, name)
        browser.close()
        shutil.rmtree(dist)


if __name__ == "__main__":
    main()
