"""No style is of nothing: each class that a style sheet names stands on some page, or can."""
import pathlib
import re

import pytest

SOURCES = pathlib.Path(__file__).resolve().parents[2] / "site_src"
MARKUP = [*(SOURCES / "templates").rglob("*.html"), *(SOURCES / "static/js").rglob("*.js")]
# a class made of a name and a code, such as `sheet-${block.code}` for sheet-set: the codes that can follow
MADE = re.compile(r"class=\"[^\"]*?\b([a-z][a-z-]*-)(?:\$\{|\{\{)")


def named(text):
    """The classes that a style sheet names."""
    return set(re.findall(r"\.([a-zA-Z][\w-]*)", re.sub(r"/\*.*?\*/|url\([^)]*\)", "", text, flags=re.DOTALL)))


@pytest.fixture(scope="module")
def markup():
    return "\n".join(path.read_text(encoding="utf-8") for path in MARKUP)


@pytest.mark.parametrize("path", sorted((SOURCES / "static/css").glob("*.css")), ids=lambda path: path.name)
def test_every_style_is_of_something(markup, path):
    """A class is written out somewhere, or begins as one that a script or template makes from a code."""
    made = set(MADE.findall(markup))
    names = named(path.read_text(encoding="utf-8"))
    assert [name for name in sorted(names)
            if not re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", markup) and not name.startswith(tuple(made))] == []
