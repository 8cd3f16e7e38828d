"""All styles in two files: a page's own sheets apply to it alone, whatever another page calls its things."""
import re

import pytest

from site_src import styles
from tests.site import pages

SHEETS = {path.stem for path in styles.CSS.glob("*.css")}
APART = {"night", "noscript", "numbered", "paper-a4", "paper-letter", "paper-pocket", "upright-a4", "upright-letter"}


@pytest.fixture(scope="module")
def sheets(built):
    return [(built / f"static/css/{name}.css").read_text(encoding="utf-8") for name in ("site", "further")]


def test_every_sheet_is_in_them_or_apart(built):
    """Each source is part of the two files, or a file of its own in the site; none is both."""
    assert SHEETS == {*styles.ALWAYS, *styles.ORDER, "print"} | APART
    assert {path.stem for path in (built / "static/css").glob("*.css")} == APART | {"site", "further"}


def test_each_page_names_its_sheets(built):
    """Every page loads the first file, the other after it where it names a sheet of it, and names no sheet that is in neither."""
    named = set()
    for path in built.rglob("*.html"):
        tags = pages.Page(path).tags
        own = set(dict(tags).get("html", {}).get("data-css", "").split())
        loaded = [given["href"].rpartition("/")[2] for tag, given in tags if tag == "link" and given.get("rel") == "stylesheet"]
        assert loaded[0] == "site.css" and ("further.css" in loaded[1:2]) == bool(own - set(styles.FIRST)), path
        named |= own
    assert named == set(styles.ORDER)


@pytest.mark.parametrize("name", styles.ORDER)
def test_a_sheet_applies_to_its_pages_alone(sheets, name):
    """Each class that a sheet alone names stands in a file under that sheet's name, and nowhere without it."""
    others = "".join(styles.source(other) for other in (*styles.ALWAYS, *styles.ORDER, "print") if other != name)
    classes = set(re.findall(r"\.([a-z][\w-]*)", re.sub(r"/\*.*?\*/|url\([^)]*\)", "", styles.source(name), flags=re.DOTALL)))
    own = {one for one in classes if not re.search(rf"\.{one}(?![\w-])", others)}
    selectors = re.findall(r"[^{}]+(?=\{)", "".join(sheets))
    for one in own:
        holding = [selector for selector in selectors if re.search(rf"\.{one}(?![\w-])", selector)]
        assert holding and all(f":where([data-css~={name}])" in selector for selector in holding), one


def test_print_outweighs_night(sheets):
    """On paper the colors are those of paper, by night too: the root's rule there weighs more than night.css's, and comes last in both files."""
    for sheet in sheets:
        assert re.search(r"@media print\{.*:root:root\{[^}]*--ground:#fff", sheet[-3000:], re.DOTALL)
