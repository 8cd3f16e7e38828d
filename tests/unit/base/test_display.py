"""The four systems of units: factors from Pint, the same layout the same physics, nothing typed by hand."""
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base import entry
from calc.base.errors import CalcError
from calc.layout import answer as layout_answer
from site_src.content import catalogue, units
from tests.conftest import ROOT

SYSTEMS = [row["id"] for row in units.systems()]
SHELF = catalogue.shelf()


@pytest.mark.parametrize(
    ("system", "kind", "expected"),
    [
        # the definitions: 1 psi = 6.894757 kPa, 1 US gallon = 3.785412 L, 1 ft = 0.3048 m, 1 lbf = 4.448222 N
        ("SI", "pressure", 6.894757),
        ("SI", "flow", 3.785412),
        ("SI", "length", 0.3048),
        ("SI", "diameter", 25.4),
        ("SI", "force", 4.448222),
        ("bar", "pressure", 0.06894757),
        # 1 mile = 1.609344 km, 550 ft lbf/s = 0.7456999 kW, five ninths of a degree
        ("SI", "road_speed", 1.609344),
        ("SI", "power", 0.7456999),
        ("bar", "temperature_rise", 5 / 9),
        # 4.54609 L to the imperial gallon: 3.785412 / 4.54609
        ("imperial", "flow", 0.8326742),
        ("imperial", "pressure", 1),
        # by hand: 6.894757 / 0.3048 / 3.785412^2; the dossier prints 1.5786
        ("SI", "coefficient", 1.578621),
        # by hand: 29.7 x 3.785412 / 25.4^2 / sqrt(6.894757) = 0.06637, of which this is the factor
        ("SI", "tip_constant", 0.06636554 / 29.7),
        # by hand: 0.0505 x 4.448222 / 3.785412 / sqrt(6.894757) = 0.0226
        ("SI", "fog_reaction_constant", 0.02260 / 0.0505),
    ],
)
def test_factors(system, kind, expected):
    """Factors are those of the definitions, whoever works them out."""
    assert units.baked()[system][kind]["factor"] == pytest.approx(expected, rel=1e-4 if "constant" in kind else 1e-6)


def typed(system, kind, amount):
    """An amount in calc's unit as if typed in a system, with all the twelve figures that may be typed."""
    figure = amount * units.baked()[system][kind]["factor"]
    whole = len(str(int(abs(figure))))
    return f"{figure:.{12 - whole}f}@{system}"


@settings(max_examples=60, deadline=None)
@given(
    length_ft=st.integers(1, 1000), rise_ft=st.integers(-100, 200), gpm=st.integers(20, 400), psi=st.integers(20, 200),
    hose=st.sampled_from(["attack-1.75", "attack-2.5", "supply-3", "metric-45", "metric-65", "metric-90"]),
    shown=st.sampled_from(SYSTEMS),
)
def test_one_lay_in_four_systems_is_one_lay(length_ft, rise_ft, gpm, psi, hose, shown):
    """The same hose on the ground needs the same pressure, in whatever units it was typed or is read."""
    answers = []
    for system in SYSTEMS:
        end = {"kind": "fog", "flow": typed(system, "flow", gpm), "pressure": typed(system, "pressure", psi)}
        layout = {"crew": "2", "lines": [{"id": "A", "hose": hose, "length": typed(system, "length", length_ft),
                                       "height": typed(system, "length", rise_ft), "end": end}]}
        try:
            answers.append(layout_answer.answer(layout, SHELF, units.shown_in(shown))["pressure_psi"])
        except CalcError as refused:
            answers.append(refused.code)
    assert answers == [answers[0]] * 4 or answers == pytest.approx([answers[0]] * 4, rel=1e-9, abs=1e-8)


