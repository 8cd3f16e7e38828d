"""Every published example, row by row of the files beside this one, on both Pythons."""
import json
import pathlib
import tomllib

import pytest

from calc.base.errors import CalcError
from calc.layout import examples
from site_src.content import citing, data, evidence
from tests import kept
from tests.published import units

FILES = {path.name: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(pathlib.Path(__file__).parent.glob("*.toml"))}
ROWS = [row for told in FILES.values() for row in told["example"]]
PINT = units.PINT
FACTS = {"id", "topic", "inputs", "expected", "tolerance", "printed", "source", "basis"}
WHOLES = 6  # whole pump pressures whose question and answer both stand on a page that was seen
BASES = ("published", "second-hand", "from memory", "common practice")


def _wye(run, supply_coefficient, supply_length_ft, branches, coefficient, length_ft, flow_gpm, nozzle_psi):
    end = {"kind": "fog", "rated_gpm": flow_gpm, "rated_psi": nozzle_psi}
    branch = {"coefficient": coefficient, "length_ft": length_ft, "end": end}
    supply = {"coefficient": supply_coefficient, "length_ft": supply_length_ft, "end": {"lines": [branch] * branches}}
    report = run("layout.pressure", "discharge_pressure", layout={"lines": [supply]})
    return {"discharge_psi": report["discharge_psi"], "flow_gpm": report["flow_gpm"]}


def _unlike(run, coefficients, length_ft, flow_gpm):
    coefficient = run("hydraulics.hose", "parallel_coefficient", coefficients=coefficients)
    loss_psi = run("hydraulics.hose", "friction_loss_psi", coefficient=coefficient, flow_gpm=flow_gpm, length_ft=length_ft)
    first_gpm, second_gpm = (
        run("hydraulics.hose", "flow_for_loss_gpm", coefficient=each, loss_psi=loss_psi, length_ft=length_ft)
        for each in coefficients
    )
    return {"coefficient": coefficient, "friction_psi": loss_psi, "first_gpm": first_gpm, "second_gpm": second_gpm}


def _standpipe(run, floor, floor_psi, supply_coefficient, supply_length_ft, appliance_psi, coefficient, length_ft, tip_in, nozzle_psi):
    hose = {"coefficient": coefficient, "length_ft": length_ft, "end": {"kind": "smooth", "tip_in": tip_in, "nozzle_psi": nozzle_psi}}
    rise_ft = run("hydraulics.water", "head_ft", pressure_psi=floor_psi * (floor - 1))
    supply = {"coefficient": supply_coefficient, "length_ft": supply_length_ft, "rise_ft": rise_ft, "appliance_psi": appliance_psi,
              "end": {"lines": [hose]}}
    report = run("layout.pressure", "discharge_pressure", layout={"lines": [supply]})
    return {"discharge_psi": report["discharge_psi"], "flow_gpm": report["flow_gpm"]}


def whole(run, segments, **end):
    """Pump pressure for hoses one behind another, [name, length_ft, side by side, rise_ft] from the pump on."""
    return run("layout.examples", "answers", topic="pdp_whole", inputs={"segments": units.segments(segments), **end})


def _flowing(run, coefficient, length_ft, tip_in, pump_psi):
    line = {"coefficient": coefficient, "length_ft": length_ft, "end": {"kind": "smooth", "tip_in": tip_in, "nozzle_psi": 50}}
    nozzle = run("layout.pressure", "flows", layout={"lines": [line]}, discharge_psi=pump_psi)["lines"][0]["nozzle"]
    return {"nozzle_psi": nozzle["nozzle_psi"], "flow_gpm": nozzle["flow_gpm"]}


