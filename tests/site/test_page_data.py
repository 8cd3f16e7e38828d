"""What each built page hands its script is of the shape that tests/contracts gives for it."""
import fnmatch
import json

import pytest

from site_src.content import data, languages
from tests import contracts

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
        drifts += [f"{address}: {drift}" for drift in contracts.drifts(json.loads(path.read_text(encoding="utf-8")), shape)]
    assert drifts == []
    assert seen == set(SHAPES)
