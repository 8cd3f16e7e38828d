"""What was typed of a service test, name by name, as calc takes it; and what cannot be read, with its place.

By hand from the definitions of the units: a psi is 6.894757 kPa, a US gallon 3.785412 L, a foot 0.3048 m, an inch 25.4 mm, an inHg
3.386389 kPa; 20 C is 68 F.
"""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

US = units.fine("US")


def facts(run, shown="US", **record):
    return run("service.entries", "facts", record={"standard": {"id": "us"}, **record}, units=units.fine(shown))


def about(amounts):
    return {name: pytest.approx(amount, rel=1e-6) if isinstance(amount, float) else amount for name, amount in amounts.items()}


def test_a_whole_profile(run):
    """Every line of a profile stands under the name that the plan asks for, in calc's units."""
    rig, _, _, problems = facts(run, rig={
        "drive": "midship", "pump_rated": "5000@SI", "governed": "2200", "pump_ratio": "2.28", "tank": "2800@SI", "tank_rate": "1900@SI",
        "relief_set": "862@SI", "pump_stages": "2", "meters": "2", "gauges": "1", "pressure_control": "governor", "other_control": "relief",
        "foam": "proportioner", "intake_relief": "none", "auxiliary": "yes", "override_place": "left step", "new": {"fifty": {"engine_rpm": 1900, "net_psi": 250}},
        "last": {"capacity": {"engine_rpm": 1640}}, "speed_capacity": "1600", "speed_seventy": "1700", "speed_fifty": "1800"})
    assert problems == []
    assert rig == about({
        "standard": {"id": "us"}, "drive": "midship", "rated_gpm": 5000 / 3.785412, "governed_rpm": 2200, "pump_ratio": 2.28,
        "tank_gal": 2800 / 3.785412, "tank_new_gpm": 1900 / 3.785412, "relief_set_psi": 862 / 6.894757, "stages": 2,
        "meters": ["meter_1", "meter_2"], "gauges": ["gauge_1"], "controls": ["governor", "relief"], "foam": "proportioner", "intake_relief": "none",
        "has_override": True, "has_auxiliary_intake": True,
        # what was read when new goes before the profile's own speed
        "new": {"fifty": {"engine_rpm": 1900, "net_psi": 250}, "capacity": {"engine_rpm": 1600}, "seventy": {"engine_rpm": 1700}},
        "last": {"capacity": {"engine_rpm": 1640}}})


@pytest.mark.parametrize("typed", [None, {}, {"drive": "", "foam": "", "tank": "@US", "meters": "@US", "gauges": " ", "pump_stages": "", "auxiliary": "no", "new": None, "last": None}])
def test_a_profile_that_says_nothing(run, typed):
    """What a profile leaves open is not known: neither nothing nor none."""
    rig, _, _, problems = facts(run, rig=typed)
    assert problems == []
    assert rig == {
        "standard": {"id": "us"}, "drive": None, "rated_gpm": None, "governed_rpm": None, "pump_ratio": None, "tank_gal": None, "tank_new_gpm": None,
        "relief_set_psi": None, "meters": None, "gauges": None, "controls": None, "foam": None, "intake_relief": None, "has_override": False, "has_auxiliary_intake": False,
        "new": {}, "last": {}}


@pytest.mark.parametrize(("name", "typed"), [
    (name, "much@US") for name in ("pump_rated", "governed", "pump_ratio", "tank", "tank_rate", "relief_set", "speed_capacity", "speed_seventy", "speed_fifty")])
def test_a_profile_that_cannot_be_read(run, name, typed):
    """Told at the profile's own name; no speed stands for a point whose speed is none."""
    rig, _, _, problems = facts(run, rig={name: typed})
    assert problems == [{"place": f"rig.{name}", "code": "not_a_number"}]
    assert rig["new"] == {}