def _jet(run, exit_mm, flow_lpm):
    """Speed of the jet, and its push by way of the tip's pressure."""
    tip_in = PINT.Quantity(exit_mm, "mm").to("inch").magnitude
    flow_gpm = PINT.Quantity(flow_lpm, "liter/minute").to("gallon/minute").magnitude
    speed = PINT.Quantity(run("hydraulics.hose", "velocity_ft_per_s", flow_gpm=flow_gpm, bore_in=tip_in), "foot/second")
    nozzle_psi = run("hydraulics.nozzle", "smooth_bore_pressure_psi", tip_in=tip_in, flow_gpm=flow_gpm)
    push = PINT.Quantity(run("hydraulics.nozzle", "smooth_bore_reaction_lbf", tip_in=tip_in, nozzle_psi=nozzle_psi), "lbf")
    return {"speed_m_per_s": speed.to("meter/second").magnitude, "reaction_n": push.to("newton").magnitude}


def _jet_speed(run, nozzle_psi):
    """Of a perfect outlet, by what it flows; its size makes no difference."""
    flow_gpm = run("hydraulics.nozzle", "pitot_flow_gpm", bore_in=1, pitot_psi=nozzle_psi, discharge_coefficient=1)
    return {"speed_ft_per_s": run("hydraulics.hose", "velocity_ft_per_s", flow_gpm=flow_gpm, bore_in=1)}


def _water_at(run, water_f):
    return {
        "vapour_psi": run("hydraulics.water", "vapour_pressure_psi", water_f=water_f),
        "density_lb_per_ft3": run("hydraulics.water", "density_lb_per_ft3", water_f=water_f),
    }


def _rounded_flow(run, tip_in, nozzle_psi, step_gpm):
    flow_gpm = run("hydraulics.nozzle", "smooth_bore_flow_gpm", tip_in=tip_in, nozzle_psi=nozzle_psi)
    return {"flow_gpm": run("hydraulics.friction_rule", "rounded_flow_gpm", flow_gpm=flow_gpm, step_gpm=step_gpm)}


def _points(run, rated_gpm):
    by_pressure = {psi: gpm for gpm, psi in run("pump.rating", "test_points", rated_gpm=rated_gpm)}
    return {"at_200_gpm": by_pressure[200], "at_250_gpm": by_pressure[250]}


def _water_power(run, flow_gpm, head_ft):
    net_psi = run("hydraulics.water", "elevation_psi", rise_ft=head_ft)
    return {"power_hp": run("pump.rating", "water_power_hp", flow_gpm=flow_gpm, net_psi=net_psi)}


def _air(run, altitude_m):
    pressure_psi = run("hydraulics.air", "pressure_psi", altitude_ft=PINT.Quantity(altitude_m, "meter").to("foot").magnitude)
    return {"lift_m": PINT.Quantity(pressure_psi, "psi").to("kPa").magnitude / 9.80665}


def _suction(run, **inputs):
    return {"loss_ft": run("pump.draft", "suction_loss_ft", rows=data.load("water")["suction"], **inputs)}


def _road(run, distance_miles):
    return {"minutes": run("supply.shuttle", "travel_minutes", distance_miles=distance_miles, is_round_trip=False) / 2}


def _minimum_flow(run, rise_f):
    return {"k": 100 / run("pump.heat", "circulation_gpm", power_hp=100, rise_f=rise_f)}


def _some(names, module, function):
    """Only the named answers of a function that gives several."""
    return lambda run, **inputs: {name: run(module, function, **inputs)[name] for name in names}


PHONE = {*examples.FIGURES, *examples.LINES, *examples.SEGMENTS, *examples.SIZES}  # topics that a phone works out by itself
CHECKS = {
    "jet_speed": _jet_speed,
    "water_at": _water_at,
    "vapour_pressure": lambda run, water_f: {"vapour_psi": run("hydraulics.water", "vapour_pressure_psi", water_f=water_f)},
    "flow_at_a_pressure": _flowing,
    "rounded_flow": _rounded_flow,
    "pdp_standpipe": _standpipe,
    "nozzle_jet": _jet,
    "pdp_wye_equal": _wye,
    "parallel_unlike_lines": _unlike,
    "hydrant_lines": _some(("percentage", "drop_percent"), "supply.sources", "additional_lines"),
    "hydrant_first_digit": _some(("first_digit",), "supply.sources", "additional_lines"),
    "air_by_altitude": _air,
    "suction_loss": _suction,
    "pump_points": _points,
    "water_power": _water_power,
    "road_one_way": _road,
    "minimum_flow_constant": _minimum_flow,
}


