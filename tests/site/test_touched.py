"""Terms of the trade are links where they stand in baked sentences, each once a sentence, to a term that there is."""
import re

import pytest

from site_src.content import data, touched
from site_src.routes import help
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
    """What stands about a term is escaped."""
    text = touched.marked("A < B, rating plate & prime", TERMS, "t")
    assert "A &lt; B, " in text and "&amp;" in text


@pytest.mark.parametrize("language", data.languages())
def test_no_form_is_of_two_terms(language):
    """A touched word opens one term."""
    forms = [form.lower() for term in data.load(f"words/{language}/terms")["term"].values() for form in term["forms"].split("|")]
    assert len(forms) == len(set(forms))


@pytest.mark.parametrize("folder", ["", "fr/"])
@pytest.mark.parametrize("address", MARKED)
def test_on_its_pages(built, folder, address):
    """A page's terms lead to terms that there are."""
    page = pages.Page(built / folder / address / "index.html")
    terms = data.load(f"words/{'fr' if folder else 'en'}/terms")["term"]
    touches = [attributes for tag, attributes in page.tags if tag == "a" and attributes.get("class") == "term"]
    assert len(touches) >= 1
    assert {link["href"].split("#")[1] for link in touches} <= set(terms)
    assert {link["href"].split("#")[0].rsplit("help/", 1)[-1].replace("../", "") for link in touches} <= {"terms/index.html"}


@pytest.mark.parametrize("folder", ["", "fr/"])
def test_a_place_holds_what_its_sheet_needs(built, folder):
    """The page of terms has each term's forms at its place, and it and each topic of help the word that closes a sheet."""
    terms = data.load(f"words/{'fr' if folder else 'en'}/terms")
    rows = {attributes["id"]: attributes["data-forms"] for _, attributes in pages.Page(built / folder / "help/terms/index.html").tags if "data-forms" in attributes}
    assert rows == {name: term["forms"] for name, term in terms["term"].items()}
    for address in ("terms", *help.TOPICS):
        assert [attributes["data-close"] for _, attributes in pages.Page(built / folder / "help" / address / "index.html").tags if "data-close" in attributes] == [terms["terms"]["close"]]


def test_each_step_is_about_a_question():
    """The "?" of a card under way opens a question that there is, of each card, and of steps that there are, each in one row."""
    about = data.load("shift")["about"]
    assert set(about["card"]) == {card["id"] for card in data.cards()}
    for topic, question in (name.split(".") for name in [*about["card"].values(), *about["question"]]):
        assert question in data.load(f"words/en/help/{topic}")
    listed = [step for steps in about["question"].values() for step in steps]
    assert len(listed) == len(set(listed)) and set(listed) <= set(data.steps())