def test_a_whole_site(run):
    _, conditions, _, problems = facts(run, conditions={
        "source": "draft", "flow_by": "pitot", "foam_by": "volume", "air_f": "20@SI", "water_f": "10@SI", "barometer_inhg": "101.325@SI",
        "altitude_ft": "300@SI", "lift_ft": "3@SI", "depth_ft": "2@SI", "strainer_ft": "1@SI", "suction_size_in": "152.4@SI",
        "suction_length_ft": "6@SI", "suction_lines": "2", "tips_in": ["50.8@SI", "", "2.25@US"]},
        accuracy={"discharge_psi": "20.684271@SI", "vacuum_inhg": "1.6931945@SI", "speed_rpm": "12", "meter_percent": "5", "lift_ft": "0.1524@SI", "pitot_psi": ""})
    assert problems == []
    accuracy, tips_in = conditions.pop("accuracy"), conditions.pop("tips_in")
    assert tips_in == pytest.approx([2, 2.25])
    assert accuracy == about({"discharge_psi": 3.0, "vacuum_inhg": 0.5, "speed_rpm": 12, "meter_percent": 5, "lift_ft": 0.5})
    assert conditions == about({
        "source": "draft", "flow_by": "pitot", "foam_by": "volume", "air_f": 68.0, "water_f": 50.0, "barometer_inhg": 101.325 / 3.386389,
        "altitude_ft": 300 / 0.3048, "lift_ft": 3 / 0.3048, "depth_ft": 2 / 0.3048, "strainer_ft": 1 / 0.3048, "suction_size_in": 6.0,
        "suction_length_ft": 6 / 0.3048, "suction_lines": 2})


def test_a_site_that_says_nothing(run):
    for conditions in (None, {}, {"source": "", "tips_in": None}):
        assert facts(run, conditions=conditions, accuracy=None)[1] == {"tips_in": [], "accuracy": {}}


@pytest.mark.parametrize(("more", "place"), [
    ({"conditions": {"lift_ft": "high@US"}}, "conditions.lift_ft"), ({"conditions": {"tips_in": ["wide@US"]}}, "conditions.tips_in"),
    ({"accuracy": {"lift_ft": "some@US"}}, "accuracy.lift_ft"), ({"tests": {"governed": {"values": {"governed_rpm": "fast"}}}}, "tests.governed.governed_rpm"),
    ({"tests": {"fifty": {"attempts": [{}, {"sets": [{"at_s": 0, "values": {"discharge_psi": "x@US"}}]}]}}}, "tests.fifty.1.0.discharge_psi"),
    ({"tests": {"fifty": {"attempts": [{"sets": [{"at_s": 0}, {"at_s": 9, "values": {"pitot_psi": ["60@US", "x@US"]}}]}]}}}, "tests.fifty.0.1.pitot_psi.1"),
    ({"tests": {"fifty": {"attempts": [{"tip": {"tip_in": "x@US", "count": 1}}]}}}, "tests.fifty.0.tip"),
    ({"tests": {"fifty": {"attempts": [{"sets": [{"at_s": 0, "tip": {"tip_in": "x@US", "count": 1}}]}]}}}, "tests.fifty.0.0.tip"),
])
def test_where_a_problem_lies(run, more, place):
    assert [(problem["place"], problem["code"]) for problem in facts(run, **more)[3]] == [(place, "not_a_number")]


@pytest.mark.parametrize(("typed", "value", "is_below"), [("-0.1@US", -0.1, True), ("34.1@US", 34.1, False)])
def test_a_reading_past_its_instrument(run, typed, value, is_below):
    """34 ft is all that the weight of the air lifts: outside it is refused with what it can be, and counts as not read; at its ends it is read."""
    _, conditions, _, problems = facts(run, conditions={"lift_ft": typed})
    assert conditions["lift_ft"] is None
    assert problems == [{"place": "conditions.lift_ft", "code": "out_of_range", "kind": "length", "value": value, "least": 0, "most": 34, "is_below": is_below}]
    for whole, amount in (("0@US", 0), ("34@US", 34)):
        assert facts(run, conditions={"lift_ft": whole})[1]["lift_ft"] == amount


