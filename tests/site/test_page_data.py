"""What each built page hands its script is of the shape that tests/contracts gives for it."""
import fnmatch
import json
import re

import pytest

from site_src import bundle
from site_src.app import create_app
from site_src.content import catalogue, data, languages
from tests import contracts
from tests.site.pages import page_data

SHAPES = [name for name in contracts.tables() if name.endswith("page.json")]


def shape_of(address):
    """The shape of a page's data: that of its own address, or the one with a star in its place."""
    address = "water/foam/page.json" if address == "foam/page.json" else address
    fitting = [name for name in SHAPES if fnmatch.fnmatch(address, name)]
    return address if address in fitting else fitting[0] if fitting else None


@pytest.mark.parametrize("language", data.languages())
def test_every_page_is_of_its_shape(built, language):
    """Each page.json, in each language, has what its script reads and nothing else; no shape is of no page."""
    root = built / languages.folder(language)
    seen, drifts = set(), []
    for path in sorted(root.rglob("page.json")):
        address = path.relative_to(root).as_posix()
        if language == "en" and address.split("/")[0] in data.languages():
            continue
        shape = shape_of(address)
        assert shape, f"{address}: no shape in tests/contracts/pages.toml"
        seen.add(shape)
        drifts += [f"{address}: {drift}" for drift in contracts.drifts(page_data(path), shape)]
    assert drifts == []
    assert seen == set(SHAPES)


@pytest.mark.parametrize("language", data.languages())
def test_parts_that_pages_share_are_put_back(built, language):
    """What a page shares with others comes back to what its route wrote, to the letter; no shared part is there that no page names, or is in two files."""
    root = built / languages.folder(language)
    client = create_app(language=language).test_client()
    named, held = set(), []
    for path in sorted(root.rglob("page.json")):
        address = f"{languages.folder(language)}{path.relative_to(root).as_posix()}"
        if language != "en" or path.relative_to(root).parts[0] not in data.languages():
            assert page_data(path) == json.loads(client.get(f"/{address}").data), address
            for parts in json.loads(path.read_text(encoding="utf-8")).get("shared", {}).values():
                named |= set(parts.values())
    for path in [*root.glob("shared.json"), *root.glob("orders.json"), *(path for path in root.glob("*/shared.json") if language != "en" or path.parent.name not in data.languages())]:
        held += json.loads(path.read_text(encoding="utf-8"))
    assert sorted(held) == sorted(named) and len(held) > 50


def test_words_are_said_once(built):
    """No part of a page's data that is longer than a few lines stands in two files."""
    said = {}
    for path in [*built.rglob("page.json"), *built.rglob("shared.json"), *built.rglob("orders.json")]:
        content = json.loads(path.read_text(encoding="utf-8"))
        content.pop("shared", None)
        for key, value in content.items():
            for row in [value, *(value.values() if isinstance(value, dict) else [])]:
                if len(text := json.dumps(row, sort_keys=True)) > 400:
                    said.setdefault((path.relative_to(built).parts[0] == "fr", key if path.name == "page.json" else None, text), []).append(path)
    assert [places for places in said.values() if len(set(places)) > 1] == []


def test_pressure_brings_the_formulas_of_its_figures():
    """Each formula that a figure of the page names comes with it, and none that no figure names."""
    script = (bundle.STATIC / "js/pressure/figures.js").read_text(encoding="utf-8")
    named = {name for given in re.findall(r"[ \[]formula\(([^()]*)\)", script) for name in re.findall(r'"(\w+)"', given)} - {"smooth"}
    assert named == set(catalogue.FORMULAS)
