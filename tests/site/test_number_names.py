"""Sizes stand as on a hose: 1¾, 2½; where the face has the fraction, no page writes it with a stroke."""
import re

import pytest

from site_src.content import data
from tests.site import pages

STROKE = re.compile(r"(?<![\d/.])(?:\d[ \u00a0])?(?:1/4|1/2|3/4)(?![\d/])")
ENGLISH = re.compile(r"<(script|style)\b.*?</\1>|<span lang=\"en\">.*?</span>|<[^>]+>", re.DOTALL)


@pytest.mark.parametrize("address", pages.addresses())
def test_no_size_has_a_stroke(built, address):
    """No page, in any language, shows 1 3/4 for 1¾; a source is quoted as it is."""
    for folder in ("", "fr/"):
        path = built / folder / address / "index.html"
        text = ENGLISH.sub(" ", path.read_text(encoding="utf-8")) if path.exists() else ""
        assert [text[max(0, hit.start() - 40):hit.end() + 10] for hit in STROKE.finditer(text) if "Source" not in text[text.rfind("\n", 0, hit.start()):hit.start()]] == []


@pytest.mark.parametrize("language", data.languages())
def test_no_name_of_hose_or_tip_has_a_stroke(language):
    """Names of hose, tips and choices have the fraction as one sign; sixteenths and eighths, which the face lacks, their stroke."""
    names = [*data.words("hoses", language)["hose"].values(), *(row["label"] for row in data.load("nozzles")["tip"])]
    assert [name for name in names if STROKE.search(name)] == []
    assert {"1¾", "1 1/8", "15/16"} <= set(names)