@pytest.mark.parametrize("shown", SYSTEMS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_what_is_shown_does_not_change_what_was_entered(run, system, shown):
    """An entry keeps the system it was typed in: the pressure is the same whichever system the page shows."""
    layout = {"crew": "2", "lines": [{
        "id": "A", "hose": "attack-1.75", "length": typed(system, "length", 200), "height": typed(system, "length", 20),
        "end": {"kind": "fog", "flow": typed(system, "flow", 150), "pressure": typed(system, "pressure", 100)},
    }]}
    answer = run("layout.answer", "answer", layout=layout, shelf=SHELF, units=units.shown_in(shown))
    assert answer["pressure_psi"] == pytest.approx(178.43, rel=1e-6)  # by hand: 100 + 69.75 + 8.68


@pytest.mark.parametrize(
    ("shown", "text", "expected"),
    [
        ("US", "200@US", "200"),      # as typed
        ("SI", "200@US", "61"),       # 60.96
        ("bar", "200@US", "61"),
        ("US", "61@SI", "200"),       # 200.13
        ("SI", "abc@US", "abc"),      # no number comes as it is
        ("SI", "", ""),
        ("SI", "15", "15"),           # unmarked: of the shown system
    ],
)
def test_shown(run, shown, text, expected):
    """An input shows the very text where it was typed in the shown system, and a rounded figure elsewhere."""
    assert run("base.entry", "shown", units=units.shown_in(shown), kind="length", text=text) == expected


@pytest.mark.parametrize(
    ("shown", "text", "expected"),
    [
        # five ninths of a degree, by hand: 2.3 / 1.8 = 1.278; 15 / 1.8 = 8.333; 1.3 x 1.8 = 2.34; 5 x 1.8 = 9
        ("SI", "2.3@US", "1.3"), ("bar", "15@US", "8.3"), ("US", "1.3@SI", "2.3"), ("imperial", "5@bar", "9"), ("US", "2.34@US", "2.34"),
    ],
)
def test_a_rise_is_shown_to_a_tenth(run, shown, text, expected):
    """A rise that was typed in other units is shown to a tenth of a degree, near enough to what the figures use."""
    assert run("base.entry", "shown", units=units.shown_in(shown), kind="temperature_rise", text=text) == expected


def test_metric_set_disagrees_with_the_us_one_as_far_as_the_page_says():
    """The printed metric coefficients are within 10 % of the US ones converted, the widest gap at 125 mm."""
    pairs = [("metric-45", "attack-1.75"), ("metric-65", "attack-2.5"), ("metric-77", "supply-3"), ("metric-100", "supply-4"),
             ("metric-125", "supply-5"), ("metric-150", "supply-6"), ("metric-38", "attack-1.5"), ("metric-50", "attack-2")]
    hoses = SHELF["hoses"]
    gaps = {metric: abs(hoses[metric]["coefficient"] / hoses[us]["coefficient"] - 1) for metric, us in pairs}
    assert max(gaps.values()) < 0.10
    assert max(gaps, key=gaps.get) == "metric-125"
    assert min(gaps.values()) > 0, "two sets, not one converted"


@pytest.mark.parametrize(
    ("kpa", "lpm", "metres", "size", "expected_kpa"),
    [
        # by hand with the printed metric set: C x (Q/100)^2 x (L/100)
        (24.6, 500, 60, "metric-45", 369.0),     # 24.6 x 25 x 0.6
        (3.17, 1000, 75, "metric-65", 237.75),   # 3.17 x 100 x 0.75
        (0.305, 3000, 100, "metric-100", 274.5), # 0.305 x 900 x 1
    ],
)
def test_metric_friction(run, kpa, lpm, metres, size, expected_kpa):
    """Metric hose read in metric units follows the printed metric rule."""
    layout = {"crew": "2", "lines": [{"id": "A", "hose": size, "length": str(metres), "height": "0",
                                   "end": {"kind": "fog", "flow": str(lpm), "pressure": "100"}}]}
    answer = run("layout.answer", "answer", layout=layout, shelf=SHELF, units=units.shown_in("SI"))
    assert float(answer["lines"][0]["workings"]["friction"]["loss"]) == pytest.approx(expected_kpa, abs=0.01)
    assert float(answer["lines"][0]["workings"]["friction"]["coefficient"]) == kpa


CONVERSIONS = re.compile(r"6\.894|0\.0689|3\.785|0\.264|0\.3048|3\.280|4\.448|0\.2248|25\.4|14\.50|1\.578|0\.8326|1\.200|4\.546")


@pytest.mark.parametrize("folder", ["calc", "site_src"])
def test_no_conversion_is_typed_by_hand(folder):
    """No factor between systems of units stands in calc, in scripts or in the site's Python."""
    for path in sorted((ROOT / folder).rglob("*")):
        if path.suffix in (".py", ".js", ".html") and "vendor" not in path.parts:
            found = CONVERSIONS.search(path.read_text(encoding="utf-8"))
            assert not found, f"{path}: {found.group()}"


def test_unknown_systems_are_refused():
    """A mark that names no system is refused at its field."""
    with pytest.raises(CalcError, match="length: unknown_units"):
        entry.quantity(units.shown_in("US"), "length", "length", "5@furlongs")


def test_a_term_of_a_working(run):
    """By hand: 250 gpm counted by hundreds are 2.5; 5 psi are 34.474 kPa, told to two figures more than an answer."""
    us, si = units.shown_in("US"), units.shown_in("SI")
    assert run("base.display", "working", units=us, kind="flow", value=250, counted_by=100) == "2.5"
    assert run("base.display", "working", units=us, kind="flow", value=250) == "250"
    assert run("base.display", "working", units=si, kind="pressure", value=5) == "34.47"


@pytest.mark.parametrize(("system", "kind"), [("furlongs", "pressure"), ("US", "colour")])
def test_no_such_scale(run, system, kind):
    """A system or a quantity that is not there is refused, never guessed."""
    with pytest.raises(CalcError) as refused:
        run("base.display", "scale", units=units.shown_in("US"), system=system, kind=kind)
    assert (refused.value.field, refused.value.code) == ("units", "unknown")


def test_decimal_mark_of_the_page(run):
    """An answer has its language's decimal mark, a point where none is said; nothing else of it changes."""
    comma = {**units.shown_in("bar"), "decimal": ","}
    assert run("base.display", "text", units=comma, kind="pressure", value=100) == "6,9"  # by hand: 100 psi are 6.895 bar
    assert run("base.display", "text", units=units.shown_in("bar"), kind="pressure", value=100) == "6.9"
    assert run("base.display", "text", units={**comma, "shown": "US"}, kind="pressure", value=100) == "100"
    assert run("base.display", "working", units=comma, kind="pressure", value=100) == "6,895"


def test_no_other_mark(run):
    """A mark that is neither a point nor a comma is refused."""
    with pytest.raises(CalcError) as refusal:
        run("base.display", "text", units={**units.shown_in("bar"), "decimal": "x"}, kind="pressure", value=100)
    assert (refusal.value.field, refusal.value.code) == ("units", "unknown")


def test_a_zero_of_its_own(run):
    """A temperature has an offset as well as a factor, whichever page shows it: by hand, (14 - 32) x 5/9 = -10; 100 F are 37.8 C."""
    for scales in (units.shown_in("SI"), units.fine("SI")):
        assert run("base.display", "figure", units=scales, kind="temperature", value=14) == "-10"
        assert run("base.display", "text", units=scales, kind="temperature", value=100) == "37.8"
        assert run("base.entry", "quantity", units=scales, kind="temperature", field="air", text="-10") == pytest.approx(14)


def test_an_instrument_is_read_finer(run):
    """Of one table: a layout's answer to the whole psi, a test's gauge to a tenth, without idle zeros."""
    assert run("base.display", "text", units=units.shown_in("US"), kind="pressure", value=151.25) == "151"
    assert run("base.display", "figure", units=units.fine("US"), kind="pressure", value=151.25) == "151.3"
    assert run("base.display", "figure", units=units.fine("US"), kind="pressure", value=151) == "151"


@pytest.mark.parametrize(("system", "psi", "expected"), [
    # by hand; gauges are marked every 5 psi, 50 kPa, 0.5 bar and a needle is set to a fifth of that, common practice
    ("US", 166.3, "166"), ("imperial", 166.3, "166"),
    ("SI", 166.3, "1150"),  # 1146.6 kPa
    ("SI", 169.75, "1170"),  # 1170.4 kPa
    ("SI", 165.2, "1140"),  # 1139.0 kPa
    ("bar", 166.3, "11.5"),  # 11.466 bar
    ("SI", None, None), ("US", None, None),
])
def test_a_setting_is_as_fine_as_a_gauge(run, system, psi, expected):
    """What is to be set is no finer than a needle can be set; all else reads as it did."""
    shown = units.shown_in(system)
    assert run("base.display", "setting", units=shown, psi=psi) == expected


def test_a_set_pressure_in_kpa_keeps_its_working(run):
    """By hand, 45 mm metric hose of C 24.6 kPa from the handbook: 24.6 x 5.5^2 x 0.6 + 700 = 1146.5 kPa, of which 446 is friction; set 1150."""
    line = {"id": "A", "hose": "metric-45", "length": "60@SI", "height": "0@SI", "runs": "1", "device": "none", "loss": "",
            "end": {"kind": "fog", "flow": "550@SI", "least": "550@SI", "tip": "22@SI", "pressure": "700@SI"}}
    read = run("layout.answer", "answer", layout={"crew": "2", "lines": [line]}, shelf=SHELF, units=units.shown_in("SI"))
    [shown] = read["lines"]
    assert (read["pressure"], shown["gauge"]) == ("1150", "1150")
    parts = shown["workings"]["parts"]
    assert (parts["inlet"], parts["friction"], shown["outlet"], shown["workings"]["inlet"]["inlet"]) == ("1146", "446", "700", "1146.49")
