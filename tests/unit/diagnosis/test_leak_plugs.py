"""What was plugged to find a leak: opened again one by one, the reliefs and the cooler first, and none left."""
import itertools

import pytest

from calc.base.errors import CalcError
from site_src.content import data

FILE = data.load("diagnose/water_loss")
PLUGS = FILE["plug"]
NAMES = [plug["id"] for plug in PLUGS]
FIRST = ["intake_relief", "thermal_relief", "cooler_lines"]  # trade review A4: what bursts or scalds if it stays plugged


def restore(run, listed, opened):
    return run("diagnosis.leak", "restore", plugs=PLUGS, listed=listed, opened=opened)


def test_reliefs_and_cooler_first(run):
    """Whatever was plugged, in whichever order, nothing else may be opened before the reliefs and the cooler lines."""
    assert [plug["id"] for plug in PLUGS if plug.get("first")] == FIRST
    told = restore(run, ["drains", "cooler_lines", "intake_relief", "discharge_caps"], [])
    assert told == {"open": ["intake_relief", "cooler_lines", "drains", "discharge_caps"], "next": ["intake_relief", "cooler_lines"]}
    told = restore(run, ["drains", "cooler_lines", "intake_relief"], ["cooler_lines", "intake_relief"])
    assert told == {"open": ["drains"], "next": ["drains"]}


def test_nothing_is_left_only_when_all_is_open(run):
    """Every set of plugs, every part of it opened: the list is empty for the whole set and for no less."""
    for count in range(4):
        for listed in itertools.combinations(NAMES, count):
            for opened in ([], listed[:1], listed):
                told = restore(run, list(listed), list(opened))
                assert set(told["open"]) == set(listed) - set(opened)
                assert bool(told["open"]) == bool(told["next"])


@pytest.mark.parametrize(("listed", "opened", "field"), [(["odd"], [], "listed"), ([], ["odd"], "opened"), ("drains", [], "listed"), ([], None, "opened")])
def test_refusals(run, listed, opened, field):
    """What is no plug of the list is refused by its name."""
    with pytest.raises(CalcError) as refusal:
        restore(run, listed, opened)
    assert (refusal.value.field, refusal.value.code) == (field, "unknown_part")


def test_whatever_is_plugged_is_listed():
    """Each part whose words cap, plug, blank or shut something has its rows in the list; each row belongs to one part."""
    how = data.words("diagnose")["part_how"]
    plugged = [part["id"] for part in FILE["part"] if any(word in how[part["id"]].lower() for word in ("cap", "plug", "blank", "shut"))]
    assert sorted(plugged) == sorted(part["id"] for part in FILE["part"] if "plugs" in part)
    assert sorted(plug for part in FILE["part"] for plug in part.get("plugs", [])) == sorted(NAMES)
    assert set(data.words("diagnose")["plug"]) == set(NAMES)
