"""How long a tank or a pond lasts and what a stream brings: the whole answer, worked by hand."""
import pytest

from tests.unit.supply.reckoned import ask


def test_a_tank_to_the_last_figure(run):
    """Ninety percent of 400 gal are 360: at 300 gpm 1.2 min; a quarter of the tank, 100 gal, goes in a third of a minute. 250 gpm is what so small a
    tank line is built for (NFPA 1901, from memory)."""
    assert ask(run, "tank", tank="400", flow="300", usable="90") == {
        "sum": "tank",
        "figure": {"kind": "time", "text": "1.2"},
        "facts": {"usable": "360", "flow": "300"},
        "rows": [
            {"name": "usable", "kind": "volume", "text": "360", "terms": {"tank": "400", "percent": "90", "usable": "360"}, "sources": ["usable"]},
            {"name": "minutes", "kind": "time", "text": "1.2", "terms": {"usable": "360", "flow": "300", "minutes": "1.2"}, "sources": ["tank"]},
        ],
        "cautions": [{"code": "tank_to_pump", "level": "caution", "amount": "300", "limit": "250"}],
        "picture": {
            "marks": [{"left": 0.75, "volume": "300", "after": {"kind": "time", "text": "0.3"}}, {"left": 0.5, "volume": "200", "after": {"kind": "time", "text": "0.7"}}, {"left": 0.25, "volume": "100", "after": {"kind": "time", "text": "1.0"}}],
            "flow": "300", "stays": {"share": pytest.approx(0.1), "text": "40"}},
    }


def test_a_pond_to_the_last_figure(run):
    """217.8 ft by 100 ft by the 2 ft over those that whirl are 43,560 cubic feet of 7.4805 gal: 325,850.6 gal, at 1,000 gpm 325.9 min; all of it can go."""
    assert ask(run, "tank", water_from="pond", pond_length="217.8", pond_width="100", cover="4", flow="1000") == {
        "sum": "pond",
        "figure": {"kind": "hours", "text": "5.4"},
        "facts": {"usable": "325851", "flow": "1000"},
        "rows": [
            {"name": "pond", "kind": "volume", "text": "325851", "terms": {"length": "217.8", "width": "100", "cover": "4", "limit": "2", "usable": "325850.58"},
             "sources": ["pond"]},
            {"name": "minutes", "kind": "time", "text": "325.9", "terms": {"usable": "325850.58", "flow": "1000", "minutes": "325.851"}, "sources": ["tank"]},
        ],
        "cautions": [],
        "picture": {
            "marks": [{"left": 0.75, "volume": "244388", "after": {"kind": "time", "text": "81.5"}}, {"left": 0.5, "volume": "162925", "after": {"kind": "hours", "text": "2.7"}},
                      {"left": 0.25, "volume": "81463", "after": {"kind": "hours", "text": "4.1"}}],
            "flow": "1000", "stays": {"share": 0, "text": "0"}},
    }


def test_a_strainer_that_draws_air(run):
    """Two feet of cover whirl: none of it counts, and it is said with what there is and what it takes."""
    told = ask(run, "tank", water_from="pond", cover="1.5")
    assert told["cautions"] == [{"code": "strainer_bare", "level": "stop", "amount": "1.5", "limit": "2.0"}]
    assert (told["figure"], told["picture"]["stays"]) == ({"kind": "time", "text": "0.0"}, {"share": 0, "text": "0"})
    assert told["picture"]["marks"][0] == {"left": 0.75, "volume": "0", "after": {"kind": "time", "text": "0.0"}}


def test_a_stream_to_the_last_figure(run):
    """6 ft by 0.5 ft at 10 ft in 8 s are 3.75 cubic feet a second of 448.83 gpm: 1,683.1 at the surface, 0.8 of it 1,346.5, less than the 2,000 that are wanted."""
    assert ask(run, "tank", water_from="stream", flow="2000") == {
        "sum": "stream",
        "figure": {"kind": "flow", "text": "1346"},
        "facts": {"flow": "2000"},
        "rows": [{"name": "stream", "kind": "flow", "text": "1346", "terms": {"surface": "1683.11", "share": "0.8", "stream": "1346.49"}, "sources": ["stream"]}],
        "cautions": [{"code": "stream_short", "level": "stop", "amount": "2000", "limit": "1346"}],
        "picture": {"width": "6.0", "depth": "0.5", "flow": "2000", "is_short": True},
    }
    told = ask(run, "tank", water_from="stream", flow="1000")
    assert (told["cautions"], told["picture"]["is_short"]) == ([], False)
