"""The Rig page's one question: problems ready to be read, the pressures of beds, and of the rest what is in sight."""
import pytest

from site_src.content import units
from tests.unit.rig.test_profile import SHELF, US, a_rig

LINE = {"name": "Line", "hose": "attack-1.75", "length": "200@US", "crew": "2", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
READINGS = [{"inlet": "150", "outlet": "100", "flow": "150", "length": "200"}]


def page(run, profile, parts=(), shown=US, texts=()):
    """What the page shows of a profile."""
    return run("rig.page", "answer", profile=profile, shelf=SHELF, units=shown, parts=dict(parts), texts=texts)


@pytest.mark.parametrize(("changes", "problem"), [
    ({"idle": "70000"}, {"field": "idle", "typed": "70000", "allowed": {"least": "300", "most": "1500"}}),  # the bounds of calc.rig.fields
    ({"pump_ratio": "11"}, {"field": "pump_ratio", "typed": "11", "allowed": {"least": "0.2", "most": "10"}}),
    ({"beds": [LINE, {**LINE, "length": "0@US"}]}, {"field": "beds.1.length", "typed": "0", "allowed": {"least": "1", "most": "5000"}}),
    ({"beds": [{**LINE, "end": {**LINE["end"], "pressure": "lots"}}]}, {"field": "beds.0.end.pressure", "typed": "lots", "code": "not_a_number"}),
    ({"tank": "5" * 31}, {"field": "tank", "typed": "5" * 31, "code": "too_long"}),
    ({"tank": "5@none"}, {"field": "tank", "typed": "5", "code": "unknown_units"}),
    ({"drive": "steam"}, {"field": "drive", "code": "unknown"}),
])
def test_problems(run, changes, problem):
    """A problem of a number or an amount says what stands in the field, and the bounds where it is past them."""
    (found,) = page(run, a_rig(hoses=[], supply=[], **changes))["problems"]
    assert {key: found.get(key) for key in problem} == problem
    assert ("typed" in found) == ("typed" in problem)


def test_problems_in_other_units(run):
    """Bounds and what was typed stand in the page's units: 1 gal is 3.785 L, rounded inward; here with a comma."""
    (found,) = page(run, a_rig(tank="0.5@US"), shown={**units.shown_in("SI"), "decimal": ","})["problems"]
    assert (found["typed"], found["allowed"]["least"]) == ("2", "4")  # whole liters are read, half a gallon is 1.893 L; the least is a gallon, 3.79 L, rounded inward


def test_beds(run):
    """Each bed's pressure, and what its device takes; none of a bed with a fault, or past any hose."""
    gun = {"name": "Gun", "hose": "", "length": "", "device": "master", "loss": "15@US", "end": {"kind": "fog", "flow": "500@US", "pressure": "100@US"}}
    faulty = {**LINE, "length": "x"}
    far = {**LINE, "length": "5000@US", "end": {**LINE["end"], "flow": "400@US"}}  # by hand: 15.5 x 16 x 50 = 12400 psi
    found = page(run, a_rig(hoses=[], beds=[LINE, faulty, gun, far]), {"beds": True})["beds"]
    # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75; piped, 100 + 15
    assert found == [{"pressure": "170", "is_over": False, "loss": "0"}, None, {"pressure": "115", "is_over": False, "loss": "15"}, None]


@pytest.mark.parametrize(("parts", "names"), [({}, []), ({"beds": True}, ["beds"]), ({"figures": True}, ["figures"]), ({"measured": {"0": READINGS}}, ["measured"])])
def test_wanted_alone(run, parts, names):
    """Only what is in sight is worked out."""
    rig = a_rig(beds=[LINE], hoses=[{"hose": "attack-1.75", "coefficient": "12@US", "origin": "measured"}])
    found = page(run, rig, parts)
    assert [name for name in ("beds", "figures", "measured") if found[name]] == names


def test_measured(run):
    """Readings give a coefficient, by hand 50 / (1.5^2 x 2) = 11.1, or say at which reading they give none."""
    rig = a_rig(hoses=[{"hose": "attack-1.75"}, {"hose": "attack-2.5"}])
    found = page(run, rig, {"measured": {"0": READINGS, "1": [{**READINGS[0], "flow": "x"}]}})["measured"]
    assert float(found["0"]["result"]["coefficient"]) == pytest.approx(50 / 4.5, abs=0.001)
    assert found["1"]["refusal"] == {"field": "flow", "code": "not_a_number", "reading": 0}


@pytest.mark.parametrize("profile", [None, [], {"schema": 2}])
def test_no_profile(run, profile):
    """What is no profile, or one of another version, has its problem and no beds."""
    found = page(run, profile, {"beds": True, "figures": True}, texts=[["length", "100@US"]])
    assert len(found["problems"]) == 1
    assert (found["beds"], found["figures"], found["texts"]) == ([], [], ["100"])


def test_a_stop_in_place_of_a_number(run):
    """A gun made for 800 gpm that would flow 1,000 has a stop and no number."""
    gun = {"name": "Gun", "device": "master", "device_most": "800@US", "end": {"kind": "fog", "flow": "1000@US", "pressure": "100@US"}}
    assert page(run, a_rig(hoses=[], supply=[], beds=[gun]), parts={"beds": True})["beds"] == [{"pressure": None, "is_over": False, "loss": None, "code": "device_over"}]
