"""Help: the same plain questions in every language, each with its answer, its source and its way on."""
import posixpath
import re

import pytest

from site_src.content import data
from site_src.routes import help
from tests.site import pages

LANGUAGES = [(language, "" if language == "en" else f"{language}/") for language in data.languages()]
BASES = set(data.words("site")["basis"])
ROWS = {topic: data.load(f"help/{topic}")["question"] for topic in help.TOPICS}
QUESTIONS = [pytest.param(topic, row, id=f"{topic}-{row['id']}") for topic, rows in ROWS.items() for row in rows]
MOST_WORDS = 60
OWN = {  # a page of each topic, and the help it leads to
    "": "", "pressure/": "pressure/", "water/": "water/", "water/draft/": "water/", "foam/": "water/", "shift/": "shift/",
    "shift/scene/read/": "shift/", "diagnose/": "diagnose/", "diagnose/leak/": "diagnose/", "rig/recovery/": "diagnose/",
    "rig/": "rig/", "rig/card/": "rig/", "rigs/": "rig/", "test/": "test/", "test/run/": "test/", "tables/": "tables/",
    "tables/US/friction/": "tables/", "log/": "log/", "practice/": "log/", "why/": "why/", "why/heat/": "why/",
    "sources/": "", "cautions/": "", "help/water/": "",
}


def told(language, topic):
    return data.load(f"words/{language}/help/{topic}")


@pytest.mark.parametrize("topic", help.TOPICS)
@pytest.mark.parametrize(("language", "folder"), LANGUAGES)
def test_every_question_is_on_its_page(built, language, folder, topic):
    """The page of a topic asks each of its questions, in their order, in its language, and no other."""
    page = pages.Page(built / folder / "help" / topic / "index.html")
    asked = [row["id"] for row in ROWS[topic]]
    assert len(asked) == len(set(asked)) >= 5
    assert list(told(language, topic)) == asked
    assert [attributes["id"] for tag, attributes in page.tags if tag == "details"] == asked
    assert len([tag for tag, _ in page.tags if tag == "h2"]) == len(asked)
    text = re.sub(r"</?a\b[^>]*>", "", (built / folder / "help" / topic / "index.html").read_text(encoding="utf-8"))  # terms are links
    for question in told(language, topic).values():
        for sentence in question.values():
            assert sentence.replace("'", "&#39;") in text


@pytest.mark.parametrize(("topic", "row"), QUESTIONS)
def test_an_answer_is_short_and_has_its_source(topic, row):
    """A question is one; its answer is short, and rests on a source of known worth, or tells only of this tool."""
    for language, _ in LANGUAGES:
        question = told(language, topic)[row["id"]]
        assert question["ask"].endswith("?")
        assert len(question["answer"].split()) <= MOST_WORDS * (1 if language == "en" else 1.35)
    if row.get("of_this_tool"):
        assert set(row) == {"id", "way", "of_this_tool"}
    else:
        assert row["source"].strip() and row["basis"] in BASES


def test_every_way_is_taken():
    """Each way that help knows is the way on from some answer."""
    assert {row["way"] for rows in ROWS.values() for row in rows} == set(help.WAYS)


def helped(built, address):
    """The help pages that a page's head leads to."""
    page = pages.Page(built / address / "index.html")
    return [attributes["href"] for tag, attributes in page.tags if tag == "a" and "data-help" in attributes]


@pytest.mark.parametrize(("address", "topic"), OWN.items())
def test_a_page_leads_to_its_help(built, address, topic):
    """The head of a page leads to the help of its topic, or to the list where it has none."""
    assert [posixpath.normpath(posixpath.join(address, link)).split("#")[0] for link in helped(built, address)] == [f"help/{topic}index.html"]


@pytest.mark.parametrize(("language", "folder"), LANGUAGES)
@pytest.mark.parametrize("address", help.ABOUT)
def test_a_page_leads_to_the_question_it_is_about(built, language, folder, address):
    """The head of a page that one question is about opens that question, which there is."""
    topic, question = help.ABOUT[address]
    assert question in told(language, topic)
    place = folder + address.replace("tables/", f"tables/{'US' if language == 'en' else 'SI'}/")
    assert [posixpath.normpath(posixpath.join(place, link)) for link in helped(built, place)] == [f"{folder}help/{topic}/index.html#{question}"]


@pytest.mark.parametrize("address", pages.addresses())
def test_help_is_one_touch_away(built, address):
    """Every page leads to help from one place in its head, but the list itself."""
    assert len(helped(built, address)) == (0 if address == "help/" else 1)
