"""The Pressure page's one question: the answer and of its parts those that are wanted, each refused for itself."""
import pytest

from tests.unit.layout.test_answer import OTHER_UNITS, SHELF, a_layout, a_line, a_wye, fog
from tests.unit.layout.test_flowing import AS_ASKED, TANK, UNITS

BOUNDS = {"line": "A", "reach": {"pump": "200", "flow": "", "end": "", "length": "200"}}
PARTS = {"workings": True, "fall": True, "flowing": True, "at_pump": True, "bounds": BOUNDS}


def page(run, *lines, parts=(), units=UNITS, texts=(), profile=None, **layout):
    """What the page shows of these lines."""
    return run("layout.page", "answer", layout={**a_layout(*lines), "now": AS_ASKED, "source": TANK, **layout}, shelf=SHELF, units=units,
               profile=profile, parts={name: PARTS[name] for name in parts}, texts=texts)


@pytest.mark.parametrize("name", ["flowing", "at_pump", "bounds"])
def test_wanted_alone(run, name):
    """Only a part that is in sight is worked out."""
    found = page(run, a_line(), parts=[name])
    assert found["answer"]["pressure"] == "170"  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    assert [part for part in ("flowing", "at_pump", "bounds") if found[part]] == [name]


def test_of_a_rig(run):
    """Its pump's rating is looked at: 250 psi are promised up to half of 500 gpm, and 250 - 169.75 are to spare."""
    assert page(run, a_line(), parts=["at_pump"], profile={"pump_rated": "500"})["at_pump"]["rating"]["margin"] == "80"


@pytest.mark.parametrize(("parts", "has_workings", "has_fall"), [([], False, False), (["workings"], True, False), (["fall"], False, True)])
def test_figures_wanted_alone(run, parts, has_workings, has_fall):
    """Workings with the figures beside them, and numbers to draw by, come where they are wanted."""
    (line,) = page(run, a_line(), parts=parts)["answer"]["lines"]
    assert ("workings" in line, "velocity" in line, "fall" in line) == (has_workings, has_workings, has_fall)


def test_parts_of_one_layout(run):
    """Every part is of the same layout, and none changes what another is told: 42.4 psi is a quarter of what is asked, so half the flow."""
    found = page(run, a_line(), parts=PARTS, now={"pressure": "42.4375", "gates": "set", "shut": []})
    assert (found["answer"]["pressure"], found["at_pump"]["net"], found["flowing"]["flow"], found["bounds"]["longest"]) == ("170", "170", "75", "286")
    again = page(run, a_line(), parts=["at_pump"])
    assert again["at_pump"] == found["at_pump"]


def test_gates_and_shut_lines_are_of_what_flows_alone(run):
    """A line that is shut now still asks its pressure, and a gate that is set takes nothing from how far a line goes."""
    lines = (a_wye(a_line(), a_line(id="B", length="100")),)
    now = {"pressure": "", "gates": "set", "shut": ["B"]}
    found = page(run, *lines, parts=["flowing", "bounds"], now=now)
    alone = page(run, *lines, parts=["bounds"])
    assert found["bounds"] == alone["bounds"]
    assert [line["is_shut"] for line in found["flowing"]["lines"]] == [False, True]
    assert found["answer"]["pressure"] == alone["answer"]["pressure"]


def test_refused(run):
    """A layout that is refused has no answer and no parts; the texts of its inputs stand."""
    found = page(run, a_line(height="up"), parts=PARTS, texts=[["length", "100@ours"]])
    assert found["refusal"] == {"field": "height", "code": "not_a_number", "line": "A"}
    assert [found[name] for name in ("answer", "flowing", "at_pump", "bounds")] == [None] * 4
    assert found["texts"] == ["100"]


def test_part_refused(run):
    """A part that is refused takes nothing from the others."""
    found = page(run, a_line(), parts=PARTS, now={"pressure": "x", "gates": "set", "shut": []})
    assert found["refusal"] == {"field": "gauge", "code": "not_a_number"}
    assert (found["flowing"], found["answer"]["pressure"], found["at_pump"]["net"]) == (None, "170", "170")


def test_texts(run):
    """An entry of another system is read in the page's: 100 ft at four to a unit are 25, and text that is no number stays."""
    found = page(run, a_line(end=fog()), units=OTHER_UNITS, texts=[["length", "100@ours"], ["length", "up@ours"]])
    assert found["texts"] == ["25", "up"]
