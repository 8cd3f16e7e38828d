"""All styles in one file: a page's own sheets apply to it alone, whatever another page calls its things."""
import re

import pytest

from site_src import styles
from tests.site import pages

SHEETS = {path.stem for path in styles.CSS.glob("*.css")}
APART = {"night", "noscript", "numbered", "paper-a4", "paper-letter", "paper-pocket", "upright-a4", "upright-letter"}


@pytest.fixture(scope="module")
def sheet(built):
    return (built / "static/css/site.css").read_text(encoding="utf-8")


def test_every_sheet_is_in_it_or_apart(built):
    """Each source is part of the one file, or a file of its own in the site; none is both."""
    assert SHEETS == {*styles.ALWAYS, *styles.ORDER, "print"} | APART
    assert {path.stem for path in (built / "static/css").glob("*.css")} == APART | {"site"}


def test_each_page_names_its_sheets(built):
    """Every page loads the one file, and names no sheet that is not in it."""
    named = set()
    for path in built.rglob("*.html"):
        tags = pages.Page(path).tags
        assert [given["href"] for tag, given in tags if tag == "link" and given.get("rel") == "stylesheet"][0].endswith("static/css/site.css"), path
        named |= set(dict(tags).get("html", {}).get("data-css", "").split())
    assert named == set(styles.ORDER)


@pytest.mark.parametrize("name", styles.ORDER)
def test_a_sheet_applies_to_its_pages_alone(sheet, name):
    """Each class that a sheet alone names stands in the one file under that sheet's name, and nowhere without it."""
    others = "".join(styles.source(other) for other in (*styles.ALWAYS, *styles.ORDER, "print") if other != name)
    classes = set(re.findall(r"\.([a-z][\w-]*)", re.sub(r"/\*.*?\*/|url\([^)]*\)", "", styles.source(name), flags=re.DOTALL)))
    own = {one for one in classes if not re.search(rf"\.{one}(?![\w-])", others)}
    selectors = [selector for rule in re.findall(r"[^{}]+(?=\{)", sheet) for selector in [rule]]
    for one in own:
        holding = [selector for selector in selectors if re.search(rf"\.{one}(?![\w-])", selector)]
        assert holding and all(f":where([data-css~={name}])" in selector for selector in holding), one


def test_print_outweighs_night(sheet):
    """On paper the colors are those of paper, by night too: the root's rule there weighs more than night.css's."""
    assert re.search(r"@media print\{.*:root:root\{[^}]*--ground:#fff", sheet, re.DOTALL)