def answers(run, row):
    """What calc says of a row as calc has it, by the name of what was expected."""
    if row["topic"] in CHECKS:
        return CHECKS[row["topic"]](run, **row["inputs"])
    found = run("layout.examples", "answers", topic=row["topic"], inputs=row["inputs"])
    return {name: found[name] for name in row["expected"]}


def on_the_phone():
    """The rows that a phone can work out by itself, as calc.layout.examples takes them."""
    return [
        {**{part: row[part] for part in ("topic", "inputs", "expected", "tolerance")}, "rounded_down": row.get("rounded_down", False)}
        for row in map(units.in_calc, ROWS) if row["topic"] in PHONE
    ]


def deviation(run, row):
    """How far the answer furthest off is from the expected one, as a share of it, below it negative."""
    row = units.in_calc(row)
    found = answers(run, row)
    return max((found[name] / expected - 1 for name, expected in row["expected"].items()), key=abs)


def by_source(run):
    """Every source with its basis and, by topic, how many examples were checked, the worst deviation, and that of each."""
    found = {}
    for row in ROWS:
        source = citing.written_out(row["source"]) if row["printed"] else ""  # worked by hand: nobody outside agrees with it yet
        topics = found.setdefault((BASES.index(citing.cited(row)["basis"]), source), {})
        topics.setdefault(row["topic"], []).append(deviation(run, row))
    return [
        {"source": source, "basis": BASES[basis], "topics": [
            {"topic": topic, "examples": len(each), "worst": max(map(abs, each)), "points": sorted(each)} for topic, each in sorted(topics.items())
        ]}
        for (basis, source), topics in sorted(found.items())
    ]


@pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])
def test_example(run, row):
    """The answer is the expected one, within what its rounding allows; never below it where its figures were rounded down."""
    row = units.in_calc(row)
    found = answers(run, row)
    assert found.keys() == row["expected"].keys()
    for name, expected in row["expected"].items():
        assert examples.agrees(found[name], expected, row["tolerance"][name], row.get("rounded_down", False))


@pytest.mark.parametrize(
    ("found", "is_rounded_down", "expected"), [(3674.9, True, True), (3640, True, False), (3640, False, True), (3675.1, True, False)],
)
def test_a_tolerance_may_be_one_sided(found, is_rounded_down, expected):
    """By hand: 3,650 printed, rounded down by up to 25; 3,640 is below what any rounding down gives."""
    assert examples.agrees(found, 3650, 25, is_rounded_down) == expected


def test_a_phone_finds_the_same(run):
    """All that a phone can work out agrees there too; what is printed otherwise, or cannot be worked out, is counted as not agreeing."""
    rows = on_the_phone()
    topics = run("layout.examples", "compared", examples=rows)["topics"]
    assert sum(topic["examples"] for topic in topics) == len(rows) > 60
    assert all(topic["agree"] == topic["examples"] for topic in topics)
    [row] = [row for row in rows if row["topic"] == "net_from_draft"]
    expected = {"net_psi": row["expected"]["net_psi"] + 1}
    assert run("layout.examples", "compared", examples=[{**row, "expected": expected}])["topics"][0]["agree"] == 0
    assert run("layout.examples", "compared", examples=[row, {**row, "inputs": {**row["inputs"], "lift_ft": "x"}}])["topics"] == [
        {"topic": "net_from_draft", "examples": 2, "agree": 1, "worst": None}]


def an_example(number, expected, **inputs):
    """The pressure of so many feet, 0.434 psi each, printed to the nearest psi."""
    return {"topic": "elevation_pressure", "inputs": {"rise_ft": number, **inputs}, "expected": {"pressure_psi": expected},
            "tolerance": {"pressure_psi": 0.5}, "rounded_down": False}


