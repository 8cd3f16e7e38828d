"""Build the site into dist/, and serve it if asked.

    python build.py                     build
    python build.py --serve [PORT]      build, then serve on this machine
    python build.py --at /pump/         build for a host where the site lies under /pump/ (for its 404 page)
    python build.py --report FOLDER     instead of a build: a fleet report of the exported test results in FOLDER
    python build.py --rigs FOLDER       bake a department's rigs in place of the made-up ones
"""
import argparse
import base64
import functools
import hashlib
import http.server
import json
import pathlib
import shutil
import warnings

import flask_frozen

from site_src import data, fleet, languages, reckoners, report, units
from site_src.app import create_app
from site_src.routes import test

ROOT = pathlib.Path(__file__).parent
DIST = ROOT / "dist"
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
    ".png": "image/png",
}


def build(dist=DIST, site_path="/", rigs_folder=fleet.DEMO):
    """Build the whole site into a folder; the same sources give the same bytes."""
    freeze(dist, site_path, rigs_folder)
    write_worker(dist)


def freeze(dist, site_path, rigs_folder):
    """Write every page, in every language, and every static file. A warning of the freezer is an error."""
    shutil.rmtree(dist, ignore_errors=True)
    for language in reversed(data.languages()):  # English last: the page for unknown addresses is shared, and stays in English
        freeze_language(dist, create_app(site_path, rigs_folder, language))


def freeze_language(dist, app):
    """Write the pages of one language."""
    app.config.update(
        FREEZER_DESTINATION=str(dist.resolve()),
        FREEZER_RELATIVE_URLS=True,
        FREEZER_REMOVE_EXTRA_FILES=False,
        FREEZER_STATIC_IGNORE=["__pycache__", ".*"],
    )
    freezer = flask_frozen.Freezer(app)

    @freezer.register_generator
    def unlinked():
        yield "shared.not_found", {}
        yield "pressure.page_data", {}
        yield "rig.page_data", {}
        yield "test.page_data", {}
        for part in test.PARTS:
            yield "test.part", {"part": part}
        yield "rig.schema", {}
        yield "shift.index_data", {}
        yield "log.page_data", {}
        for card in data.cards():
            yield "shift.page_data", {"card": card["id"]}
        for source in reckoners.WATER:
            yield "water.page_data", {"source": source}

    with warnings.catch_warnings():
        warnings.simplefilter("error", flask_frozen.FrozenFlaskWarning)
        freezer.freeze()


def write_worker(dist):
    """Write the service worker last, with every file that is really there but the fleet's pages.

    A phone does not carry a thousand trucks: it keeps the rigs that were taken, and fleet pages it has opened.
    """
    files = [
        precached(dist, path) for path in sorted(dist.rglob("*"))
        if path.is_file() and not languages.is_fleet(path.relative_to(dist).as_posix())
    ]
    worker = (ROOT / "site_src" / "sw.js").read_text()
    (dist / "sw.js").write_text(worker.replace("FILES;", json.dumps(files, indent=0) + ";", 1))


def precached(dist, path):
    """One entry of the precache list."""
    content = path.read_bytes()
    return {
        "url": path.relative_to(dist).as_posix(),
        "revision": hashlib.sha256(content).hexdigest()[:16],
        "integrity": "sha256-" + base64.b64encode(hashlib.sha256(content).digest()).decode(),
    }


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves dist with the right types, whatever this machine's tables say."""

    extensions_map = TYPES

    def log_message(self, *args):
        pass

    def end_headers(self):
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def send_error(self, code, message=None, explain=None):
        page = pathlib.Path(self.directory, "404.html")
        if code != 404 or not page.exists():
            return super().send_error(code, message, explain)
        content = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", TYPES[".html"])
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)


def server(dist=DIST, port=8000):
    """A server of the built site on this machine; port 0 takes any free one."""
    return http.server.ThreadingHTTPServer(("127.0.0.1", port), functools.partial(Handler, directory=str(dist)))


def print_report(parser, options):
    """Write the fleet's report in place of the site."""
    try:
        told = report.write(options.report, system=options.units, language=options.language)
    except report.ReportError as fault:
        parser.exit(1, f"{fault}\n")
    print(f"Reported {told['tests']} tests of {told['rigs']} rigs from {told['files']} files, {told['bad']} of them unusable: {told['page']}")


def main():
    parser = argparse.ArgumentParser(description="Build the site into dist/.")
    parser.add_argument("--serve", nargs="?", const=8000, type=int, metavar="PORT", help="serve it afterwards")
    parser.add_argument("--at", default="/", metavar="PATH", help="path of the site on its host")
    parser.add_argument("--rigs", default=fleet.DEMO, type=pathlib.Path, metavar="FOLDER", help="the department's rigs, as TOML")
    parser.add_argument("--report", type=pathlib.Path, metavar="FOLDER", help="report on the exported test results in a folder, into FOLDER/report")
    parser.add_argument("--units", default="US", choices=[system["id"] for system in units.systems()], help="units of the report")
    parser.add_argument("--language", default="en", choices=data.languages(), help="language of the report")
    options = parser.parse_args()
    if options.report:
        return print_report(parser, options)
    try:
        build(site_path=options.at, rigs_folder=options.rigs)
    except fleet.FleetError as fault:
        parser.exit(1, f"{fault}\n")
    print(f"Built {sum(path.is_file() for path in DIST.rglob('*'))} files in {DIST}")
    if options.serve is not None:
        with server(port=options.serve) as serving:
            print(f"Open http://127.0.0.1:{serving.server_port}/ (stop with Ctrl-C)", flush=True)
            serving.serve_forever()


if __name__ == "__main__":
    main()
