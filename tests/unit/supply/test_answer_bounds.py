"""What the water and foam pages take: every amount within its bounds, every choice that is offered, and nothing past them."""
import pytest

from calc.base.errors import CalcError
from site_src.content import reckoners, units
from tests.unit.supply.reckoned import ask

# bounds of each amount in US units, declared here by hand: wider than any rig, narrow enough to catch a slip (common practice);
# draft: a vacuum gauge ends at 30 inHg; hoses side by side are 1 to 4, outlets of a hydrant 1 to 4, tankers 1 to 30
BOUNDS = {
    "hydrant": {"static": (1, 300), "residual": (0, 300), "floor": (0, 100), "flowing": (1, 20000), "outlet": (1, 8),
                "pitot": (1, 200), "length": (0, 5000), "rise": (-500, 500), "wanted": (1, 20000)},
    "tank": {"tank": (1, 100000), "flow": (1, 5000), "pond_length": (1, 5000), "pond_width": (1, 5000), "cover": (0, 40), "stream_width": (0.5, 500),
             "depth": (0.1, 30), "float_length": (1, 500), "float_time": (0.5, 600)},
    "draft": {"rated": (50, 6000), "lift": (0, 40), "altitude": (-1500, 15000), "length": (10, 100), "flow": (1, 6000),
              "vacuum": (0, 30)},
    "relay": {"distance": (1, 50000), "climb": (-3000, 3000), "flow": (1, 10000), "most": (1, 600), "floor": (0, 100),
              "rated": (50, 6000)},
    "joint": {"supply": (0, 300), "before": (1, 600), "wanted": (1, 800), "flow": (1, 5000), "length": (0, 1000),
              "limit": (20, 800)},
    "connection": {"climb": (-200, 2000), "needed": (0, 300), "flow": (1, 5000), "sign": (20, 800), "length": (0, 2000),
                   "allowance": (0, 200), "setting": (10, 400), "supply": (0, 300), "limit": (20, 800), "between_length": (0, 1000)},
    "shuttle": {"load": (10, 20000), "fill": (0.1, 120), "dump": (0.1, 120), "wanted": (1, 10000), "distance": (0, 100),
                "timed": (0, 600), "more_load": (10, 20000), "more_fill": (0.1, 120), "more_dump": (0.1, 120), "portable": (100, 50000)},
    "fireflow": {"length": (1, 2000), "width": (1, 2000), "height": (1, 200), "line": (5, 2000), "supply": (0, 20000), "tank": (1, 100000)},
    "hoselay": {"length": (1, 20000), "rise": (-3000, 3000), "spacing": (0, 5000), "lateral_length": (0, 2000), "nozzle": (10, 150), "flow": (1, 300),
                "fog": (10, 200), "gives": (30, 600), "limit": (50, 800), "shut": (10, 1000), "mid_flow": (1, 2000), "mid": (1, 1000), "end_flow": (1, 2000), "end": (0, 1000)},
    "foam": {"concentrate": (0.1, 20000), "flow": (1, 5000), "minutes": (0.1, 600), "inlet": (50, 400), "plate": (10, 400), "nozzle": (5, 300), "nozzle_flow": (1, 5000), "to_length": (0, 5000), "to_rise": (-300, 300), "rated": (50, 6000),
             "length": (0, 2000), "rise": (-300, 300), "spill_length": (1, 1000), "spill_width": (1, 1000)},
}
COUNTS = {"hydrant": {"lines": (1, 12), "outlets": (1, 4)}, "draft": {"hoses": (1, 4)}, "relay": {"lines": (1, 12)},
          "connection": {"lines": (1, 12), "storey": (1, 150), "between_lines": (1, 12)}, "shuttle": {"tankers": (1, 30), "more_tankers": (1, 30), "tanks": (1, 6)}, "fireflow": {"floors": (1, 50), "exposures": (0, 8)},
          "hoselay": {"wyes": (0, 50), "laterals": (1, 20), "pumps": (2, 6)}, "foam": {"eductors": (1, 40)}}
