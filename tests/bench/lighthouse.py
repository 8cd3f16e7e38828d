"""What Lighthouse 12.2.3 says of the built site, each point that is missing with its name.

    python tests/bench/lighthouse.py     builds, fetches Lighthouse from npm, prints scores

The site is served as a real host would, compressed. Performance is simulated on a slow phone network and goes with the
machine; the other categories do not.
"""
import functools
import gzip
import http.server
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import threading

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

import build
from site_src.publish.serving import Handler
from tests.browser import chromium_path

LIGHTHOUSE = "lighthouse@12.2.3"
CATEGORIES = "performance,accessibility,best-practices"
PAGES = ["", "pressure/", "shift/bay/", "diagnose/", "test/", "tables/US/friction/", "fr/"]


class Packed(Handler):
    """Serves a file compressed."""

    def do_GET(self):
        path = pathlib.Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            return self.send_error(404)
        content = gzip.compress(path.read_bytes())
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)


def judged(address, folder):
    """Lighthouse's report on one page."""
    written = folder / "report.json"
    subprocess.run(
        ["npx", "--yes", LIGHTHOUSE, address, "--quiet", "--output=json", f"--output-path={written}", f"--only-categories={CATEGORIES}",
         "--chrome-flags=--headless=new --no-sandbox"],
        check=True, env={**os.environ, "CHROME_PATH": chromium_path()}, stderr=subprocess.DEVNULL)
    return json.loads(written.read_text(encoding="utf-8"))


def print_scores(page, report):
    scores = {name: round(100 * category["score"]) for name, category in report["categories"].items()}
    print(f"{page or '(start)'}: {scores}")
    for category in report["categories"].values():
        for asked in category["auditRefs"]:
            found = report["audits"][asked["id"]]
            if asked["weight"] and found["score"] is not None and found["score"] < 1:
                print(f"    {asked['id']} (weight {asked['weight']}): {round(100 * found['score'])}, {found.get('displayValue', '')}")


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        build.build(folder / "dist")
        serving = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Packed, directory=str(folder / "dist")))
        threading.Thread(target=serving.serve_forever, daemon=True).start()
        for page in PAGES:
            print_scores(page, judged(f"http://127.0.0.1:{serving.server_port}/{page}", folder))


if __name__ == "__main__":
    main()
