"""The small files of a release in packs, as the worker fetches them at an install: a few requests in place of two hundred, and half the bytes.

A pack is one stream of raw LZMA (from Python's own library; `worker/unpacking.js` reads it) of files of one language and kind, in the list's order.
A host needs to compress nothing for it. It is transport alone: the version goes by the files, and each is served by itself too. What the start
page asks for is in no pack, since a phone that installs has it already. A pack has at most MOST bytes,
three tenths more than the interpreter has: halved, the French text is 27 kB larger; in packs of 64 kB an install is 26 kB larger, and no more phones of
tests/bench/phones.py end the day with it.
"""
import collections
import functools
import lzma
import re

FOLDER = "packs/"
MOST = 262_000
KINDS = {"html": "text", "json": "text", "js": "js"}  # by a file's ending; pages repeat what their data says
FILTERS = ({"id": lzma.FILTER_LZMA1, "preset": 9 | lzma.PRESET_EXTREME, "lc": 3, "lp": 0, "pb": 0},)
ASKED = re.compile(r'<(?:link|script)\b[^>]* (?:href|src)="([^"]+)"')
ENGINE = {"calc.bin", "static/js/shared/engine_worker.js", "static/vendor/micropython/micropython.wasm"}  # asked for by a script of it
EACH_TIME = "version.json"  # another with every version


@functools.lru_cache(256)
def packed(content):
    return lzma.compress(content, format=lzma.FORMAT_RAW, filters=FILTERS)


def packs(dist, rows):
    """The packs of a release's files, of (name, digest, size, language): [(name of a pack, its bytes, names in it), ...]."""
    apart = {*ENGINE, EACH_TIME, *ASKED.findall((dist / "index.html").read_text(encoding="utf-8"))}
    groups = collections.defaultdict(list)
    for name, _, _, language in rows:
        if name not in apart:
            groups[language or "all", KINDS.get(name.rpartition(".")[2], "rest")].append(name)
    made = []
    for (language, kind), names in sorted(groups.items()):
        parts = split([(name, (dist / name).read_bytes()) for name in names])
        made += [(f"{FOLDER}{language}-{kind}-{at}.pack", content, inside) for at, (content, inside) in enumerate(parts, 1) if len(inside) > 1]
    return made


def write(dist, rows):
    """Write the packs in place of what there was, and return them."""
    made = packs(dist, rows)
    (dist / FOLDER).mkdir(exist_ok=True)
    for path in (dist / FOLDER).iterdir():
        path.unlink()
    for name, content, _ in made:
        (dist / name).write_bytes(content)
    return made


def split(files):
    """The packs of some files, [(bytes, names), ...]: in halves while one is too long."""
    content = packed(b"".join(body for _, body in files))
    if len(content) <= MOST or len(files) == 1:
        return [(content, [name for name, _ in files])]
    half = sum(len(body) for _, body in files) / 2
    at = passed = 0
    while at < len(files) - 1 and passed < half:
        passed += len(files[at][1])
        at += 1
    return [*split(files[:at]), *split(files[at:])]
