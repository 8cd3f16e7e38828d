"""The Evidence page: what the tests kept, told whole, and plain without scripts."""
import html
import re

import pytest

from site_src.content import data, evidence

WORDS = data.load("words/en/evidence")
TOPICS = [topic for source in evidence.found()["published"]["cpython"] for topic in source["topics"]]


@pytest.fixture(scope="module")
def text(built):
    page = (built / "evidence" / "index.html").read_text(encoding="utf-8")
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", "", page)))


def test_every_source_and_peer_is_told(text):
    """Each source, each library and each thing that is not covered stands on the page."""
    for source in evidence.found()["published"]["cpython"]:
        assert source["source"] in text
    assert [peer["name"] for peer in WORDS["peer"].values() if peer["name"] not in text] == []
    assert [line for line in WORDS["uncovered"]["lines"] if line not in text] == []


def test_words_are_for_what_was_checked():
    """Every topic, peer and data file has its name, and no name is idle."""
    assert set(WORDS["topic"]) == {topic["topic"] for topic in TOPICS}
    assert set(WORDS["peer"]) == set(evidence.found()) - {"published", "measured"}
    assert set(WORDS["file"]) == set(evidence.counted_from_memory())


@pytest.mark.parametrize(("share", "read"), [(0, None), (4.9e-5, None), (5e-5, "0.01\u00a0%"), (0.0631, "6.31\u00a0%"), (0.5, "50.00\u00a0%")])
def test_percent(share, read):
    """A share is read to a hundredth of a per cent; by hand."""
    assert evidence.percent(share) == read


def test_every_example_has_its_dot(built):
    """One dot an example, right of the middle where the answer is above what is printed, and none beyond the end of its line."""
    page = (built / "evidence" / "index.html").read_text(encoding="utf-8")
    dots = [float(x) for x in re.findall(r'<circle cx="([\d.]+)"', page)]
    points = [point for topic in TOPICS for point in topic["points"]]
    assert len(dots) == len(points) == sum(topic["examples"] for topic in TOPICS)
    assert 20 <= min(dots) and max(dots) <= 300
    assert sum(x > 160.1 for x in dots) <= sum(point > 0 for point in points)
    assert max(dots) - 160 == pytest.approx((160 - min(dots)) * max(points) / -min(points), rel=0.01)