# what makes a page read an entry at all
READ_WITH = {"flow": {"tip": "fog"}, "fog": {"tip": "fog"}, "outlet": {"known": "pitot"}, "pitot": {"known": "pitot"}, "outlets": {"known": "pitot"}, "timed": {"way": "timed"},
             "setting": {"device": "set"}, **dict.fromkeys(("shut", "mid_flow", "mid", "end_flow", "end"), {"pump": "own"}), "pumps": {"pump": "light", "arranged": "series"}, "arranged": {"pump": "light"}, **dict.fromkeys(("limit", "between", "between_lines", "between_length"), {"engines": "two"}), "climb": {"by": "height"}, "height": {"by": "volume"}, **dict.fromkeys(("more_tankers", "more_load", "more_fill", "more_dump"), {"kinds": "two"}),
             **dict.fromkeys(("to_length", "to_rise"), {"stands": "line"}), **dict.fromkeys(("pond_length", "pond_width", "cover"), {"water_from": "pond"}),
             **dict.fromkeys(("stream_width", "depth", "float_length", "float_time"), {"water_from": "stream"}), "spill_length": {"task": "spill", "flow": "5000@US"}, "spill_width": {"task": "spill", "flow": "5000@US"}, "rate": {"task": "spill"}, "hazard": {"by": "store"}, "construction": {"by": "store"}}
AMOUNTS = [(page, name, *ends) for page, bounds in BOUNDS.items() for name, ends in bounds.items()]
COUNTED = [(page, name, *ends) for page, counts in COUNTS.items() for name, ends in counts.items()]
CHOICES = [(field["page"], field["name"], option)
           for page in reckoners.PAGES for field in reckoners.fields(page) if field["kind"] == "choice"
           for option in field.get("options", []) + [
               choice for family in ("customary", "metric") for choice, _ in field.get(f"{family}_options", [])]]


def refused(run, page, name, text, shown="US"):
    """The refusal of one entry for being out of its bounds, or None where it is taken or another is at fault."""
    try:
        ask(run, page, shown=shown, **{**READ_WITH.get(name, {}), name: text})
    except CalcError as refusal:
        return refusal if (refusal.field, refusal.code) == (name, "out_of_range") else None
    return None


def test_every_amount_is_here():
    """The bounds above are those of every entry that is typed."""
    for page in reckoners.PAGES:
        typed = {field["name"] for field in reckoners.fields(page) if field["kind"] not in ("choice", "hose")}
        assert typed <= {*BOUNDS[page], *COUNTS.get(page, {})}


@pytest.mark.parametrize(("page", "name", "least", "most"), AMOUNTS)
def test_bounds_of_an_amount(run, page, name, least, most):
    """A bound is taken; half of one past it, or half of a bound so small, is not."""
    past = 0.05 if least in (0.1, 0.5) else 0.5
    for value in (least, most):
        assert refused(run, page, name, f"{value}@US") is None
    for value in (least - past, most + past):
        assert refused(run, page, name, f"{value}@US") is not None, value


@pytest.mark.parametrize("shown", [row["id"] for row in units.systems()])
@pytest.mark.parametrize(("page", "name", "least", "most"), AMOUNTS)
def test_told_bounds(run, shown, page, name, least, most):
    """A refusal tells both bounds in the page's unit, less than a step inward, and what it tells is taken."""
    kind = next(field["kind"] for field in reckoners.fields(page) if field["name"] == name)
    scale = units.baked()[shown]["diameter" if kind == "choice" else kind]
    told = refused(run, page, name, "999999@US", shown).facts
    for side, bound in (("least", least), ("most", most)):
        assert refused(run, page, name, f"{told[side]}@{shown}", shown) is None, side
        assert float(told[side]) == pytest.approx(bound * scale["factor"], abs=10 ** -scale["places"])


@pytest.mark.parametrize(("page", "name", "least", "most"), COUNTED)
def test_bounds_of_a_count(run, page, name, least, most):
    """From the least to the most is taken, one less or more is not."""
    for value in (least, most):
        assert refused(run, page, name, str(value)) is None
    for value in (least - 1, most + 1):
        assert refused(run, page, name, str(value)).facts == {"least": str(least), "most": str(most)}


@pytest.mark.parametrize(("page", "name", "option"), CHOICES)
def test_every_choice_is_taken(run, page, name, option):
    """What a page offers calc takes, and nothing that only looks like it."""
    read_with = READ_WITH.get(name, {"known": "pitot"} if name == "shape" else {})
    assert ask(run, page, **{**read_with, name: option})["rows"]
    if "@" not in option:
        with pytest.raises(CalcError) as refusal:
            ask(run, page, **{**read_with, name: f"{option} "})
        assert (refusal.value.field, refusal.value.code) == (name, "unknown")
