"""What the number is made of, as it is printed, adds up to the number that is printed."""
import random

import pytest

from site_src.content import catalogue, units
from tests.unit.layout.test_answer import a_line, a_wye, fog

HOSES = ("attack-1.75", "attack-2.5", "attack-2")


def added(line):
    return sum(float(text) for text in (line["outlet"], *line["sum"].values()))


def tagged(line):
    ends = line["end"].get("lines")
    entries = {name: line[name] + "@US" for name in ("length", "height")}
    end = {"lines": [tagged(branch) for branch in ends]} if ends else {"kind": "fog", "flow": line["end"]["flow"] + "@US", "pressure": line["end"]["pressure"] + "@US"}
    return {**line, **entries, "end": end}


@pytest.mark.parametrize("system", ["US", "SI", "bar", "imperial"])
def test_parts_add_up(run, system):
    """On 60 random layouts each, of one line and of a wye, in every system, to the last printed digit."""
    chance = random.Random(20 + len(system))
    for _ in range(60):
        lines = [
            a_line(id=name, hose=chance.choice(HOSES), length=str(chance.randrange(25, 600)), height=str(chance.randrange(-60, 90)),
                   end=fog(str(chance.randrange(60, 250)), str(chance.randrange(50, 120))))
            for name in "AB"
        ]
        top = a_wye(*lines, hose="attack-2.5", device="wye", loss="", length=str(chance.randrange(50, 400))) if chance.random() < 0.5 else lines[0]
        read = run("layout.answer", "answer", layout={"crew": "2", "lines": [tagged(top)]}, shelf=catalogue.shelf(), units=units.shown_in(system))
        for line in read["lines"]:
            assert added(line) == pytest.approx(float(line["inlet"]), abs=1e-9)


def test_a_sum_that_rounding_parted(run):
    """By hand, C 15.5 and 0.434 psi a foot from the handbook: where the parts round to one more than the number, the largest gives it."""
    line = a_line(hose="attack-1.75", length="103", height="29", end=fog("135", "100"))
    # 15.5 x 1.35^2 x 1.03 = 29.096; 0.434 x 29 = 12.586; 141.68: apart 29 + 13 + 100 = 142
    [read] = run("layout.answer", "answer", layout={"crew": "2", "lines": [tagged(line)]}, shelf=catalogue.shelf(), units=units.shown_in("US"))["lines"]
    assert (read["inlet"], read["sum"]["friction"], read["sum"]["elevation"]) == ("142", "29", "13")
    # 15.5 x 1.35^2 x 1.05 = 29.66; 0.434 x 31.5 is 13.67; 143.33: apart 30 + 14 + 100 = 144, printed 143: the largest gives one
    line = {**line, "length": "105", "height": "31.5"}
    [read] = run("layout.answer", "answer", layout={"crew": "2", "lines": [tagged(line)]}, shelf=catalogue.shelf(), units=units.shown_in("US"))["lines"]
    assert (read["inlet"], read["friction"], read["sum"]["friction"], read["sum"]["elevation"]) == ("143", "30", "29", "14")
