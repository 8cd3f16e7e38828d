"""Every page on its own: its links lead somewhere, and nothing in it runs or paints inline."""
import json
import pathlib
import posixpath
import re
import urllib.parse

import pytest

from site_src.content import data
from tests.site import pages

FILES = [f"{address}index.html" for address in pages.addresses()] + ["404.html"]
LINKS = ("href", "src")


@pytest.fixture(params=FILES)
def name(request):
    return request.param


@pytest.fixture
def page(built, name):
    return pages.Page(built / name)


def target(name, link):
    """The file and fragment that a link of a page leads to."""
    parts = urllib.parse.urlsplit(link)
    assert not parts.scheme and not parts.netloc, f"leads off the site: {link}"
    path = posixpath.normpath(posixpath.join("/", posixpath.dirname(name), parts.path)) if parts.path else f"/{name}"
    if parts.path.endswith("/"):
        path = posixpath.join(path, "index.html")
    return path.lstrip("/"), parts.fragment


def test_links_resolve(built, name, page):
    """Every link and source of the page is a file of the site, and every fragment is there."""
    for tag, attributes in page.tags:
        for link in (attributes[key] for key in LINKS if key in attributes):
            file, fragment = target(name, link)
            assert (built / file).is_file(), f"{tag} {link}"
            if fragment and not fragment.startswith("take="):  # a rig on its way, not a place
                assert fragment in pages.Page(built / file).ids, f"{tag} {link}"


def test_links_are_relative(name, page):
    """A page works under any path; only the page for an unknown address, served at any depth, is absolute."""
    links = [attributes[key] for _, attributes in page.tags for key in LINKS if key in attributes]
    assert links
    assert all(link.startswith("/") == (name == "404.html") for link in links)


def test_nothing_inline(page):
    """No script, style or handler stands in the page itself."""
    assert page.inline == []
    for tag, attributes in page.tags:
        assert tag != "style"
        assert tag != "script" or attributes.get("src"), attributes
        assert not [key for key in attributes if key == "style" or key.startswith("on")], (tag, attributes)


def test_icon_is_named(page):
    """Each page names its icon, so that no browser asks for one that is not there."""
    assert [attributes for tag, attributes in page.tags if tag == "link" and attributes.get("rel") == "icon"]


def test_scripts_import_what_is_there(built):
    """Every relative import of a script is a file of the site."""
    for script in (built / "static" / "js").rglob("*.js"):
        for link in re.findall(r'(?:from|import) "(\.[^"]+)"', script.read_text(encoding="utf-8")):
            assert (script.parent / link).resolve().is_file(), f"{script.name}: {link}"


@pytest.mark.parametrize("language", data.languages())
def test_manifest_icons_are_there(built, language):
    """The icons and the start address of each language's manifest are files of the site, and its scope is the whole site."""
    place = built / ("" if language == "en" else language)
    manifest = json.loads((place / "manifest.webmanifest").read_text(encoding="utf-8"))
    for icon in manifest["icons"]:
        assert (place / icon["src"]).is_file()
    assert (place / manifest["start_url"] / "index.html").is_file()
    assert (place / manifest["scope"]).resolve() == built.resolve()
