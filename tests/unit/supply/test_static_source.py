"""Ponds, streams, suctions and unlike tenders, worked by hand and against what is printed."""
import pytest

from tests.unit.supply.reckoned import ask, called_to_mind, row

LIKE = {"tankers": "2", "more_tankers": "1", "more_load": "2500", "more_fill": "5", "more_dump": "4"}


def test_a_pond(run):
    """By hand: half an acre is 21,780 square feet; 2 ft of it usable are 325,851 gal. The last 2 ft whirl (a state's rating bureau)."""
    pond = ask(run, "tank", water_from="pond", pond_length="217.8", pond_width="100", cover="4", flow="1000")
    assert float(row(pond, "pond")["text"]) == pytest.approx(325851, rel=1e-4)
    assert pond["figure"] == {"kind": "hours", "text": "5.4"}  # 325.85 min
    bare = ask(run, "tank", water_from="pond", cover="2")
    assert (bare["figure"]["text"], called_to_mind(bare)) == ("0.0", ["strainer_bare"])
    assert called_to_mind(ask(run, "tank", water_from="pond", cover="2.1")) == []


def test_a_stream(run):
    """By hand: 6 x 0.5 x 1.25 ft/s x 448.8 = 1,683 gpm at the surface, 0.8 of it 1,346."""
    told = row(ask(run, "tank", water_from="stream"), "stream")
    assert (told["text"], told["terms"]["surface"]) == ("1346", "1683.11")
    assert called_to_mind(ask(run, "tank", water_from="stream", flow="1346")) == []
    short = ask(run, "tank", water_from="stream", flow="1347")
    assert (called_to_mind(short), short["picture"]["is_short"]) == (["stream_short"], True)


def test_what_is_not_asked_is_not_refused(run):
    """A pond has no tank, a tank no float."""
    assert ask(run, "tank", water_from="stream", tank="", cover="x")["figure"]["text"] == "1346"
    assert ask(run, "tank", cover="", float_time="0")["figure"]["text"] == "4.0"


@pytest.mark.parametrize(
    ("rated", "size", "hoses"),
    # NFPA 1901 suction table, from memory: 500 gpm 4 in, 750 4 1/2, 1,000 5, 1,250 and 1,500 6, 1,750 and 2,000 two of 6
    [("500", "4", "1"), ("750", "4.5", "1"), ("1000", "5", "1"), ("1250", "6", "1"), ("1500", "6", "1"), ("1750", "6", "2"), ("2000", "6", "2")],
)
def test_suction_by_rating(run, rated, size, hoses):
    """Size and number go with the rating; less calls for care, as much does not."""
    told = ask(run, "draft", rated=rated, suction=size, hoses=hoses, flow="250")
    assert (float(row(told, "suction_size")["text"]), row(told, "suction_size")["terms"]["hoses"]) == (float(size), hoses)
    assert "suction_small" not in called_to_mind(told)


def test_suction_too_small(run):
    """Past 1,500 gpm one hose of 6 in is too few, past 1,000 one of 5 in too small."""
    assert called_to_mind(ask(run, "draft", rated="1501", flow="250")) == ["suction_small"]
    assert called_to_mind(ask(run, "draft", rated="1001", suction="5", hoses="2", flow="250")) == ["suction_small"]


def test_a_rating_past_the_table(run):
    """No figure is known past 2,000 gpm, and none is shown."""
    assert not [each for each in ask(run, "draft", rated="2001")["rows"] if each["name"] == "suction_size"]  # no figure is known


def test_a_second_suction_quarters_the_loss(run):
    """By hand, half the flow in each: 3.4 / 4."""
    assert row(ask(run, "draft"), "one_more_suction")["terms"]["loss"] == "0.85"


def test_unlike_tenders(run):
    """By hand: 3 x 2,250 / 20.5 + 900 / (11.5 + 5) = 329.3 + 54.5 = 383.8 gpm, nobody waiting."""
    told = ask(run, "shuttle", kinds="two")
    assert (told["figure"]["text"], told["facts"]["wait"]) == ("384", "0.0")


@pytest.mark.parametrize("tankers", [2, 4, 6, 12])
def test_like_tenders_in_two_kinds(run, tankers):
    """Two kinds that are alike are one kind: the same flow, the same waiting."""
    two = ask(run, "shuttle", **{**LIKE, "kinds": "two", "tankers": str(tankers)})
    one = ask(run, "shuttle", tankers=str(tankers + 1))
    assert (two["figure"], two["picture"]) == (one["figure"], one["picture"])


def test_unlike_tenders_that_wait(run):
    """By hand: six that fill 5 min and one that fills 3: with a wait W, 30 / (20.5 + W) + 3 / (16.5 + W) = 1 where W = 12.91."""
    told = ask(run, "shuttle", kinds="two", tankers="6")
    wait = float(row(told, "mixed")["terms"]["wait"])
    assert 30 / (20.5 + wait) + 3 / (16.5 + wait) == pytest.approx(1, abs=1e-4)
    assert called_to_mind(told) == ["waits_at_fill"]


def test_portable_tanks(run):
    """From memory: a tank takes the largest load and 500 gal: 3,000 for 2,500, two of less. By hand: 2,250 gal in 4 min are 562.5 gpm."""
    assert row(ask(run, "shuttle"), "portable")["text"] == "1"
    assert row(ask(run, "shuttle"), "dump_rate")["text"] == "563"
    small = ask(run, "shuttle", portable="2999")
    assert (row(small, "portable")["text"], called_to_mind(small)) == ("2", ["portable_small"])
    assert [row(ask(run, "shuttle", tankers=count, fill="1", dump="1"), "siphons")["text"] for count in ("2", "3", "8")] == ["1", "1", "3"]


@pytest.mark.parametrize(("changes", "tanks", "siphons"), [
    ({}, 1, 0), ({"tanks": "3"}, 3, 1), ({"portable": "1500"}, 2, 1),
    ({"tanks": "2", "tankers": "6", "fill": "2", "distance": "1"}, 2, 2),
])
def test_the_dump_site_is_drawn_for_the_tanks_there_are(run, changes, tanks, siphons):
    """As many as are set up, or else as the largest load takes: 2,500 and 500 gal more are two of 1,500. Siphons of 500 gpm (from memory) for all of the flow: by
    hand 329 gpm take one; six tenders that dump one after another, 4 min each, bring 13,500 gal in 24 min, 563 gpm: two. One tank has no wall to pass.
    """
    site = ask(run, "shuttle", **changes)["picture"]["site"]
    assert (site["tanks"], site["siphons"]) == (tanks, siphons)


def test_tanks_that_are_too_few_are_said(run):
    """Two of 1,500 take a load of 2,500; three are more than enough, one is not."""
    codes = [called_to_mind(ask(run, "shuttle", portable="1500", tanks=tanks)) for tanks in ("1", "2", "3")]
    assert ["portable_small" in each for each in codes] == [True, False, False]
