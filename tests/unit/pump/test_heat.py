"""Heat of shut-in and circulating water, against hand-worked figures."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

TYPED = {"power": "60@US", "trapped": "10@US", "tank": "750@US", "rise": "15@US"}


@pytest.mark.parametrize(
    ("function", "arguments", "expected"),
    [
        # 42.4 x 100 / (8.34 x 5) = 101.68
        ("shutoff_rise_f_per_min", {"power_hp": 100, "water_gal": 5}, 4240 / 41.7),
        # the dossier: about 34 gpm to 100 hp at 15 F; 42.4 x 100 / (8.34 x 15) = 33.893
        ("circulation_gpm", {"power_hp": 100, "rise_f": 15}, 4240 / 125.1),
        # 42.4 x 60 / (8.34 x 760) = 0.4014
        ("tank_rise_f_per_min", {"power_hp": 60, "tank_gal": 750, "pump_gal": 10}, 2544 / 6338.4),
    ],
)
def test_heat(run, function, arguments, expected):
    """Each figure is what the hand says, and twice the power warms twice as much."""
    assert run("pump.heat", function, **arguments) == pytest.approx(expected, rel=1e-9)
    arguments = {**arguments, "power_hp": 2 * arguments["power_hp"]}
    assert run("pump.heat", function, **arguments) == pytest.approx(2 * expected, rel=1e-9)
    for name in arguments:
        for value, code in ((0, "not_positive"), (-1, "not_positive"), ("1", "not_a_number"), (1e9, "too_large")):
            with pytest.raises(CalcError) as refusal:
                run("pump.heat", function, **{**arguments, name: value})
            assert (refusal.value.field, refusal.value.code) == (name, code)


def test_answer(run):
    """The page's figures, by hand: 5.084 x 60 / 10 = 30.50; 5.084 x 60 / 15 = 20.3; 5.084 x 60 / 760 = 0.40."""
    told = run("teaching.warming", "answer", entries=TYPED, units=units.shown_in("US"))
    assert (told["shut"], told["circulation"], told["tank"], told["constant"]) == ("31", "20", "0.4", "5.08")
    assert told["terms"] == {"power": "60", "trapped": "10", "tank": "750", "rise": "15"}
    assert told["is_past_rise"] is True  # 30.5 a minute beside 15
    assert run("teaching.warming", "answer", entries={**TYPED, "power": "5@US"}, units=units.shown_in("US"))["is_past_rise"] is False  # 2.5


def test_answer_in_metric(run):
    """By hand: 30.50 / 1.8 = 16.9 C; 20.34 x 3.785 = 77 L/min; 5.084 x 3.785 / 1.8 / 0.7457 = 14.34."""
    told = run("teaching.warming", "answer", entries=TYPED, units=units.shown_in("SI"))
    assert (told["shut"], told["circulation"], told["constant"]) == ("17", "77", "14.34")


def test_no_time_is_told(run):
    """Nothing in the answer is a time: it says how fast, and never how long."""
    told = run("teaching.warming", "answer", entries=TYPED, units=units.shown_in("US"))
    assert set(told) == {"shut", "circulation", "tank", "terms", "constant", "is_past_rise"}


@pytest.mark.parametrize("name", TYPED)
def test_refusals(run, name):
    """What is missing, zero or no number is refused by its own name."""
    for text, code in (("", "empty"), ("0@US", "not_positive"), ("x", "not_a_number")):
        with pytest.raises(CalcError) as refusal:
            run("teaching.warming", "answer", entries={**TYPED, name: text}, units=units.shown_in("US"))
        assert (refusal.value.field, refusal.value.code) == (name, code)


@pytest.mark.parametrize(("name", "least", "most"), [
    ("power", "0.1", "5000"), ("trapped", "0.1", "1000"), ("tank", "1", "20000"), ("rise", "0.1", "180"),  # past any engine, pump, tank and water: common practice
])
def test_bounds(run, name, least, most):
    """What the page takes, and the next thing to either side that it refuses with the bound."""
    shown = units.shown_in("US")
    for text in (least, most):
        assert run("teaching.warming", "answer", entries={**TYPED, name: f"{text}@US"}, units=shown)["terms"][name]
    for past in (float(least) * 0.9, float(most) + 0.9):
        with pytest.raises(CalcError) as refusal:
            run("teaching.warming", "answer", entries={**TYPED, name: f"{past:g}@US"}, units=shown)
        assert (refusal.value.field, refusal.value.code) == (name, "out_of_range")


@pytest.mark.parametrize("name", TYPED)
def test_an_entry_that_is_not_there(run, name):
    """A link may lack one: refused as empty."""
    with pytest.raises(CalcError) as refusal:
        run("teaching.warming", "answer", entries={key: text for key, text in TYPED.items() if key != name}, units=units.shown_in("US"))
    assert (refusal.value.field, refusal.value.code) == (name, "empty")
