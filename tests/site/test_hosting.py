"""What a host is to send: this machine's server sends it, the examples ask for it, and the check says where a host does not."""
import gzip
import pathlib
import re
import shutil
import threading
import urllib.error
import urllib.request

import brotli
import pytest

import build
from site_src.publish import check, hosting, release
from site_src.publish.release import TYPES
from tests import slow_host
from tests.slow_host import Link, SlowHandler, slow_server

HOSTS = build.ROOT / "site_src" / "hosts"
README = (build.ROOT / "README.md").read_text(encoding="utf-8")


def serving(request, server):
    """The address of a server that runs until its test ends."""
    threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True).start()
    request.addfinalizer(server.server_close)
    request.addfinalizer(server.shutdown)
    return f"http://127.0.0.1:{server.server_port}/"


@pytest.mark.parametrize("address", ["", "pressure/", "static/vendor/micropython/micropython.wasm", "no/such/page/"])
def test_the_server_of_this_machine_sends_the_headers(request, built, address):
    """On pages, scripts and errors alike, all but the one for HTTPS, which it does not speak."""
    base = serving(request, build.server(built, 0))
    try:
        answer = urllib.request.urlopen(base + address)
    except urllib.error.HTTPError as error:
        answer = error
    with answer:
        assert {name: answer.headers[name] for name in hosting.HEADERS if name != "Strict-Transport-Security"} == {
            name: value for name, value in hosting.HEADERS.items() if name != "Strict-Transport-Security"}


@pytest.mark.parametrize("name", ["nginx.conf", "Caddyfile", "htaccess"])
def test_the_examples_have_every_header_and_type(name):
    """Each example sends README's headers, on errors too, has every type, compresses, and answers unknown addresses with the site's page."""
    text = (HOSTS / name).read_text(encoding="utf-8")
    for header, value in hosting.HEADERS.items():
        assert re.search(rf'{header} "{re.escape(value)}"', text), header
    for ending, kind in TYPES.items():
        assert kind.partition(";")[0] in text and re.search(rf"\b{ending[1:]}\b", text), ending
    assert re.search(r"404", text) and re.search("always|defer", text) and re.search("gzip|DEFLATE", text)
    assert re.search(r"gzip_static on|precompressed .*\bgzip\b|\.gz -f", text) and re.search(r"brotli_static on|precompressed .*\bbr\b|\.br -f", text)


def test_what_lies_beside_the_files_unpacks_to_them(built, tmp_path):
    """A .gz and a .br beside each file that a host compresses, of the same bytes; the phone carries none of them."""
    dist = shutil.copytree(built, tmp_path / "dist")
    hosting.compress(dist, (".gz", ".br"))
    worth = [path for path in built.rglob("*") if path.suffix in hosting.COMPRESSED and path.stat().st_size >= hosting.LEAST_BYTES]
    beside = sorted(path.relative_to(dist) for path in dist.rglob("*") if path.suffix in (".gz", ".br"))
    assert beside == sorted(pathlib.Path(f"{path.relative_to(built)}{ending}") for path in worth for ending in (".gz", ".br"))
    for name, unpack in ((".gz", gzip.decompress), (".br", brotli.decompress)):
        assert all(unpack((dist / f"{path.relative_to(built)}{name}").read_bytes()) == path.read_bytes() for path in worth)
    assert release.carried(dist) == release.carried(built)


def test_readme_has_the_headers():
    """README's table is the one that the server and the check go by."""
    for name, value in hosting.HEADERS.items():
        assert f"| {name} | `{value}` |" in README, name


def test_the_headers_file_of_the_build(built):
    """`_headers` has every header for every address, and the types that hosts get wrong; the phone does not carry it."""
    text = (built / "_headers").read_text(encoding="utf-8")
    assert all(f"  {name}: {value}\n" in text for name, value in hosting.HEADERS.items())
    assert "/*.mjs\n  Content-Type: text/javascript; charset=utf-8\n" in text and "/*.wasm\n  Content-Type: application/wasm\n" in text
    assert '"_headers"' not in (built / "sw.js").read_text(encoding="utf-8")


def faults(request, dist, handler=SlowHandler):
    server = slow_server(dist, Link())
    server.RequestHandlerClass = lambda *given, **named: type("Changed", (handler,), {"link": Link()})(*given, directory=str(dist), **named)
    return check.check(serving(request, server))[0]


def test_a_right_host_has_nothing_wrong(request, built):
    """A host that sends all it should is passed, and what was looked at is said."""
    server = slow_server(built, Link())
    found, seen = check.check(serving(request, server))
    assert found == [] and re.fullmatch(r"version [0-9a-f-]{19} of \d{4}-\d\d-\d\d, \d+ files", seen)


