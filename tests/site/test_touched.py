"""Terms of the trade are links where they stand in baked sentences, each once a sentence, to a term that there is."""
import re

import pytest

from site_src.content import data, touched
from tests.site import pages

TERMS = {
    "plate": {"name": "Plate", "forms": "rating plate|pump plate", "says": "Metal, with \"figures\"."},
    "prime": {"name": "Prime", "forms": "prime", "says": "Full of water."},
    "lost": {"name": "Lost prime", "forms": "lost prime", "says": "Air came in."},
}
MARKED = ["help/panel/", "help/water/", "help/why/", "diagnose/read/", "why/", "shift/scene/read/"]


def links(text):
    return re.findall(r'<a class="term" href="t#(\w+)"[^>]*>([^<]*)</a>', text)


@pytest.mark.parametrize(("text", "said"), [
    ("Read the rating plate, then the pump plate.", [("plate", "rating plate")]),
    ("Prime it.", [("prime", "Prime")]),
    ("It primes; a sub-prime loan.", []),
    ("It has lost prime: prime it.", [("lost", "lost prime"), ("prime", "prime")]),
    ("", []),
])
def test_a_sentence(text, said):
    """Whole words only, the longest form first, once each, in the letters they stand in."""
    assert links(touched.marked(text, TERMS, "t")) == said


def test_letters_of_html_stay_letters():
    """What stands about a term, and what it says, is escaped."""
    text = touched.marked("A < B, rating plate & prime", TERMS, "t")
    assert "A &lt; B, " in text and "&amp;" in text and "&#34;figures&#34;" in text


@pytest.mark.parametrize("language", data.languages())
def test_no_form_is_of_two_terms(language):
    """A touched word opens one term."""
    forms = [form.lower() for term in data.load(f"words/{language}/terms")["term"].values() for form in term["forms"].split("|")]
    assert len(forms) == len(set(forms))


@pytest.mark.parametrize("folder", ["", "fr/"])
@pytest.mark.parametrize("address", MARKED)
def test_on_its_pages(built, folder, address):
    """A page's terms lead to terms that there are, say what those say, and the sheet for them is on the page."""
    page = pages.Page(built / folder / address / "index.html")
    terms = data.load(f"words/{'fr' if folder else 'en'}/terms")["term"]
    touches = [attributes for tag, attributes in page.tags if tag == "a" and attributes.get("class") == "term"]
    assert len(touches) >= 1
    assert [terms[link["href"].split("#")[1]]["says"] for link in touches] == [link["data-says"] for link in touches]
    assert {link["href"].split("#")[0].rsplit("help/", 1)[-1].replace("../", "") for link in touches} <= {"terms/index.html"}
    assert [attributes["id"] for tag, attributes in page.tags if tag == "dialog"] == ["term"]
