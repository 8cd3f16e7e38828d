"""Whatever is typed on a page of figures is answered, or refused by the name of one of its entries: a page has no words for any other."""
import random

import pytest

from calc.base.errors import CalcError
from site_src.content import data, reckoners, units
from tests.unit.teaching.test_gear_table import ENTRIES as SPEEDS

CASES = {"cpython": 400, "micropython": 40}
AMOUNTS = ("", "0", "1", "2", "5", "12", "40", "120", "500", "2500", "7.5", "0.5", "5.38", "0.01", "0.000001", "99999", "9999999", "-5")
HEAT = {name: data.load("why/heat")["opening"][name] for name in ("power", "trapped", "tank", "rise")}


def typed(luck, entries, system, marked):
    """Some of a page's entries, typed over."""
    for name in luck.sample(sorted(entries), min(len(entries), luck.randrange(1, 6))):
        text = luck.choice(AMOUNTS)
        entries[name] = f"{text}@{system}" if text and marked(name) else text
    return entries


def held(run, module, entries, **more):
    """The answer, or one of the entries refused."""
    try:
        assert run(module, "answer", entries=entries, **more)
    except CalcError as refusal:
        assert refusal.field in entries or refusal.field == "ratio" and refusal.facts["gear"], (refusal.field, refusal.code, entries)


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_water_and_foam(run, python, page):
    """Choices at random too."""
    luck = random.Random(page)
    for _ in range(CASES[python]):
        system = luck.choice(list(units.baked()))
        family = units.family(system)
        entries = reckoners.opening(page, family)
        options = {field["name"]: [option["id"] for option in reckoners.choices(field, family)] for field in reckoners.fields(page)}
        typed(luck, entries, system, lambda name: True)
        for name in luck.sample(sorted(entries), 3):
            if options.get(name):
                entries[name] = luck.choice(options[name])
        held(run, f"supply.{page}_answer", entries, shelf=reckoners.shelf(page), units=units.shown_in(system))


def test_heat(run, python):
    luck = random.Random("heat")
    for _ in range(CASES[python]):
        system = luck.choice(list(units.baked()))
        held(run, "teaching.warming", typed(luck, dict(HEAT), system, lambda name: True), units=units.shown_in(system))


def test_speeds(run, python):
    luck = random.Random("speeds")
    for _ in range(3 * CASES[python]):
        system = luck.choice(list(units.baked()))
        entries = typed(luck, dict(SPEEDS), system, lambda name: name in ("idle_pressure", "wanted", "pressure_shown", "speed_shown"))
        gears = [{"gear": "2", "ratio": luck.choice(AMOUNTS)}]
        held(run, "teaching.gear_table", entries, gears=gears, units=units.shown_in(system))
