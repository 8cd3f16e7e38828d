"""The scale over the pump pressure: where a hose comes to its limit, what the pump is rated for, round figures that fit a phone."""
import pytest

from tests.unit.layout.test_answer import OTHER_UNITS, a_line, a_wye, fog
from tests.unit.layout.test_flowing import UNITS
from tests.unit.layout.test_page import AS_ASKED, SHELF, TANK, a_layout


def scale(run, *lines, profile=None, units=UNITS, source=TANK):
    """The scale of these lines."""
    return run("layout.page", "answer", layout={**a_layout(*lines), "now": AS_ASKED, "source": source}, shelf=SHELF, units=units,
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


def test_other_units(run):
    """In units of a seventh of a psi every figure is seven times as great: 1890 at the hose's limit, up to 2000."""
    found = scale(run, a_line(), units=OTHER_UNITS)
    assert (at(found, "hose"), found["end"], found["step"]) == (pytest.approx(1890), 2000, 500)
