"""Fire flow by the quick rules, against what is printed of them."""
import pytest

from calc.base.errors import CalcError
from tests.unit.supply.reckoned import ask, called_to_mind, row

HALL = {"length": "175", "width": "125"}
ROOM = {"length": "50", "width": "30"}


def test_by_area(run):
    """A fire trade magazine: 30 by 50 ft, a quarter burning: 125 gpm. By hand: 500 with all of it, a quarter more for each exposure, twice for two floors."""
    assert ask(run, "fireflow", **ROOM)["figure"]["text"] == "125"
    assert ask(run, "fireflow", **ROOM, involved="100")["figure"]["text"] == "500"
    assert ask(run, "fireflow", **ROOM, exposures="2", floors="2")["figure"]["text"] == "375"


def test_by_volume(run):
    """A firehouse forum's exam item: 125 by 175 ft by 10 ft: 2,188; the area rule has 7,292 for the same floor. By hand: 1,500 ft2 by 8 ft: 120."""
    assert ask(run, "fireflow", by="volume", height="10", **HALL)["figure"]["text"] == "2188"
    assert ask(run, "fireflow", involved="100", **HALL)["figure"]["text"] == "7292"
    room = ask(run, "fireflow", by="volume", height="8", **ROOM)
    assert (room["figure"]["text"], row(room, "half_minute")["text"]) == ("120", "60")


@pytest.mark.parametrize(
    ("changes", "stored", "delivered"),
    [
        # NFPA 1142, from memory. By hand: 1,500 x 10 / 7 = 2,143; half as much again 3,214; at least 2,000, with exposures 3,000
        ({}, "2143", "250"), ({"exposures": "1"}, "3214", "500"), ({"construction": "0.5"}, "2000", "250"),
        ({"construction": "0.5", "exposures": "1"}, "3000", "500"), ({"hazard": "3", "construction": "1.5", "height": "20"}, "15000", "750"),
        ({"hazard": "3", "construction": "1.5", "height": "27"}, "20250", "1000"),
    ],
)
def test_rural(run, changes, stored, delivered):
    """The store by volume, hazard and construction, and the flow that it is delivered at."""
    told = ask(run, "fireflow", **{"by": "store", "height": "10", **ROOM, **changes})
    assert (row(told, "store")["text"], told["figure"]["text"]) == (stored, delivered)


@pytest.mark.parametrize(("line", "lines"), [("125", "1"), ("124", "2"), ("150", "1"), ("63", "2"), ("60", "3")])
def test_lines(run, line, lines):
    """By hand: 125 gpm over the flow of a line, rounded up."""
    assert ask(run, "fireflow", **ROOM, line=line)["facts"]["lines"] == lines


def test_limits(run):
    """At a limit nothing is said of it, past it it is; the supply that falls short comes first and stops."""
    assert called_to_mind(ask(run, "fireflow", **ROOM, supply="125")) == []
    short = ask(run, "fireflow", **ROOM, supply="100")["cautions"]
    assert [(each["code"], each["level"], each["amount"], each["limit"], each["needed"]) for each in short] == [("supply_short", "stop", "100", "125", "25")]
    assert called_to_mind(ask(run, "fireflow", length="60", width="50", supply="1000", involved="50", floors="2")) == []  # 1,000 gpm, half
    assert called_to_mind(ask(run, "fireflow", length="61", width="50", supply="2000", involved="50", floors="2")) == ["area_over"]
    assert called_to_mind(ask(run, "fireflow", **ROOM, involved="75", supply="500")) == ["past_half"]
    assert called_to_mind(ask(run, "fireflow", by="volume", **ROOM, supply="500")) == ["a_floor"]


def test_what_is_drawn(run):
    """Shares of the larger flow: 125 of 500, and 100 of 125."""
    assert ask(run, "fireflow", **ROOM)["picture"] == {"asked": {"share": pytest.approx(0.25), "text": "125"}, "supply": {"share": 1, "text": "500"}}
    assert ask(run, "fireflow", **ROOM, supply="100")["picture"]["supply"] == {"share": pytest.approx(0.8), "text": "100"}


def test_the_tank_against_it(run):
    """By hand: four fifths of 750 gal are 600: at the 500 gpm asked 1.2 minutes, on one line of 150 gpm 4; without a tank nothing is said of one."""
    told = ask(run, "fireflow", **ROOM, involved="100", tank="750", line="150")
    assert (row(told, "tank_asked")["text"], row(told, "tank_line")["text"]) == ("1.2", "4.0")
    assert [each for each in told["cautions"] if each["code"] == "tank_alone"] == [{"code": "tank_alone", "level": "caution", "amount": "1.2", "flow": "150", "wanted": "4.0"}]
    assert "tank_alone" not in called_to_mind(ask(run, "fireflow", **ROOM))


WHOLE = {"by_area_gpm": {"length_ft": 50, "width_ft": 30, "floors": 1, "involved_percent": 25, "exposures": 0}, "by_volume_gpm": {"volume_ft3": 12000},
         "store_gal": {"volume_ft3": 12000, "hazard": 7, "construction": 1, "is_exposed": False}, "delivery_gpm": {"stored_gal": 0}, "lines_for": {"flow_gpm": 0, "line_gpm": 1}}


@pytest.mark.parametrize(("function", "name"), [(function, name) for function, given in WHOLE.items() for name in given if name != "is_exposed"])
def test_what_is_below_none_is_refused_by_name(run, function, name):
    assert run("supply.fireflow", function, **WHOLE[function]) is not None
    with pytest.raises(CalcError) as refusal:
        run("supply.fireflow", function, **{**WHOLE[function], name: -1})
    assert refusal.value.field == name
