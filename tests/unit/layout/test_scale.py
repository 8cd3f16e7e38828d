"""The scale over the pump pressure: where a hose comes to its limit, what the pump is rated for, round figures that fit a phone."""
import pytest

from tests.unit.layout.test_answer import OTHER_UNITS, a_line, a_wye, fog
from tests.unit.layout.test_flowing import UNITS
from tests.unit.layout.test_page import AS_ASKED, SHELF, TANK, a_layout


def scale(run, *lines, profile=None, units=UNITS, source=TANK, shelf=SHELF):
    """The scale of these lines."""
    return run("layout.page", "answer", layout={**a_layout(*lines), "now": AS_ASKED, "source": source}, shelf=shelf, units=units,
               profile=profile, parts={}, texts=[])["scale"]


def at(found, code):
    return {limit["code"]: limit["at"] for limit in found["limits"]}.get(code)


def test_level_line(run):
    """200 ft on the level: 169.75 psi, and its hose, tested at 300, works up to nine tenths of that."""
    found = scale(run, a_line())
    assert found["now"] == pytest.approx(169.75)  # by hand: 15.5 x 1.5^2 x 2 + 100
    assert found["limits"] == [{"code": "hose", "line": "A", "at": pytest.approx(270), "text": "270"}]


@pytest.mark.parametrize(
    ("height", "limit_psi"),
    [
        ("-100", 226.6),  # by hand: 100 ft below, 43.4 psi stand on the nozzle's end: 270 - 43.4
        ("100", 270),     # above, the pump's end sees the most
    ],
)
def test_height_below_the_pump_takes_from_the_limit(run, height, limit_psi):
    """With nozzles shut the lowest end sees the pump's pressure and the head down to it."""
    assert at(scale(run, a_line(height=height)), "hose") == pytest.approx(limit_psi)


@pytest.mark.parametrize(("feet_down", "limit_psi"), [("621", 0.486), ("700", None)])
def test_a_hose_that_still_water_fills_past_its_limit(run, feet_down, limit_psi):
    """By hand, 0.434 psi a foot: 270 - 269.514 are left 621 ft down; 700 ft down nothing the pump does is within the limit."""
    assert at(scale(run, a_line(height="-" + feet_down)), "hose") == (limit_psi and pytest.approx(limit_psi))


def test_a_working_limit_of_its_own(run):
    """Where the rig's profile has it, it counts and not nine tenths of the test pressure."""
    shelf = {**SHELF, "hoses": {**SHELF["hoses"], "attack": {**SHELF["hoses"]["attack"], "work_psi": 200}}}
    assert at(scale(run, a_line(), shelf=shelf), "hose") == 200


def test_the_first_hose_to_come_to_its_limit_counts(run):
    """Of lines behind a wye on the level the attack line's 270; a supply line whose class nobody knows names none."""
    found = scale(run, a_wye(a_line(), a_line(id="B")))
    assert [(limit["line"], limit["at"]) for limit in found["limits"]] == [("A", pytest.approx(270))]
    assert scale(run, a_line(hose="supply"))["limits"] == []


@pytest.mark.parametrize(
    ("rated", "source", "rated_psi"),
    [
        # a pump gives 150 psi at its capacity, 200 at seven tenths, 250 at half: NFPA 1911's test points, as in calc.pump.rating
        ("300", TANK, 250),                                              # 150 gpm is half of 300
        ("150", TANK, 150),                                              # all of 150
        ("150", {**TANK, "kind": "fed", "intake": "50"}, 200),           # 50 psi come in: 150 + 50 at the discharge
        ("150", {**TANK, "kind": "fed", "intake": "-149.5"}, 0.5),       # however little is left of it
        ("150", {**TANK, "kind": "fed", "intake": "-160"}, None),        # no gauge shows less than nothing
        ("100", {**TANK, "kind": "fed", "intake": "50"}, None),
        ("100", TANK, None),                                             # past its capacity nothing is promised
        ("", TANK, None),
        ("many", TANK, None),
    ],
)
def test_rating(run, rated, source, rated_psi):
    """What the pump is rated for at this flow, as its discharge gauge would show it; none where that is not known."""
    assert at(scale(run, a_line(), profile={"pump_rated": rated}, source=source), "pump") == (rated_psi and pytest.approx(rated_psi))


@pytest.mark.parametrize(("flow", "end", "step"), [("150", 300, 100), ("300", 400, 100), ("500", 1000, 200), ("20", 300, 100)])
def test_round_figures(run, flow, end, step):
    """It ends at a round figure past the pressure and its limits, by hand: 169.75, 379, 875 and 101.24 psi beside the limit of 270."""
    found = scale(run, a_line(end=fog(flow=flow)))
    assert (found["end"], found["step"]) == (end, step)
    assert found["end"] > max(found["now"], 270)


def test_room_at_the_end(run):
    """A mark stands within its end by 4 %: 295 psi is on a scale to 400; where nothing is asked of the pump the scale is still a step long."""
    assert scale(run, a_line(hose="supply", length="0", end=fog(pressure="295")))["end"] == 400
    downhill = scale(run, a_line(hose="supply", height="-400"))
    assert downhill["now"] < 0 and (downhill["end"], downhill["step"]) == (1, 1)


def test_other_units(run):
    """In units of a seventh of a psi every figure is seven times as great: 1890 at the hose's limit, up to 2000."""
    found = scale(run, a_line(), units=OTHER_UNITS)
    assert (at(found, "hose"), found["end"], found["step"]) == (pytest.approx(1890), 2000, 500)
    assert found["now"] == pytest.approx(222.0625)  # by hand: 37.5 gpm by 800 ft, 7 x 15.5 x 0.375^2 x 8 + 100
