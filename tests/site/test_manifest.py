"""The web manifest: what a phone's home screen takes from it is there."""
import json
import struct

import pytest

from site_src.content import data, languages


@pytest.mark.parametrize("language", data.languages())
def test_every_address_is_there(built, language):
    """Start, shortcuts (Pressure, into pump, emergency), icons and screenshots lead to files of the site; pictures have the size they say."""
    folder = built / languages.folder(language)
    manifest = json.loads((folder / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert (manifest["lang"], manifest["id"], manifest["display"]) == (language, "./", "standalone")
    assert [shortcut["url"] for shortcut in manifest["shortcuts"]] == ["./pressure/", "./shift/scene/", "./danger/"]
    assert all(shortcut["name"] for shortcut in manifest["shortcuts"])
    for address in (manifest["start_url"], *(shortcut["url"] for shortcut in manifest["shortcuts"])):
        assert (folder / address / "index.html").is_file(), address
    assert len(manifest["screenshots"]) >= 3
    for picture in (*manifest["icons"], *manifest["screenshots"]):
        content = (folder / picture["src"]).read_bytes()
        assert "{}x{}".format(*struct.unpack(">II", content[16:24])) == picture["sizes"], picture  # the head of a PNG


def test_the_night_has_its_color_first(built):
    """A browser takes the first theme color whose condition holds: the one by night has to stand before the one of every other time."""
    text = (built / "index.html").read_text(encoding="utf-8")
    night, day = text.index('name="theme-color" content="#0e1113" media="(prefers-color-scheme: dark)" data-night'), text.index('name="theme-color" content="#ffffff">')
    assert night < day
