"""Help's search: what people type finds the question that answers it first or second, in both languages, slips forgiven."""
import gzip
import json
import subprocess
import tomllib

import pytest

from site_src.content import data, findable
from site_src.routes import help
from tests.conftest import ROOT, node
from tests.site.pages import page_data

SEARCHES = tomllib.loads((ROOT / "tests" / "site" / "searches.toml").read_text(encoding="utf-8"))
SEARCHES |= tomllib.loads((ROOT / "tests" / "site" / "questions.toml").read_text(encoding="utf-8"))
FRENCH = ("fr", "demande")
SEARCHED = [(part, row) for part, rows in SEARCHES.items() for row in rows]


def index(built, language):
    return page_data(built / ("" if language == "en" else language) / "help" / "page.json")


def found(built, language, typed):
    """Addresses that the phone's search gives for each of the texts, best first."""
    asked = json.dumps({"index": index(built, language), "typed": typed})
    run = subprocess.run([node(), ROOT / "tests" / "site" / "search.mjs"], input=asked, capture_output=True, encoding="utf-8", check=True)
    return json.loads(run.stdout)


@pytest.fixture(scope="module")
def answers(built):
    """Of each language, what every text that is typed finds: one start of node each."""
    typed = {language: sorted({text for part, row in SEARCHED if (part in FRENCH) == (language == "fr") for text in row["typed"]}) for language in ("en", "fr")}
    return {language: dict(zip(texts, found(built, language, texts), strict=True)) for language, texts in typed.items()}


@pytest.mark.parametrize(("part", "row"), SEARCHED, ids=[f"{part}-{row['answers'][0]}" for part, row in SEARCHED])
def test_what_is_typed_is_answered(answers, part, row):
    """A question typed in any of its ways is found first or second."""
    right = {f"help/{answer.replace('.', '/#')}" if "." in answer and "/" not in answer else answer for answer in row["answers"]}
    given = answers["fr" if part in FRENCH else "en"]
    assert [typed for typed in row["typed"] if not right & set(given[typed][:2])] == []


def test_a_pump_that_will_not_engage_finds_the_fault_finder_first(built):
    """Before any card or reading: there the light, the shift and the speedometer are asked after."""
    [[first, *_]] = found(built, "en", ["pump wont engage"])
    assert first == "diagnose/"


def test_who_would_drive_in_pump_reads_that_first(built):
    """Before any other answer that speaks of pump gear."""
    [[first, *_]] = found(built, "en", ["can i drive in pump gear"])
    assert first == "help/panel/#pump_and_drive"


def test_there_are_enough():
    """Sixty and more are typed, some in each language, each for a question that there is."""
    assert sum(len(row["typed"]) for part, row in SEARCHED if part != "slip") >= 60
    assert sum(len(row["typed"]) for part, row in SEARCHED if part == "first_week") >= 30
    assert sum(len(row["typed"]) == 5 for row in SEARCHES["asked"]) == len(SEARCHES["asked"]) >= 200
    assert sum(len(row["typed"]) == 5 for row in SEARCHES["demande"]) >= 100
    for _, row in SEARCHED:
        for topic, question in (answer.split(".") for answer in row["answers"] if "." in answer):
            assert question in data.load(f"words/en/help/{topic}")


@pytest.mark.parametrize("language", data.languages())
def test_every_question_and_page_is_found_by_its_name(built, language):
    """Each row's own name finds it, first or among those that share its words; and a page is listed once."""
    rows = index(built, language)["rows"]
    assert len({row["address"] for row in rows}) == len(rows) > 120
    silent = set(index(built, language)["silent"])
    rows = [row for row in rows if findable.words_of(row["name"], silent)]  # "Qu'est-ce que C ?" has none but such
    given = found(built, language, [row["name"] for row in rows])
    assert [row["name"] for row, addresses in zip(rows, given, strict=True) if row["address"] not in addresses[:3]] == []


@pytest.mark.parametrize("language", data.languages())
def test_every_word_leads_somewhere(language):
    """What people call a page, a term or a fault is for one that there is."""
    also = data.load(f"words/{language}/find")
    assert set(also["term"]) <= set(data.load(f"words/{language}/terms")["term"])
    assert set(also["fault"]) <= {cause["id"] for cause in data.load("faults")["cause"]}


@pytest.mark.parametrize("language", data.languages())
def test_the_index_is_light(built, language):
    """What help's search looks through weighs 60 kB a language at most, compressed. Source: what the search was granted."""
    assert len(gzip.compress(json.dumps(index(built, language), ensure_ascii=False).encode())) <= 60_000


@pytest.mark.parametrize("typed", ["", "the", "qqxzv", "???"])
def test_nothing_is_found_for_nothing(built, typed):
    """Words that say nothing, and letters that are no word, find nothing."""
    assert found(built, "en", [typed]) == [[]]


@pytest.mark.parametrize("language", data.languages())
def test_every_question_has_words_to_be_found_by(language):
    """Beside its own, each question of help has what people call it, and nothing is for a question that is not."""
    also = data.load(f"words/{language}/find")["also"]
    assert {topic: list(words) for topic, words in also.items()} == {topic: list(data.load(f"words/{language}/help/{topic}")) for topic in help.TOPICS}


def test_folding():
    """A word is found with and without its accents and capitals."""
    assert findable.words_of("Dénivelé, l'Étage 2½", {"l"}) == ["denivele", "etage", "21", "2"]
