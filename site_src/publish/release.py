"""A built site as one release: its files by language, its digest and date, and the service worker that carries them."""
import base64
import datetime
import functools
import hashlib
import html
import json
import os
import pathlib
import re
import shutil
import subprocess
import tempfile

from site_src import bundle
from site_src.content import data, languages
from site_src.publish import packing

SOURCES = pathlib.Path(__file__).parent.parent / "worker"
WORKER, VERSION = "sw.js", "version.json"
NOT_CARRIED = ("_headers", ".gz", ".br", "static/screens/", packing.FOLDER)  # for the host, an app store's list or the way there: no phone keeps it
POLICY = re.compile(r'http-equiv="Content-Security-Policy" content="([^"]+)"')
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
    ".woff2": "font/woff2",
    ".txt": "text/plain; charset=utf-8",
}


def is_carried(name):
    """Whether a phone keeps a file of the built site: not the worker itself, the fleet's pages, nor what is for the host alone."""
    return name != WORKER and not languages.is_fleet(name) and not any(name.startswith(part) or name.endswith(part) for part in NOT_CARRIED)


def carried(dist):
    """The files a phone may carry, as paths below dist, in order."""
    names = (path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file())
    return sorted(name for name in names if is_carried(name))


def languages_of(names):
    """Which language each file belongs to, by name; None for what all of them use.

    A file in a language's folder is that language's; one at the root that another language has in its folder is the root's.
    """
    root, *others = data.languages()
    folders = {language: languages.folder(language) for language in others}
    known = set(names)

    def language(name):
        own = next((other for other, folder in folders.items() if name.startswith(folder)), None)
        return own or (root if any(folder + name in known for folder in folders.values()) else None)

    return {name: language(name) for name in names}


def digest(content):
    """The digest of a file as the worker's list has it: half of its SHA-256, in the letters of an address."""
    return base64.urlsafe_b64encode(hashlib.sha256(content).digest()[:16]).decode().rstrip("=")


def date():
    """The day of this version: of the last commit, or as SOURCE_DATE_EPOCH says, or today."""
    if epoch := os.environ.get("SOURCE_DATE_EPOCH"):
        return datetime.datetime.fromtimestamp(int(epoch), datetime.UTC).date().isoformat()
    try:
        asked = subprocess.run(["git", "log", "-1", "--format=%cs"], cwd=SOURCES, capture_output=True, encoding="utf-8")
    except OSError:
        asked = None
    return asked.stdout.strip() if asked and asked.returncode == 0 and asked.stdout.strip() else datetime.date.today().isoformat()


def version(release):
    """The digest of a whole release, in groups that can be read out: of all its files, and of the worker that carries them."""
    together = hashlib.sha256(script(release).encode()).hexdigest()
    return "-".join(together[start:start + 4] for start in range(0, 16, 4))


def write(dist):
    """Write version.json, the packs, and last the service worker with every file that is really there; returns {version, date}."""
    (dist / VERSION).unlink(missing_ok=True)
    release = {"languages": data.languages(), "types": TYPES, "headers": page_headers(dist), "files": rows(dist, carried(dist))}
    facts = {"version": version(release), "date": date()}
    _write(dist / VERSION, json.dumps(facts))
    files = sorted([*release["files"], *rows(dist, [VERSION])], key=lambda row: (row[0].endswith(".html"), row[0]))  # pages repeat data: 2 kB less in a pack
    packs = packing.write(dist, files)
    pack_of = {name: at for at, (_, _, names) in enumerate(packs) for name in names}
    listed = [[*row, pack_of[row[0]]] if row[0] in pack_of else row for row in files]
    _write(dist / WORKER, script({**facts, **release, "files": listed, "packs": [[name, digest(content), len(content)] for name, content, _ in packs]}))
    return facts


def rows(dist, names):
    """The worker's list: [name, digest, size, language] of a file."""
    spoken = languages_of(names)
    contents = ((name, (dist / name).read_bytes()) for name in names)
    return [[name, digest(content), len(content), spoken[name]] for name, content in contents]


def page_headers(dist):
    """The headers that the worker answers pages and scripts with: their own policy, as the pages have it, and that no other site frames them."""
    policy = html.unescape(POLICY.search((dist / "index.html").read_text(encoding="utf-8"))[1])
    return {"Content-Security-Policy": f"{policy}; frame-ancestors 'none'", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer"}


def script(release):
    """The worker as one script: the release, then its modules put together, since not every browser takes a service worker of many."""
    rows = json.dumps(release, separators=(",", ":")).replace('],["', '],\n["')
    return f"const RELEASE = {rows};\n{worker()}"


@functools.cache
def worker():
    """The worker's modules as one script."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(SOURCES, folder, dirs_exist_ok=True)
        bundle.build(folder, "--format=iife", "--outfile=made.js", "worker.js")
        return (pathlib.Path(folder) / "made.js").read_text(encoding="utf-8")


def _write(path, text):
    path.write_text(text, encoding="utf-8", newline="\n")
