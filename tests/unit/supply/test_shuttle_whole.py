"""What a shuttle keeps up: the whole answer, worked by hand.

A tenth of each load is lost (from memory); a road of 3 miles takes 0.65 + 1.7 x 3 = 5.75 min each way (an insurance rating formula, from memory).
"""
from tests.unit.supply.reckoned import ask, row

DUMP_SITE = [
    {"name": "portable", "kind": None, "text": "1", "terms": {"load": "2500", "margin": "500", "portable": "3000", "tanks": "1"}, "sources": ["portable"]},
    {"name": "dump_rate", "kind": "flow", "text": "563", "terms": {"load": "2500", "dump": "4", "rate": "562.5"}, "sources": ["shuttle"]},
]
ROAD = {"name": "road", "kind": "time", "text": "11.5", "terms": {"distance": "3", "road": "11.5"}, "sources": ["shuttle_road"]}


def siphons(flow):
    return {"name": "siphons", "kind": None, "text": "1", "terms": {"flow": flow, "each": "500"}, "sources": ["siphons"]}


def test_like_tankers(run):
    """11.5 + 5 + 4 = 20.5 min: three loads of 2,250 gal are 329.27 gpm; 20.5 / 5 = 4.1, so five keep the fill site busy."""
    cycle = {"road": "11.5", "fill": "5", "dump": "4", "wait": "0", "cycle": "20.5"}
    assert ask(run, "shuttle") == {
        "sum": "shuttle",
        "figure": {"kind": "flow", "text": "329"},
        "facts": {"tankers": "3", "cycle": "20.5", "each": "110"},
        "rows": [
            ROAD,
            {"name": "cycle", "kind": "time", "text": "20.5", "terms": cycle, "sources": ["shuttle"]},
            {"name": "kept_up", "kind": "flow", "text": "329", "terms": {"tankers": "3", "load": "2500", "cycle": "20.5", "flow": "329.27"}, "sources": ["shuttle"]},
            {"name": "needed", "kind": None, "text": "3", "terms": {"wanted": "300"}, "sources": ["shuttle"]},
            {"name": "useful", "kind": None, "text": "5", "terms": cycle, "sources": ["shuttle_sites"]},
            *DUMP_SITE, siphons("329.27")],
        "cautions": [],
        "picture": {"tankers": 3, "road": "11.5", "fill": "5.0", "dump": "4.0", "held_by": "road", "wait": "0.0", "site": {"tanks": 1, "siphons": 0, "flow": "329", "volume": "3000"}},
    }


def test_two_kinds_of_tanker(run):
    """Six of 5 + 4 min and one of 3 + 2 that wait W: 30 / (20.5 + W) + 3 / (16.5 + W) = 1 where W = 12.908; 13,500 gal in 33.408 min and 900 in
    29.408 are 434.7 gpm."""
    told = ask(run, "shuttle", kinds="two", tankers="6", wanted="435")
    assert told == {
        "sum": "shuttle_mixed",
        "figure": {"kind": "flow", "text": "435"},
        "facts": {"tankers": "7", "wait": "12.9"},
        "rows": [
            ROAD,
            {"name": "mixed", "kind": "flow", "text": "435", "sources": ["shuttle", "shuttle_mixed"],
             "terms": {"tankers": "6", "load": "2500", "cycle": "33.408", "others": "1", "more_load": "1000", "more_cycle": "29.408", "wait": "12.908", "flow": "434.7"}},
            *DUMP_SITE, siphons("434.7")],
        "cautions": [{"code": "waits_at_fill", "level": "caution", "amount": "12.9"}, {"code": "short_mixed", "level": "caution", "limit": "435"}],
        "picture": {"tankers": 7, "road": "11.5", "fill": "5.0", "dump": "4.0", "held_by": "fill", "wait": "12.9", "site": {"tanks": 1, "siphons": 0, "flow": "435", "volume": "3000"}},
    }
    assert [caution["code"] for caution in ask(run, "shuttle", kinds="two", tankers="6", wanted="434")["cautions"]] == ["waits_at_fill"]


def test_two_kinds_that_do_not_wait(run):
    """Two of them find the fill site free: 2,250 gal in 20.5 min and 900 in 16.5 are 164.3 gpm, and nobody is kept waiting."""
    told = ask(run, "shuttle", kinds="two", tankers="1", wanted="160")
    assert (told["figure"]["text"], told["cautions"], told["facts"]) == ("164", [], {"tankers": "2", "wait": "0.0"})


def test_the_larger_of_two_kinds(run):
    """The dump site is laid out for the larger load, and the picture shows the longer stops, whichever kind has them."""
    told = ask(run, "shuttle", kinds="two", tankers="1", more_load="4000", more_fill="6", more_dump="7")
    assert row(told, "portable")["terms"]["load"] == "4000"
    assert (told["picture"]["fill"], told["picture"]["dump"]) == ("6.0", "7.0")
    assert told["cautions"][0] == {"code": "portable_small", "level": "caution", "amount": "3000", "limit": "4000", "needed": "2"}


def test_seven_wait_for_each_other(run):
    """Seven at a fill site of 5 min turn round in 35: 14.5 min of it waiting; 450 gpm is all that the site passes, however many there are."""
    told = ask(run, "shuttle", tankers="7", wanted="460")
    assert told["cautions"] == [
        {"code": "held_at_fill", "level": "caution", "amount": "14.5", "useful": "5"}, {"code": "sites_too_slow", "level": "caution", "amount": "450", "limit": "460"}]
    assert (row(told, "needed")["text"], told["picture"]["held_by"], told["picture"]["wait"]) == ("\u2013", "fill", "14.5")


def test_one_too_few(run):
    """Two of the three that 300 gpm take: 219.5."""
    told = ask(run, "shuttle", tankers="2")
    assert told["cautions"] == [{"code": "short_of_wanted", "level": "caution", "amount": "220", "limit": "300", "needed": "3"}]


def test_the_road_there_and_back(run):
    """Six miles there and back are three each way; a road that was timed has no working."""
    assert row(ask(run, "shuttle", way="round", distance="6"), "road") == ROAD
    assert [each["name"] for each in ask(run, "shuttle", way="timed", timed="11.5")["rows"]] == ["cycle", "kept_up", "needed", "useful", "portable", "dump_rate", "siphons"]
