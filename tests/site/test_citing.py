"""The bibliography: what every source of the data and of the published examples names."""
import html
import pathlib
import re
import tomllib

import pytest

from site_src.content import citing, data

PUBLISHED = pathlib.Path(__file__).parent.parent / "published"
FILES = [path for path in sorted([*data.FOLDER.rglob("*.toml"), *PUBLISHED.rglob("*.toml")]) if "words" not in path.parts and path != citing.FILE]
# what the bibliography has an id for is never named by hand
BY_HAND = re.compile(r"NFPA \d|EN 1028|MIL-T|Firefighter Math|[Ss]tudy (?:cards|notes|deck)|[Dd]river/operator (?:handbook|study|skill)|friction-loss table", re.IGNORECASE)


def rows_of(content):
    """Every table of plain data that has a source."""
    if isinstance(content, dict):
        if "source" in content:
            yield content
        content = list(content.values())
    if isinstance(content, list):
        for value in content:
            yield from rows_of(value)


ROWS = [(path.name, row) for path in FILES for row in rows_of(tomllib.loads(path.read_text(encoding="utf-8")))]


def sources_of(row):
    return [row[key] for key in citing.SAID if key in row]


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}-{path.stem}")
def test_what_is_published_names_an_id(path):
    """A published row names the bibliography at least once, nothing that is not in it, and no document of it by hand."""
    for row in rows_of(tomllib.loads(path.read_text(encoding="utf-8"))):
        named = [id for source in sources_of(row) for id in citing.ids(source)]
        assert set(named) <= set(citing.bibliography()), row
        assert named or row.get("basis") != "published", row
        assert not any(BY_HAND.search(source) for source in sources_of(row) if isinstance(source, str)), row


def test_nothing_in_the_bibliography_is_idle():
    """Every id is named by some source."""
    assert {id for _, row in ROWS for source in sources_of(row) for id in citing.ids(source)} == set(citing.bibliography())


@pytest.mark.parametrize("id", citing.bibliography())
def test_whole_story(id):
    """Each has title and publisher, and one word on where it was seen; no two have one title or one address. What has no page says so by its id."""
    row = citing.bibliography()[id]
    if id not in ("memory", "practice"):
        assert {"title", "publisher"} < row.keys() <= {"title", "publisher", "year", *citing.SEEN, *citing.SECOND_HAND}
        assert len(row.keys() & {*citing.SEEN, *citing.SECOND_HAND}) == 1 and row.get("seen", True) is True
    assert sum(citing.name(id) == citing.name(other) for other in citing.bibliography()) == 1
    assert re.search(r"\b(?:18|19|20)\d\d", row.get("year", "2026"))
    if "address" in row:
        assert re.fullmatch(r"https?://[\w.-]+/\S+", row["address"])
        assert sum(row["address"] == other.get("address") for other in citing.bibliography().values()) == 1


@pytest.mark.parametrize(
    ("source", "read"),
    [
        ("{nfpa_291}, chapter 4", "NFPA 291, chapter 4"),
        ("Pressures in series add; 20 psi from {cards}", "Pressures in series add; 20 psi from driver/operator study cards"),
        ("No figures. {cards_2014}", "No figures. Study cards, a department's engineer's test (2014)"),
        ("agrees with {handout} and {ffm_drafting}", "agrees with a fire department's hydraulics handout and NWCG, Firefighter Math, 3.5 Drafting Guidelines"),
    ],
)
def test_written_out(source, read):
    """A name within a sentence begins as a word of it does, but for initials; a standard goes without its year. By hand."""
    assert citing.written_out(source) == read


@pytest.mark.parametrize(
    ("source", "basis", "read"),
    [
        ("{cards}", "published", "second-hand"), ("{cards}; {college_notes}", "published", "published"), ("{nfpa_291}", "from memory", "from memory"),
        (["deck_ch3"], "published", "second-hand"), (["deck_ch3", "toledo"], "published", "published"), ("By hand", "common practice", "common practice"),
    ],
)
def test_second_hand(source, basis, read):
    """What is published but was seen only in what reports it says so; one source that was seen itself is enough."""
    assert citing.cited({"row": {"source": source, "basis": basis}})["row"]["basis"] == read


def test_sources_page_lists_them(built):
    """Each stands on the Sources page under its name, with its address or through what it was seen."""
    page = (built / "sources" / "index.html").read_text(encoding="utf-8")
    text = html.unescape(re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", page)))
    listed = [row for rows in citing.listed().values() for row in rows]
    assert len(listed) == len(citing.bibliography()) - 2
    assert [row["name"] for row in listed if row["name"] not in text or row["where"] not in text] == []
