"""What is wrong with a hosted site, in sentences: fetched as a phone fetches it, file by file."""
import collections
import concurrent.futures
import contextlib
import gzip
import json
import re
import urllib.error
import urllib.parse
import urllib.request
import zlib

import brotli

from site_src.publish.hosting import COMPRESSED, HEADERS, type_of
from site_src.publish.packing import FOLDER
from site_src.publish.release import digest

AT_ONCE = 8
PATIENCE_S = 30
NAMED = 3  # files of one fault that are named
RELEASE = re.compile(r"const RELEASE = (\{.*?\});\n", re.DOTALL)
UNKNOWN = "no/such/page/"  # an address that no site has


class Answer:
    """One answer of a host: status, headers and body, redirects not followed."""

    def __init__(self, url):
        request = urllib.request.Request(url, headers={"Accept-Encoding": "gzip, br", "User-Agent": "site check"})
        try:
            self._read(_opener.open(request, timeout=PATIENCE_S))
        except urllib.error.HTTPError as answer:
            self._read(answer)
        except OSError as fault:
            self.status, self.headers, self.body, self.fault = 0, {}, b"", getattr(fault, "reason", fault)

    def _read(self, response):
        with response:
            self.status, self.headers, self.fault = response.status, response.headers, None
            self.body = response.read()
        self.is_compressed = bool(self.headers.get("Content-Encoding"))
        self.body = self._unpacked(self.headers.get("Content-Encoding"))

    def _unpacked(self, kind):
        """The body as a browser reads it; as it came where it is not of the kind that the host says, which its digest then shows."""
        with contextlib.suppress(OSError, EOFError, zlib.error, brotli.error):
            return gzip.decompress(self.body) if kind == "gzip" else brotli.decompress(self.body) if kind == "br" else self.body
        return self.body


class _Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *args):
        return None


_opener = urllib.request.build_opener(_Stay)


def check(url):
    """The faults of the site at an address, a sentence each; none where all is well. The second value is what was looked at."""
    base = url if url.endswith("/") else f"{url}/"
    address = urllib.parse.urlsplit(base)
    if address.scheme not in ("http", "https") or not address.hostname:
        return [f"{url} is no address. Type the whole of it, such as https://pump.example.org/."], ""
    worker = Answer(base + "sw.js")
    if worker.status != 200:
        return [f"{base}sw.js: {_said(worker)}. Without it no phone can store the site. Is this the folder that dist/ was put into?"], ""
    found = RELEASE.search(worker.body.decode("utf-8", "replace"))
    if not found:
        return [f"{base}sw.js is not the worker of this site, or something on the way changed it."], ""
    release = json.loads(found[1])
    wrong = _wrong_type(worker, "sw.js")
    faults = [*_transport(address, base), *([f"sw.js {wrong}."] if wrong else []), *_headers(Answer(base), "the start page"), *_unknown(base, release), *_slash(base)]
    return [*faults, *_files(base, release)], f"version {release['version']} of {release['date']}, {len(release['files'])} files"


def _said(answer):
    return f"the host answers {answer.status}" if answer.status else f"no answer ({answer.fault})"


def _transport(address, base):
    if address.scheme == "http" and address.hostname not in ("localhost", "127.0.0.1"):
        yield "The site is on plain HTTP: a phone stores nothing from there. Serve it over HTTPS."
    if address.scheme == "https":
        plain = Answer(base.replace("https:", "http:", 1))
        if plain.status and not (300 <= plain.status < 400 and plain.headers.get("Location", "").startswith("https:")):
            yield f"{base.replace('https:', 'http:', 1)} answers {plain.status}: have it redirect to https."


def _wrong_type(answer, name):
    """What a file comes as and should not, without the name before it; None where its type is right."""
    got, wanted = answer.headers.get("Content-Type", "nothing").lower(), type_of(name)
    kinds = ("text/javascript", "application/javascript") if "javascript" in wanted else (wanted.partition(";")[0],)
    if wanted == "application/octet-stream":
        kinds += ("nothing",)  # what a browser makes of it
    return None if got.partition(";")[0].strip() in kinds else f"comes as {got}. It should be {wanted}"


def _headers(answer, place):
    for name, wanted in HEADERS.items():
        got = answer.headers.get(name)
        if name == "Content-Security-Policy":
            yield from _policy(got, place)
        elif got is None and name == "Strict-Transport-Security":
            continue  # said of HTTPS alone, and there many hosts set their own
        elif got is None:
            yield f"{place}: no {name}. It should be {wanted}."
        elif name == "Cache-Control" and not re.search(r"no-cache|no-store|max-age=0\b", got):
            yield f"{place}: Cache-Control is {got}: a phone would learn late of a new version. It should be {wanted}."
        elif name == "X-Content-Type-Options" and got.lower() != wanted:
            yield f"{place}: {name} is {got}. It should be {wanted}."


def _policy(got, place):
    if got is None or "frame-ancestors" not in got:
        yield f"{place}: no Content-Security-Policy with frame-ancestors 'none': another site could show this one inside its own."
    rules = {part.split()[0]: part for part in (got or "").split(";") if part.strip()}
    script = rules.get("script-src") or rules.get("default-src")
    if script and "'wasm-unsafe-eval'" not in script and "'unsafe-eval'" not in script:
        yield f"{place}: the host's Content-Security-Policy ({script.strip()}) stops the calculator. Send frame-ancestors 'none' alone: pages carry the rest."


def _unknown(base, release):
    answer = Answer(base + UNKNOWN)
    if answer.status != 404:
        yield f"An address that does not exist answers {answer.status}. It should answer 404 with 404.html."
    elif digest(answer.body) != {name: row for name, row, *_ in release["files"]}["404.html"]:
        yield "An address that does not exist answers with the host's own page. It should be 404.html."
    yield from _headers(answer, "the page for an unknown address")


def _slash(base):
    answer = Answer(base + "pressure")
    if not (300 <= answer.status < 400 and answer.headers.get("Location", "").endswith("/pressure/")):
        yield f"{base}pressure, without its last slash: {_said(answer)}. It should redirect to {base}pressure/."
    whole = Answer(base + "pressure/")
    if whole.status != 200:
        yield f"{base}pressure/: {_said(whole)}. A folder's address should answer with its index.html."


def _files(base, release):
    """Faults of the listed files; those that many share are said once."""
    together = collections.defaultdict(list)
    with concurrent.futures.ThreadPoolExecutor(AT_ONCE) as pool:
        for name, fault in pool.map(lambda row: (row[0], _fault(base, row)), [*release["files"], *release["packs"]]):
            if fault:
                together[fault].append(name)
    for fault, names in together.items():
        rest = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
        yield f"{', '.join(names[:NAMED])}{rest}: {fault}."


def _fault(base, row):
    name, wanted, size, *_ = row
    answer = Answer(base + urllib.parse.quote(name))
    if 300 <= answer.status < 400:
        # A host that drops index.html from addresses is known by its page, and does no harm.
        target = urllib.parse.urljoin(base + name, answer.headers.get("Location", ""))
        if not (name.endswith("index.html") and target == (base + name).removesuffix("index.html")):
            return f"redirected to {target}"
        answer = Answer(target)
    if answer.status != 200:
        return _said(answer)
    if len(answer.body) != size or digest(answer.body) != wanted:
        return "not the bytes that were built: changed on the way, or of another version"
    if not name.startswith(FOLDER) and (wrong := _wrong_type(answer, name)):  # what a pack comes as is no matter
        return f"it {wrong}"
    if size > 10_000 and name.endswith(COMPRESSED) and not answer.is_compressed:
        return "not compressed"
    return None
