"""What the number is made of, as it is printed, adds up to the number that is printed."""
import random
from decimal import Decimal

import pytest

from site_src.content import catalogue, units
from tests.unit.layout.test_answer import a_line, a_wye, fog

HOSES = ("attack-1.75", "attack-2.5", "attack-2")
PARTS = ("friction", "nozzle", "inlet", "elevation", "appliance")


def tagged(line):
    ends = line["end"].get("lines")
    entries = {name: line[name] + "@US" for name in ("length", "height")}
    end = {"lines": [tagged(branch) for branch in ends]} if ends else {"kind": "fog", "flow": line["end"]["flow"] + "@US", "pressure": line["end"]["pressure"] + "@US"}
    return {**line, **entries, "end": end}


def summed(run, line, system="US"):
    """The answer to a layout of one line from the pump."""
    return run("layout.answer", "answer", layout={"crew": "2", "lines": [tagged(line)]}, shelf=catalogue.shelf(), units=units.shown_in(system))


@pytest.mark.parametrize("system", ["US", "SI", "bar", "imperial"])
def test_parts_add_up(run, system):
    """On 60 random layouts each, of one line and of a wye, in every system: to the last printed digit, at the least decimals, and each within one of its last digit."""
    chance = random.Random(20 + len(system))
    places = units.shown_in(system)["systems"][system]["pressure"]["places"]
    more = 0
    for _ in range(60):
        lines = [
            a_line(id=name, hose=chance.choice(HOSES), length=str(chance.randrange(25, 600)), height=str(chance.randrange(-60, 90)),
                   end=fog(str(chance.randrange(60, 250)), str(chance.randrange(50, 120))))
            for name in "AB"
        ]
        top = a_wye(*lines, hose="attack-2.5", device="wye", loss="", length=str(chance.randrange(50, 400))) if chance.random() < 0.5 else lines[0]
        read = summed(run, top, system)
        parts = [Decimal(text) for part in PARTS for text in read["sum"][part]]
        assert sum(parts) == Decimal(read["sum"]["total"])
        decimals = max(-part.as_tuple().exponent for part in parts)
        assert decimals in (places, places + 1)
        more += decimals > places
        for line in read["lines"]:
            own = line["workings"]["parts"]
            first, others = Decimal(own["inlet"]), sum(Decimal(own[part]) for part in ("friction", "elevation", "appliance"))
            assert abs(first - others - Decimal(line["workings"]["inlet"]["outlet"])) <= Decimal(10) ** -places  # what it leaves at its end
        if top is lines[0]:
            workings = read["lines"][0]["workings"]["inlet"]
            for part, name in (("friction", "friction"), ("nozzle", "outlet")):
                [text] = read["sum"][part]
                assert read["lines"][0]["workings"]["parts"].get(part, text) == text
                assert abs(Decimal(text) - Decimal(workings[name])) <= (Decimal(1) if decimals > places else Decimal("0.51")) * Decimal(10) ** -decimals
    assert 0 < more < 60


def test_a_sum_that_rounding_parted(run):
    """By hand, C 15.5 and 0.434 psi a foot from the handbook: where whole parts add up to another number, all stand to a tenth; a part that does not change does not read as changed."""
    level = a_line(hose="attack-1.75", length="103", height="0", end=fog("135", "100"))
    # 15.5 x 1.35^2 x 1.03 = 29.096
    assert summed(run, level)["sum"] == {"total": "129", "friction": ["29"], "nozzle": ["100"], "inlet": [], "elevation": [], "appliance": []}
    # 0.434 x 29 = 12.586; 141.68: apart 29 + 13 + 100 = 142
    assert summed(run, {**level, "height": "29"})["sum"] == {"total": "142", "friction": ["29"], "nozzle": ["100"], "inlet": [], "elevation": ["13"], "appliance": []}
    # 15.5 x 1.35^2 x 1.05 = 29.66; 0.434 x 31.5 is 13.67; 143.33: apart 30 + 14 + 100 = 144, beside 143
    answer = summed(run, {**level, "length": "105", "height": "31.5"})
    assert answer["pressure"] == "143"
    assert answer["sum"] == {"total": "143.3", "friction": ["29.6"], "nozzle": ["100"], "inlet": [], "elevation": ["13.7"], "appliance": []}


def test_the_way_that_sets_the_pressure(run):
    """By hand: of a wye's two lines the longer sets the pump, and each run has its own friction."""
    lines = [a_line(id=name, hose="attack-1.75", length=length, height="0", end=fog("100", "100")) for name, length in (("A", "100"), ("B", "200"))]
    wye = a_wye(*lines, hose="attack-2.5", device="wye", loss="10@US", length="100")
    # 2 x 2^2 x 1 = 8 in the trunk, 15.5 x 1 x 2 = 31 in the longer line, 10 for the wye as typed
    assert summed(run, wye)["sum"] == {"total": "149", "friction": ["8", "31"], "nozzle": ["100"], "inlet": [], "elevation": [], "appliance": ["10"]}


def test_a_line_into_an_intake(run):
    """What the next pumper's intake is to have is named so: 20 psi, and in 100 ft of 2½ in, C 2, at 250 gpm 2 x 2.5^2 = 12.5, so 13 beside 33 for 32.5."""
    line = {**a_line(hose="attack-2.5", length="100@US", height="0@US"), "end": {"kind": "inlet", "flow": "250@US", "pressure": "20@US"}}
    answer = run("layout.answer", "answer", layout={"crew": "2", "lines": [line]}, shelf=catalogue.shelf(), units=units.shown_in("US"))
    assert answer["sum"] == {"total": "33", "friction": ["13"], "nozzle": [], "inlet": ["20"], "elevation": [], "appliance": []}