class Brotli(SlowHandler):
    """Sends what lies beside a file as Brotli."""

    kind = "br"


def test_a_host_that_sends_brotli_has_nothing_wrong(request, built):
    assert faults(request, built, Brotli) == []


def test_a_br_that_is_not_of_its_file(request, built, monkeypatch):
    """One that an earlier version left there, one that was cut off, and one that is none: each is named."""
    broken = {"calc.bin": lambda content: brotli.compress(b"another"), "common.js": lambda content: content[:-100], "site.css": lambda content: b"none"}
    right = slow_host.packed
    monkeypatch.setattr(slow_host, "packed", lambda path, *more: broken.get(pathlib.Path(path).name, lambda content: content)(right(path, *more)))
    assert faults(request, built, Brotli) == [
        "calc.bin, static/css/site.css, static/js/shared/common.js: not the bytes that were built: changed on the way, or of another version."]


class Typed(SlowHandler):
    """The commonest fault: a table of types that is older than `.wasm`."""

    extensions_map = {**TYPES, ".wasm": "application/octet-stream"}


class Bare(SlowHandler):
    def send_header(self, name, value):
        if name not in hosting.HEADERS:
            super().send_header(name, value)


class Blanket(SlowHandler):
    def send_header(self, name, value):
        super().send_header(name, "default-src 'self'; frame-ancestors 'none'" if name == "Content-Security-Policy" else value)


class Soft(SlowHandler):
    """Every unknown address is answered with the start page."""

    def send_error(self, code, message=None, explain=None):
        self.path = "/index.html"
        self.do_GET()


class Plain(SlowHandler):
    def send_head(self):
        del self.headers["Accept-Encoding"]
        return super().send_head()


class Late(SlowHandler):
    def send_header(self, name, value):
        super().send_header(name, "max-age=86400" if name == "Cache-Control" else value)


class Moved(SlowHandler):
    def do_GET(self):
        if self.path != "/calc.bin":
            return super().do_GET()
        self.send_response(302)
        self.send_header("Location", "/login")
        self.send_header("Content-Length", "0")
        self.end_headers()


@pytest.mark.parametrize(("handler", "sentences"), [
    (Typed, ["static/vendor/micropython/micropython.wasm: it comes as application/octet-stream. It should be application/wasm."]),
    (Bare, ["the start page: no X-Content-Type-Options. It should be nosniff.", "the page for an unknown address: no Referrer-Policy.", "another site could show this one inside its own"]),
    (Blanket, ["the start page: the host's Content-Security-Policy (default-src 'self') stops the calculator."]),
    (Soft, ["An address that does not exist answers 200. It should answer 404 with 404.html."]),
    (Plain, ["more: not compressed."]),
    (Late, ["the start page: Cache-Control is max-age=86400: a phone would learn late of a new version."]),
    (Moved, ["calc.bin: redirected to http://127.0.0.1"]),
])
def test_what_is_wrong_is_said(request, built, handler, sentences):
    """Each fault of a host in a sentence that names the place, what came and what should."""
    said = "\n".join(faults(request, built, handler))
    for sentence in sentences:
        assert sentence in said


def test_files_that_are_not_those_of_the_build(request, built, tmp_path):
    """A file that is not there, one that was altered, and a host without the site at all."""
    dist = shutil.copytree(built, tmp_path / "dist")
    (dist / "cautions/index.html").unlink()
    (dist / "sources/index.html").write_text("another", encoding="utf-8")
    assert sorted(faults(request, dist)) == [
        "cautions/index.html: the host answers 404.", "sources/index.html: not the bytes that were built: changed on the way, or of another version."]
    (dist / "sw.js").unlink()
    [only] = faults(request, dist)
    assert "sw.js: the host answers 404. Without it no phone can store the site." in only


def test_no_address(monkeypatch, capsys):
    """What is no address is refused, and the command ends in status 1."""
    monkeypatch.setattr("sys.argv", ["build.py", "--check", "pump"])
    with pytest.raises(SystemExit) as end:
        build.main()
    assert end.value.code == 1 and "pump is no address. Type the whole of it" in capsys.readouterr().out


def test_a_request_between_two_builds_waits(request, built, tmp_path):
    """While a build puts its site in place of the last one, nobody is told that a page is not there."""
    dist = tmp_path / "dist"
    base = serving(request, build.server(dist, 0))
    swap = threading.Timer(0.3, shutil.copytree, (built, dist.with_name("made")))
    swap.start()
    threading.Timer(0.6, lambda: (swap.join(), dist.with_name("made").rename(dist))).start()
    with urllib.request.urlopen(f"{base}version.json") as answer:
        assert answer.read() == (built / "version.json").read_bytes()
