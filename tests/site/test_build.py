"""What the build writes: the same bytes each time, all of it listed for the phone, nothing unlisted."""
import base64
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import warnings

import flask_frozen
import pytest

import build
from site_src import app, bundle
from site_src.content import data, fleet, languages
from site_src.publish import release
from tests.site import pages

VENDOR = build.ROOT / "site_src" / "static" / "vendor"


def contents(dist):
    """Every file of a built site by its address."""
    return {path.relative_to(dist).as_posix(): path.read_bytes() for path in dist.rglob("*") if path.is_file()}


def release_of(dist):
    """What the built worker was given: version, languages, headers, files as [name, digest, size, language, pack], and packs as [name, digest, size]."""
    return json.loads(re.search(r"const RELEASE = (\{.*?\});\n", (dist / "sw.js").read_text(encoding="utf-8"), re.DOTALL)[1])


@pytest.fixture(scope="module")
def listed(built):
    """The worker's list, by name: [digest, size, language], the last None for what all languages use."""
    rows = release_of(built)["files"]
    assert len({name for name, *_ in rows}) == len(rows)
    return {name: (digest, size, language) for name, digest, size, language, *_ in rows}


def test_same_sources_give_the_same_bytes(built, tmp_path):
    """A second build, by another process that hashes otherwise and reads files as ASCII by itself, writes the same files byte for byte."""
    code = f"import build, pathlib; build.build(dist=pathlib.Path({str(tmp_path / 'again')!r}))"
    environment = {**os.environ, "PYTHONHASHSEED": "1", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    subprocess.run([sys.executable, "-c", code], cwd=build.ROOT, env=environment, check=True)
    first, again = contents(built), contents(tmp_path / "again")
    assert sorted(first) == sorted(again)
    assert [name for name in first if first[name] != again[name]] == []


def test_the_list_is_the_site(built, listed):
    """The worker lists every file but itself, the fleet's pages and what is for the host, and nothing that is not there."""
    for_host = ("_headers", "static/screens/", "packs/")
    assert sorted(listed) == sorted(name for name in contents(built) if name != "sw.js" and not languages.is_fleet(name) and not name.startswith(for_host))


def test_the_list_names_its_content(built, listed):
    """Each entry carries the size and half of the SHA-256 of the file that is really there."""
    for name, content in contents(built).items():
        if name in listed:
            sha256 = base64.urlsafe_b64encode(hashlib.sha256(content).digest()[:16]).decode().rstrip("=")
            assert listed[name][:2] == (sha256, len(content)), name


def test_each_language_has_its_files(built, listed):
    """Of each language the list has every page and its data, alike in number; scripts, calc and styles belong to all of them."""
    of = {language: {name for name, row in listed.items() if row[2] == language} for language in [*data.languages(), None]}
    assert {f"fr/{name}" for name in of["en"]} == of["fr"]
    pages_of_one = [f"{address}index.html" for address in pages.addresses() if not address.startswith("rigs/")]
    assert set(pages_of_one) <= of["en"]
    assert not [name for name in of[None] if name.endswith(".html") and name != "404.html"]
    assert {"calc.bin", "404.html", "version.json", "static/vendor/micropython/micropython.wasm"} <= of[None]


def test_a_version_is_of_every_byte(built, tmp_path):
    """The build returns what the phone shows: one digest of everything that a phone carries, another where one byte is, the same where none is."""
    dist = shutil.copytree(built, tmp_path / "dist")
    before = release.write(dist)
    assert json.loads((dist / "version.json").read_text(encoding="utf-8")) == before == {name: release_of(dist)[name] for name in ("version", "date")}
    assert re.fullmatch(r"([0-9a-f]{4}-){3}[0-9a-f]{4}", before["version"]) and re.fullmatch(r"\d{4}-\d\d-\d\d", before["date"])
    (dist / "cautions/index.html").write_bytes((dist / "cautions/index.html").read_bytes() + b" ")
    assert release.write(dist)["version"] != before["version"]
    shutil.copy(built / "cautions/index.html", dist / "cautions/index.html")
    assert release.write(dist) == before


def test_the_worker_answers_pages_with_their_own_policy(built):
    """The policy of the pages, that none may frame them, and the type of every file there is are in the worker's hands."""
    given = release_of(built)
    page = (built / "index.html").read_text(encoding="utf-8")
    policy, framing = given["headers"]["Content-Security-Policy"].rsplit("; ", 1)
    assert f'content="{policy}"' in page and framing == "frame-ancestors 'none'"
    assert {path.suffix for path in built.rglob("*") if path.suffix} - set(given["types"]) <= {".bin", ".pack"}


def test_every_page_is_a_route_and_every_route_a_page(built):
    """The pages of the folder are those of the routes, and the page for an unknown address."""
    written = {path.relative_to(built).as_posix() for path in built.rglob("*.html")}
    assert written == {f"{folder}{address}index.html" for folder in map(languages.folder, data.languages()) for address in pages.addresses()} | {"404.html"}


@pytest.mark.parametrize("package", data.load("vendor")["package"], ids=lambda package: package["folder"])
def test_vendored_files_are_unmodified(package):
    """Each third-party file has the digest that was written down for it, in the sources and so in the site."""
    for file in package["file"]:
        content = (VENDOR / package["folder"] / file["name"]).read_bytes()
        assert hashlib.sha256(content).hexdigest() == file["sha256"], file["name"]


def test_nothing_unlisted_is_vendored(built):
    """Every file under vendor/ stands in the list, in the site but for what is in its bundles, and every package of the list has its licence there."""
    packages = data.load("vendor")["package"]
    listed = {f"{package['folder']}/{file['name']}" for package in packages for file in package["file"]}
    bundled = {name.removeprefix("vendor/") for name in bundle.parts() if name.startswith("vendor/")}
    for folder, held in ((VENDOR, listed), (built / "static" / "vendor", listed - bundled)):
        assert {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()} == held
    assert not {name for name in bundled if name.endswith("LICENSE")}
    assert {f"{package['folder']}/LICENSE" for package in packages} <= listed


def test_a_warning_of_the_freezer_stops_the_build(monkeypatch, tmp_path):
    """A route whose file would be served with the wrong type is refused, not written."""
    def create_app(*given):
        made = app.create_app(*given)
        made.add_url_rule("/slip", "slip", lambda: "a page without an ending")
        return made

    monkeypatch.setattr(build, "create_app", create_app)
    with warnings.catch_warnings(), pytest.raises(flask_frozen.MimetypeMismatchWarning):
        build.build(dist=tmp_path / "dist")


def fails_midway(*given):
    """The app, with one page that cannot be made."""
    made = app.create_app(*given)
    made.add_url_rule("/zz/", "zz", lambda: 1 / 0)
    return made


def no_rigs(*given):
    raise fleet.FleetError("no rig")


def is_stopped(*given):
    raise KeyboardInterrupt


@pytest.mark.parametrize(
    ("part", "failing", "error"),
    [
        ("create_app", no_rigs, fleet.FleetError), ("create_app", fails_midway, ValueError), ("create_app", is_stopped, KeyboardInterrupt),
        ("write_worker", is_stopped, KeyboardInterrupt),
    ],
)
def test_a_failed_build_leaves_the_last_one(monkeypatch, tmp_path, part, failing, error):
    """Whatever stops a build, and wherever, the last good site stands as it was, and nothing is left beside it."""
    dist = tmp_path / "dist"
    dist.mkdir()
    (dist / "index.html").write_text("the last good one", encoding="utf-8")
    monkeypatch.setattr(build, part, failing)
    with pytest.raises(error):
        build.build(dist=dist)
    assert contents(tmp_path) == {"dist/index.html": b"the last good one"}
    assert [path.name for path in tmp_path.iterdir()] == ["dist"]


def test_a_build_replaces_the_last_one(monkeypatch, tmp_path):
    """What the last build wrote and this one does not is gone; a link to a folder goes on leading there."""
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "old.html").write_text("old", encoding="utf-8")
    (tmp_path / "dist").symlink_to("there")
    monkeypatch.setattr(build, "freeze", lambda made, *given: (made / "index.html").write_text("new", encoding="utf-8"))
    monkeypatch.setattr(build, "write_worker", lambda made: None)
    build.build(dist=tmp_path / "dist")
    assert contents(tmp_path / "there") == {"index.html": b"new"}
    assert (tmp_path / "dist").is_symlink() and sorted(path.name for path in tmp_path.iterdir()) == ["dist", "there"]
