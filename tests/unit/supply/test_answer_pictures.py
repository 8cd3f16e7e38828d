"""What the pictures of the water pages are drawn from: heights, curve and marks in their true places, with their texts."""
import pytest

from tests.unit.supply.reckoned import ask


def near(share):
    return pytest.approx(share, abs=0.002)


def test_hydrant(run):
    """By hand: pressure falls with the 1.85 power of flow, so half the most flow takes 0.277 of static; both points lie on it."""
    picture = ask(run, "hydrant")["picture"]
    assert set(picture) == {"curve", "static", "test", "floor", "line"}
    curve = picture["curve"]
    assert (len(curve), curve[0], curve[8], curve[-1]) == (17, [0, 1], [0.5, near(1 - 0.277)], [1, 0])
    assert [x for x, _ in curve] == pytest.approx([place / 16 for place in range(17)])
    assert picture["static"] == "65"
    for name, flow, pressure in (("test", "250", "58"), ("floor", "683", "20")):
        point = picture[name]
        assert (point["flow"], point["pressure"]) == (flow, pressure)
        assert point["y"] == pytest.approx(float(pressure) / 65)
        assert point["y"] == pytest.approx(1 - point["x"] ** (1 / 0.54), rel=1e-9)


def test_hydrant_line(run):
    """By hand: 500 gpm drops 7 x 2^1.85 = 25.2 of 65 psi; 100 ft of 5 in take 0.08 x 5^2 = 2 more. Past what it gives there is no figure."""
    assert ask(run, "hydrant", wanted="500")["picture"]["line"] == {"hydrant": "40", "intake": "38", "flow": "500", "length": "100", "hoses": 1}
    assert [ask(run, "hydrant", wanted="2000")["picture"]["line"][name] for name in ("hydrant", "intake")] == ["\u2013", "\u2013"]


def test_tank(run):
    """By hand: a quarter of 750 gal is 187.5, gone in 1.25 min at 150 gpm; of that tank a fifth, 150 gal, stays."""
    assert ask(run, "tank")["picture"] == {
        "flow": "150",
        "marks": [
            {"left": 0.75, "volume": "563", "after": {"kind": "time", "text": "1.3"}},
            {"left": 0.5, "volume": "375", "after": {"kind": "time", "text": "2.5"}},
            {"left": 0.25, "volume": "188", "after": {"kind": "time", "text": "3.8"}},
        ],
        "stays": {"share": pytest.approx(0.2), "text": "150"},
    }
    assert ask(run, "tank", usable="100")["picture"]["stays"]["share"] == 0


def test_draft(run):
    """Heights are shares of 33.3 ft, the most that air lifts water of 60 F at the sea (a study's table)."""
    assert ask(run, "draft", lift="12.5")["picture"] == {
        "lift": {"share": near(12.5 / 33.3), "text": "12.5"},
        "loss": {"share": near(15.9 / 33.3), "text": "3.4"},
        "marks": [
            {"name": "practical", "share": near(2 / 3), "text": "22.2"},  # NWCG: two thirds
            {"name": "max", "share": 1, "text": "33.3"},
        ],
    }


def test_draft_in_thin_air(run):
    """The same height stands as high in the picture at 5,000 ft, where the mark of the air is lower (27.6 of 33.3 ft)."""
    sea, high = (ask(run, "draft", altitude=altitude)["picture"] for altitude in ("0", "5000"))
    assert high["lift"] == sea["lift"] == {"share": near(10 / 33.3), "text": "10"}
    assert high["marks"][-1] == {"name": "max", "share": near(27.6 / 33.3), "text": "27.6"}


def test_draft_past_what_air_lifts(run):
    """A lift past what air can do tops the picture: 40 ft, of which air lifts 33.3."""
    picture = ask(run, "draft", lift="40")["picture"]
    assert picture["lift"] == {"share": 1, "text": "40"}
    assert picture["marks"][-1] == {"name": "max", "share": near(33.3 / 40), "text": "33.3"}


def test_draft_below_the_sea(run):
    """Below the sea the air lifts higher than at it, and the picture with it."""
    assert ask(run, "draft", altitude="-1500")["picture"]["marks"][-1]["share"] == 1


def test_relay(run):
    """By hand: see test_relay; 100 ft of climb over 3,000."""
    assert ask(run, "relay", climb="100")["picture"] == {
        "pumpers": 3, "pressure": "162", "floor": "20", "leg": "1500", "climb": pytest.approx(1 / 30), "hoses": 1}


def test_joint(run):
    """By hand: see test_joint; tandem starts at what the first pumper shows, dual at its intake."""
    entries = {"supply": "40", "before": "130", "wanted": "200", "flow": "500", "length": "50"}
    same = {"supply": "40", "wanted": "200", "flow": "500", "length": "50"}
    assert ask(run, "joint", way="tandem", **entries)["picture"] == {**same, "way": "tandem", "from": "130", "intake": "129"}  # 0.08 x 25 x 0.5 = 1
    assert ask(run, "joint", way="dual", **entries)["picture"] == {**same, "way": "dual", "from": "40", "intake": "39"}


def test_shuttle(run):
    """By hand: three tenders, each 10 min to fill, and 2 + 5 + 3 before it comes round: the fill site holds them 30 - 20 = 10 min."""
    assert ask(run, "shuttle", way="timed", timed="7", fill="10", dump="3", tankers="3")["picture"] == {
        "tankers": 3, "road": "7.0", "fill": "10.0", "dump": "3.0", "held_by": "fill", "wait": "10.0", "site": {"tanks": 1, "siphons": 0, "flow": "225", "volume": "3000"}}


def test_foam(run):
    """By hand: 200 x 0.65 = 130 at the most; 100 + 15.5 x 0.95^2 x 2.5 = 135 is over it."""
    picture = ask(run, "foam", length="250")["picture"]
    assert picture == {"pump": "200", "to_length": None, "eductors": 1, "inlet": "200", "back": "135", "most": "130", "nozzle": "100", "length": "250", "concentrate": "30", "percent": "3", "is_drawing": False}
    assert ask(run, "foam", length="100")["picture"]["is_drawing"] is True
    assert ask(run, "foam", stands="line")["picture"]["to_length"] == "400"  # as it opens