@pytest.mark.parametrize(("strainer", "is_deeper"), [("4.1@US", True), ("4@US", False), ("3.9@US", False), ("", False)])
def test_a_strainer_below_the_ground(run, strainer, is_deeper):
    """Two readings that cannot both be right prove nothing: neither is kept."""
    _, conditions, _, problems = facts(run, conditions={"depth_ft": "4@US", "strainer_ft": strainer})
    assert problems == ([{"place": "conditions.strainer_ft", "code": "deeper_than_water"}] if is_deeper else [])
    assert conditions["depth_ft"] == (None if is_deeper else 4)
    assert (conditions["strainer_ft"] is None) == (is_deeper or not strainer)


def test_whole_readings(run):
    """A part of figures, one of answers, one not done, and a run with an attempt whose tips were changed on the way."""
    _, _, readings, problems = facts(run, tests={
        "vacuum": {"values": {"vacuum_reached_inhg": "81.273336@SI", "vacuum_after_inhg": ""}, "clock_s": 300},
        "checks_dry": {"values": {"chocks": "yes", "hearing": "no", "fluids": None}},
        "tank": {"not_done": "empty"},
        "capacity": {"attempts": [
            {"clock_s": 60, "stopped": "leak", "tip": {"tip_in": "50.8@SI", "count": 2}, "sets": [
                {"at_s": 0, "values": {"discharge_psi": "1000@SI", "pitot_psi": ["400@SI", ""], "engine_rpm": "1650", "engine_f": "90@SI", "oil_psi": "60@US", "intake_inhg": "10@US"}},
                {"at_s": 55, "tip": {"tip_in": "2.25@US", "count": "1"}}]},
            {}]}})
    assert problems == []
    assert readings.pop("vacuum") == {"not_done": None, "clock_s": 300, "values": {"vacuum_reached_inhg": pytest.approx(24), "vacuum_after_inhg": None}}
    first, second = readings.pop("capacity")["attempts"]
    assert readings == {
        "checks_dry": {"not_done": None, "clock_s": None, "values": {"chocks": "yes", "hearing": "no", "fluids": None}},
        "tank": {"not_done": "empty", "clock_s": None, "values": {}}}
    assert second == {"clock_s": None, "stopped": None, "sets": [], "tip": None}
    assert (first["clock_s"], first["stopped"], first["tip"]) == (60, "leak", {"tip_in": pytest.approx(2), "count": 2})
    assert first["sets"][1] == {"at_s": 55, "tip": {"tip_in": 2.25, "count": 1}}
    pitots = first["sets"][0].pop("pitot_psi")
    assert (pitots[0], pitots[1]) == (pytest.approx(400 / 6.894757), None)
    assert first["sets"][0] == about({"at_s": 0, "tip": None, "discharge_psi": 1000 / 6.894757, "engine_rpm": 1650, "engine_f": 194.0, "oil_psi": 60, "intake_inhg": 10})


@pytest.mark.parametrize(("name", "kind"), [
    ("water_end_f", "temperature"), ("vacuum_after_inhg", "vacuum"), ("barometer_inhg", "barometer"), ("pitot_psi", "pitot"), ("pitot_gpm", "flow"),
    ("at_90.peak_psi", "pressure"), ("suction_length_ft", "length"), ("pipe_in", "diameter"), ("meter_gpm", "flow"), ("panel_rpm", "speed"), ("closing_s", "seconds"),
    ("meter_percent", "percent"), ("tank_gal", "volume"), ("suction_lines", "ratio"), ("foam_sample", "ratio")])
def test_the_unit_is_in_the_name(run, name, kind):
    assert run("service.entries", "kind_of", name=name) == kind


@pytest.mark.parametrize(("text", "is_blank"), [(None, True), ("", True), (" ", True), ("@US", True), (" @SI", True), ("0@US", False), ("0", False), (0, False), (" 1@US", False)])
def test_a_blank(run, text, is_blank):
    assert run("service.entries", "is_blank", text=text) is is_blank


@pytest.mark.parametrize("record", [None, [], "x", {}, {"standard": "us"}, {"standard": None}])
def test_no_record(run, record):
    with pytest.raises(CalcError) as refused:
        run("service.entries", "facts", record=record, units=US)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")
