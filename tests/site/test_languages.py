"""Every language says everything that English says, with the same facts in it."""
import re

import pytest

from site_src.content import data, languages, units

FOLDER = data.FOLDER / "words"
TOPICS = sorted(path.relative_to(FOLDER / "en").with_suffix("").as_posix() for path in (FOLDER / "en").rglob("*.toml"))
OTHERS = [language for language in data.languages() if language != "en"]
FACT = re.compile(r"\{(\w+)\}")


def sentences(told, place=()):
    """Every sentence of a file with the keys that lead to it."""
    if isinstance(told, dict):
        for key, value in told.items():
            yield from sentences(value, (*place, key))
    elif isinstance(told, list):
        for count, value in enumerate(told):
            yield from sentences(value, (*place, count))
    else:
        yield place, told


@pytest.mark.parametrize("language", OTHERS)
def test_same_topics(language):
    """A language has the files of English, and no other."""
    folder = FOLDER / language
    assert sorted(path.relative_to(folder).with_suffix("").as_posix() for path in folder.rglob("*.toml")) == TOPICS


@pytest.mark.parametrize("topic", TOPICS)
@pytest.mark.parametrize("language", OTHERS)
def test_same_sentences(language, topic):
    """No sentence is missing, left over or empty, and each takes the facts that the English one takes."""
    english = dict(sentences(data.load(f"words/en/{topic}")))
    spoken = dict(sentences(data.load(f"words/{language}/{topic}")))
    assert [place for place in english if place not in spoken] == []
    assert [place for place in spoken if place not in english] == []
    for place, sentence in english.items():
        assert isinstance(spoken[place], str) == isinstance(sentence, str), place
        if isinstance(sentence, str):
            assert set(FACT.findall(spoken[place])) == set(FACT.findall(sentence)), place
            assert bool(spoken[place].strip()) == bool(sentence.strip()), place


@pytest.mark.parametrize(("path", "language", "french"), [
    ("/pressure/", "en", "../fr/pressure/index.html"),
    ("/fr/pressure/", "fr", "../../fr/pressure/index.html"),
    ("/", "en", "fr/index.html"),
    ("/fr/tables/US/friction/", "fr", "../../../../fr/tables/US/friction/index.html"),
])
def test_alternates(path, language, french):
    """A page leads to itself in the other language, by a relative address."""
    assert dict(languages.alternates(path, language))["fr"] == french


@pytest.mark.parametrize("path", ["/404.html", "/rigs/", "/rigs/tollgate-engine-1/"])
def test_no_alternates(path):
    """Pages that a phone may not hold, or that stand at any address, lead nowhere."""
    assert languages.alternates(path, "en") == []


@pytest.mark.parametrize("topic", TOPICS)
def test_french_marks_do_not_part_from_their_word(topic):
    """In French a colon, semicolon, question or exclamation mark stands after a space that does not break."""
    for place, sentence in sentences(data.load(f"words/fr/{topic}")):
        assert not isinstance(sentence, str) or not re.search(r" [:;?!»](?=[\s.)]|$)|« ", sentence), place


@pytest.mark.parametrize("topic", TOPICS)
def test_french_units_do_not_part_from_their_number(topic):
    """In French a number and its unit stand on one line, and so do a figure to come and its unit; as read, not as written."""
    for place, sentence in sentences(data.load(f"words/fr/{topic}")):
        assert not isinstance(sentence, str) or not re.search(r"[\d}] (?:(?:%|psi|kPa|L/min|mm|min)(?!\w)|\{u_)", sentence), place
    assert data.load("words/fr/help/test")["overload"]["answer"].startswith("Plein débit à 1 100\u00a0kPa")


def test_french_page_speaks_french(built):
    """Names of hose and formulas are French, a colon is set as in French, a source says that it is English; units are SI."""
    page = (built / "fr" / "sources" / "index.html").read_text(encoding="utf-8")
    assert '<html lang="fr" data-system="SI" data-colon="\u00a0:" data-decimal=","' in page
    assert "raccords de" in page and "couplings" not in page
    assert re.search(r"<b>Perte de charge</b>\u00a0: C .*<br><span lang=\"en\">", page)
    read = (built / "fr" / "diagnose" / "read" / "index.html").read_text(encoding="utf-8")
    assert not re.search(r"\w</?b?>?: ", re.sub(r'<span lang="en">.*?</span>', "", read[read.index("<main"):]))


@pytest.mark.parametrize(("language", "system"), [(row["id"], row["system"]) for row in data.load("languages")["language"]])
def test_pages_lead_to_the_tables_of_their_own_units(built, language, system):
    """A page opens in its language's units, and so does every table it leads to; the list of tables itself has all."""
    root = built / languages.folder(language)
    others = {"tables", *({*data.languages()} if root == built else ())}
    found = [path for path in root.rglob("*.html") if path.relative_to(root).parts[0] not in others]
    links = {link for path in found for link in re.findall(r'href="[^"]*tables/(\w+)/[^"]*"', path.read_text(encoding="utf-8"))}
    assert links == {system}


FIGURE = re.compile(r"(?<![\w.])\d+\.\d+(?![\w.])")
ORIGINS = re.compile(r"<(?:script|style|svg)\b.*?</(?:script|style|svg)>|<(\w+)\b[^>]*\blang=\"?en\b.*?</\1>|<[^>]+>", re.DOTALL)


@pytest.mark.parametrize("page", ["tables/bar/friction", "tables/bar/draft", "tables/SI/tips", "tables/SI/elevation", "tables/SI/supply", "pressure", "water/draft"])
def test_french_decimals_have_a_comma(built, page):
    """Every figure of a baked page has the decimal mark of its language; a source in English keeps its own."""
    english = ORIGINS.sub(" ", (built / page / "index.html").read_text(encoding="utf-8").partition("<body")[2])
    french = ORIGINS.sub(" ", (built / "fr" / page / "index.html").read_text(encoding="utf-8").partition("<body")[2])
    sources = [line for line in french.splitlines() if "Source" in line]  # a formula as its source writes it
    assert not FIGURE.findall("\n".join(line for line in french.splitlines() if line not in sources))
    if page.startswith("tables/bar/friction"):
        assert len(FIGURE.findall(english)) > 50  # which the English one has with points
        assert len(re.findall(r"\d+,\d+", french)) > 50


@pytest.mark.parametrize("language", data.languages())
def test_each_page_names_the_units_it_opens_in(built, language):
    """The root element of every page has the id of one system of units, the language's own."""
    [opening] = {re.search(r'data-system="([^"]*)"', path.read_text(encoding="utf-8"))[1] for path in (built / languages.folder(language)).rglob("index.html")
                 if (path.relative_to(built).parts[0] == "fr") == (language == "fr")}
    assert opening in [system["id"] for system in units.systems()]