def test_how_far_off(run):
    """By hand: 100 ft are 43.4 psi, printed 43, 0.93 % off; 10 ft 4.34, printed 4, 8.5 %; one that cannot be worked out leaves none for its topic, and the next is still counted."""
    good, worse = an_example(100, 43), an_example(10, 4)

    def topic(*rows):
        [told] = run("layout.examples", "compared", examples=list(rows))["topics"]
        return told["examples"], told["agree"], told["worst"]

    assert topic(good) == (1, 1, pytest.approx(0.0093, abs=0.0001))
    assert topic(worse, good) == topic(good, worse) == (2, 2, pytest.approx(0.085, abs=0.001))
    assert topic({**good, "inputs": {"rise_ft": "x"}}, worse) == (2, 1, None)


def test_printed_and_rounded_down(run):
    """43.4 is not what was rounded down to 44, though it is within half of it and a little more."""
    row = {**an_example(100, 43.6), "rounded_down": True}
    assert [topic["agree"] for rounded in (True, False) for topic in run("layout.examples", "compared", examples=[{**row, "rounded_down": rounded}])["topics"]] == [0, 1]


def test_an_appliance_stands_once(run):
    """By hand: 2 x 5^2 x 1 = 50 in 100 ft of 2 1/2 in at 500 gpm, twice one behind the other; 100 at the nozzle and 25 of one appliance: 225."""
    told = run("layout.examples", "answers", topic="pdp_whole", inputs={"segments": [[2, 100, 1, 0], [2, 100, 1, 0]], "nozzle_psi": 100, "flow_gpm": 500, "appliance_psi": 25})
    assert told == {"discharge_psi": pytest.approx(225)}


def test_no_such_topic(run):
    with pytest.raises(CalcError) as refusal:
        run("layout.examples", "answers", topic="weather", inputs={})
    assert (refusal.value.field, refusal.value.code) == ("topic", "unknown")


def test_the_site_carries_them():
    """The rows that a phone works out are those here; where not, run `python -m tests.evidence`."""
    assert json.loads(kept.EXAMPLES.read_text(encoding="utf-8")) == on_the_phone()


def test_the_site_says_so(run, python):
    """The site's Evidence page tells every source, its basis and its deviations as they are."""
    assert kept.is_fresh("published", python, by_source(run))


def test_each_fact_counts_once():
    """No two examples ask the same of the same function and expect the same of it, under whatever name and however rounded."""
    facts = [(examples.FIGURES.get(row["topic"], (row["topic"],))[-1], sorted(map(str, row["inputs"].items())), row["expected"]) for row in map(units.in_calc, ROWS)]
    assert [row["id"] for row, fact in zip(ROWS, facts, strict=True) if facts.index(fact) < ROWS.index(row)] == []


def test_as_many_as_were_asked():
    """At least 60 examples whose own page was seen. Of whole pump pressures, asked for were 20 so seen; there are only so many, and the site says no other number."""
    first_hand = [row for row in ROWS if row["printed"] and citing.cited(row)["basis"] == "published"]
    assert len(first_hand) >= 60
    wholes = [row for row in first_hand if row["topic"].startswith("pdp_")]
    assert len(wholes) == evidence.whole_pressures(evidence.found()["published"]["cpython"])["published"] == WHOLES


@pytest.mark.parametrize("row", [row for row in ROWS if row["topic"] == "tip_flow_understated"])
def test_understated(run, row):
    """A tip flow marked as understated really is more than 4 % below the formula, as its set says."""
    assert row["expected"]["flow_gpm"] < 0.96 * answers(run, row)["flow_gpm"]


def test_every_row_is_checked():
    """Every table of the file is a row, every row has a check and its whole story, and no check is idle."""
    assert all(list(told) == ["example"] for told in FILES.values())
    assert {row["topic"] for row in ROWS} == {*CHECKS, *PHONE} and not PHONE & set(CHECKS)
    assert len({row["id"] for row in ROWS}) == len(ROWS)
    for row in ROWS:
        assert FACTS <= row.keys() <= FACTS | {"note", "rounded_down"}
        assert row["expected"].keys() == row["tolerance"].keys()
        assert row["basis"] in BASES
        assert row["printed"] or ("hand-worked" in row["source"] and row["note"])
