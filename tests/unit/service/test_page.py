"""A service test as typed, in any units, to a plan and a verdict that read the same."""
import copy

import pytest

from calc.base.errors import CalcError
from calc.service import parts
from site_src.content import standards, units
from tests.unit.service.made import a_plan, of

US = units.fine("US")


def a_record(**changes):
    """A test begun, typed in US units: the site is set up, the governed speed is read, a reading is on its way."""
    return {
        "rig": {"pump_rated": "1250@US", "drive": "midship", "pump_stages": "1", "pump_ratio": "2", "governed": "2200",
                "tank": "750@US", "meters": "0", "speed_capacity": "1600"},
        "standard": standards.standard("us", "annual"),
        "conditions": {"source": "draft", "flow_by": "pitot", "air_f": "70@US", "water_f": "60@US", "barometer_inhg": "29.9@US",
                       "altitude_ft": "500@US", "lift_ft": "10@US", "depth_ft": "6@US", "strainer_ft": "3@US",
                       "suction_size_in": "6@US", "suction_length_ft": "20@US", "suction_lines": "1", "tips_in": ["2.25@US"]},
        "accuracy": {"discharge_psi": "2@US"},
        "tests": {
            "governed": {"values": {"governed_rpm": "2210", "panel_rpm": "2200"}},
            "capacity": {
                "attempts": [{"tip": {"tip_in": "2.25@US", "count": 1}, "clock_s": 10, "sets": [
                    {"at_s": 0, "values": {"discharge_psi": "145@US", "pitot_psi": ["70@US"], "engine_rpm": "1650"}}]}],
                "draft": {"tip": {"tip_in": "2.25@US", "count": 1}, "values": {"discharge_psi": "140@US", "pitot_psi": ["70@US"]}},
            },
        },
        **changes,
    }


READY = {  # every check before water of a midship pump, answered yes
    "checks_dry": {"values": dict.fromkeys(parts.CHECKS["checks_dry"], "yes")},
    "interlock": {"values": {field["id"]: "yes" for field in of(a_plan(), "interlock")["fields"]}},
    "shift": {"values": {field["id"]: "yes" for field in of(a_plan(), "shift")["fields"]}},
}


def answered(run, record, shown="US"):
    return run("service.page", "answer", record=record, units=units.fine(shown))


def test_answer(run):
    """By hand: 20 ft of 6 in hose lose 5.2 ft at 1,250 gpm, so the gauge shows 150 - 15.2 / 2.3 = 143.39, and no less; 145 is 151.6 net, 140 is 146.6."""
    told = answered(run, a_record())
    assert told["problems"] == []
    capacity = of(told["plan"], "capacity")
    assert (capacity["gauge_text"], capacity["flow_text"], capacity["net_text"], capacity["loss_text"]) == ("144", "1250", "150", "5.2")  # 143.35 exactly, and a needle shows no tenths
    assert capacity["hold_texts"] == ["146", "148"]  # by hand, as in test_hold with a gauge that errs 2: 143.39 + 2 x root((4 + 0.047 + 0.115) / 3) = 145.75, and 3 more
    assert capacity["tips"][0]["pitot_text"] == "70"  # 69.116, and no less
    assert capacity["expected"][0]["engine_text"] == "1600"
    judged = of(told["verdict"], "capacity")["sets"][0]
    assert judged["figures"][1]["value_text"] == "151.6"
    live = told["live"]["capacity"]
    assert (live["figures"][1]["value_text"], live["status"], live["missing"]) == ("146.6", "fail", ["engine_rpm"])
    assert of(told["verdict"], "governed")["status"] == "pass"
    assert told["verdict"]["status"] == "not_proven"


@pytest.mark.parametrize(
    ("pitot", "shown", "text", "status"),
    [  # by hand: 29.83 x 0.9957 x 2.25^2, 150.36 a root of psi, and 1 US gallon is 0.83267 imperial: short is never shown as enough
        ("71", "US", "1267", "pass"),  # 1,266.9
        ("69.1", "US", "1249", "fail"),  # 1,249.9 of 1,250
        ("69.12", "US", "1250", "pass"),      # 1,250.04
        ("69.1", "imperial", "1040", "fail"),  # 1,040.7 of 1,040.8
    ],
)
def test_a_flow_is_shown_as_a_gauge_shows_it(run, pitot, shown, text, status):
    """In whole units, its band too, and not past the limit it is held to; what a file takes stays to the tenth."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["values"]["pitot_psi"] = [f"{pitot}@US"]
    flow = answered(run, record, shown)["live"]["capacity"]["figures"][0]
    assert (flow["value_text"], flow["status"]) == (text, status)
    assert float(flow["exact_text"]) == pytest.approx(flow["value"] * (0.83267 if shown == "imperial" else 1), abs=0.06)
    assert "." not in flow["band_text"]


@pytest.mark.parametrize(
    ("draft", "expected"),
    [
        (None, [("discharge_psi", "blank"), ("pitot_psi", "blank"), ("engine_rpm", "blank")]),
        ({"discharge_psi": "140@US", "pitot_psi": ["70@US"]}, [("engine_rpm", "blank")]),
        ({"discharge_psi": "140@US", "pitot_psi": ["99999@US"], "engine_rpm": "1600"}, [("pitot_psi", "blank")]),
        ({"discharge_psi": "145@US", "pitot_psi": ["70@US"], "engine_rpm": "1600"}, []),
        # 1,250 gpm +- 5 %; 29.83 x 0.997 x 2.25^2 is 150.6 a root of psi: 62 psi is 1,186 gpm, 63 is 1,195
        ({"discharge_psi": "145@US", "pitot_psi": ["62@US"], "engine_rpm": "1600"}, [("flow_gpm", "outside")]),
        ({"discharge_psi": "145@US", "pitot_psi": ["63@US"], "engine_rpm": "1600"}, []),
        ({"discharge_psi": "145@US", "pitot_psi": ["80@US"], "engine_rpm": "1600"}, [("flow_gpm", "outside")]),
        ({"discharge_psi": "100@US", "pitot_psi": ["70@US"], "engine_rpm": "1600"}, []),  # short of pressure: a reading that fails
    ],
)
def test_what_a_run_waits_for(run, draft, expected):
    """Time counts once a whole reading stands whose flow is in its band."""
    record = a_record()
    del record["tests"]["capacity"]["draft"]
    if draft:
        record["tests"]["capacity"]["draft"] = {"tip": {"tip_in": "2.25@US", "count": 1}, "values": draft}
    record["tests"].update(READY)
    assert [(each["id"], each["code"]) for each in answered(run, record)["waits"]["capacity"]] == expected


@pytest.mark.parametrize(
    ("altitude", "vacuum", "expected"),
    [("500@US", "", [("vacuum_reached_inhg", "blank")]), ("500@US", "21.5@US", [("vacuum_reached_inhg", "outside")]), ("500@US", "22@US", []),
     ("5000@US", "19@US", []), ("", "19@US", [])],  # 3 inHg less at 5,000 ft; where the height is not known the least is not
)
def test_what_a_hold_waits_for(run, altitude, vacuum, expected):
    """The five minutes count once the vacuum is reached that they hold."""
    record = a_record(tests={"vacuum": {"values": {"vacuum_reached_inhg": vacuum}}})
    record["conditions"]["altitude_ft"] = altitude
    assert [(each["id"], each["code"]) for each in answered(run, record)["waits"]["vacuum"]] == expected


def test_no_tip_no_flow(run):
    """Where no tip at hand fits, the clock waits for tips."""
    record = a_record(tests=READY)
    record["conditions"]["tips_in"] = ["0.75@US"]
    assert answered(run, record)["waits"]["capacity"][0] == {"id": "tips_in", "code": "blank"}


def test_in_other_units(run):
    """By hand: 143.391 psi is 988.65 kPa and 9.8865 bar; what is to be set is rounded so that the point is reached."""
    assert of(answered(run, a_record(), "SI")["plan"], "capacity")["gauge_text"] == "990"  # 988.4 kPa, to the next 5
    assert of(answered(run, a_record(), "SI")["plan"], "capacity")["hold_texts"] == ["1005", "1025"]  # 1004.9 to 1025.6 kPa, to the marks between them
    # 1,250 gpm are 4731.8 L/min, 150 psi 1034.2 kPa
    assert [of(answered(run, a_record(), "SI")["plan"], "capacity")[name] for name in ("flow_text", "net_text")] == ["4732", "1035"]
    assert of(answered(run, a_record(), "bar")["plan"], "capacity")["gauge_text"] == "9.9"  # 9.884 bar, to the next 0.05
    assert of(answered(run, a_record(), "bar")["plan"], "capacity")["hold_texts"] == ["10.05", "10.25"]  # 10.049 to 10.256 bar, the same
    limits = {limit["id"]: limit for limit in of(answered(run, a_record(), "SI")["plan"], "conditions")["limits"]}
    # 0 and 110 F are -17.78 and 43.33 C: inside them whatever is shown
    assert (limits["air_f"]["least_text"], limits["air_f"]["most_text"]) == ("-17.7", "43.3")


@pytest.mark.parametrize(("standard", "shown", "expected"), [("us", "US", "150"), ("us", "SI", "1034"), ("canada", "SI", "1000")])
def test_points_are_named_by_their_pressure(run, standard, shown, expected):
    """By hand: 150 psi is 1034.2 kPa; the Canadian point of that name is 1000 kPa as its own data have it."""
    told = answered(run, a_record(standard=standards.standard(standard, "annual")), shown)
    assert {point["text"] for point in told["points"] if point["id"] == "at_150"} == {expected}


@pytest.mark.parametrize(
    ("text", "shown", "expected"),
    [("50@US", "SI", "10"), ("10@SI", "US", "50"), ("-40@US", "bar", "-40"), ("70@US", "US", "70"), ("70@US", "imperial", "70"), ("warm@US", "SI", "warm")],
)
def test_temperature_shown(run, text, shown, expected):
    """50 F is 10 C, and -40 is both."""
    assert run("base.entry", "shown", units=units.fine(shown), kind="temperature", text=text) == expected


@pytest.mark.parametrize(("text", "expected"), [("50@US", 50), ("10@SI", 50), ("-40@bar", -40)])
def test_temperature_read(run, text, expected):
    """The same the other way."""
    assert run("base.entry", "quantity", units=US, kind="temperature", field="air", text=text) == pytest.approx(expected)


def test_metric_readings_are_the_same_test(run):
    """145 psi typed as 999.74 kPa, 70 psi as 482.633, 2 1/4 in as 57.15 mm: the same verdict to a part in 10,000."""
    record = a_record()
    attempt = record["tests"]["capacity"]["attempts"][0]
    attempt["tip"]["tip_in"] = "57.15@SI"
    attempt["sets"][0]["values"].update({"discharge_psi": "999.74@SI", "pitot_psi": ["482.633@SI"]})
    one, other = (of(answered(run, each)["verdict"], "capacity")["sets"][0]["figures"] for each in (a_record(), record))
    assert [figure["value"] for figure in other] == pytest.approx([figure["value"] for figure in one], rel=1e-4)


@pytest.mark.parametrize(
    ("path", "value", "place", "code"),
    [
        (("conditions", "air_f"), "hot@US", "conditions.air_f", "not_a_number"),
        (("conditions", "lift_ft"), "-5@US", "conditions.lift_ft", "out_of_range"),
        (("conditions", "suction_lines"), "0", "conditions.suction_lines", "out_of_range"),
        (("rig", "tank"), "big@US", "rig.tank", "not_a_number"),
        (("tests", "governed", "values", "governed_rpm"), "fast", "tests.governed.governed_rpm", "not_a_number"),
        (("tests", "capacity", "attempts", 0, "sets", 0, "values", "discharge_psi"), "x@US", "tests.capacity.0.0.discharge_psi", "not_a_number"),
        (("tests", "capacity", "attempts", 0, "sets", 0, "values", "discharge_psi"), "-1@US", "tests.capacity.0.0.discharge_psi", "out_of_range"),
        (("tests", "capacity", "draft", "values", "discharge_psi"), "-1@US", "tests.capacity.draft.discharge_psi", "out_of_range"),
        (("tests", "capacity", "draft", "values", "pitot_psi"), ["99999@US"], "tests.capacity.draft.pitot_psi.0", "out_of_range"),
        (("conditions", "water_f"), "-50@US", "conditions.water_f", "out_of_range"),
        (("tests", "conditions"), {"values": {"water_end_f": "101@SI"}}, "tests.conditions.water_end_f", "out_of_range"),
        (("tests", "vacuum"), {"values": {"vacuum_reached_inhg": "31@US"}}, "tests.vacuum.vacuum_reached_inhg", "out_of_range"),
    ],
)
def test_problems(run, path, value, place, code):
    """What cannot be used is told at its place, counts as not read, and the rest is judged all the same."""
    record = copy.deepcopy(a_record())
    within = record
    for step in path[:-1]:
        within = within[step]
    within[path[-1]] = value
    told = answered(run, record)
    assert [(problem["place"], problem["code"]) for problem in told["problems"]] == [(place, code)]
    assert told["verdict"]["status"] == "not_proven"


@pytest.mark.parametrize(
    ("shown", "typed", "least", "most", "is_below"),
    [("US", "99999@US", "0", "200", False), ("SI", "-1@SI", "0", "1378", True), ("bar", "14@bar", "0", "13.78", False)],
)
def test_bounds_are_told_in_the_units_shown(run, shown, typed, least, most, is_below):
    """By hand: a pitot gauge that ends at 200 psi ends at 1,378.95 kPa and 13.7895 bar; what is told is inside it."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["values"]["pitot_psi"] = [typed]
    (problem,) = answered(run, record, shown)["problems"]
    assert (problem["least_text"], problem["most_text"], problem["is_below"], problem["kind"]) == (least, most, is_below, "pitot")


@pytest.mark.parametrize(("rig", "conditions"), [({}, a_record()["conditions"]), (a_record()["rig"], {})])
def test_no_plan(run, rig, conditions):
    """Without a rating, or without a source, there is no plan, and it is said why."""
    told = answered(run, a_record(rig=rig, conditions=conditions, tests={}))
    assert told["plan"] is None
    assert told["problems"]


def test_a_blank_is_no_zero(run):
    """A blank reading is no reading."""
    record = a_record()
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["values"]["discharge_psi"] = "@US"
    judged = of(answered(run, record)["verdict"], "capacity")
    assert judged["sets"][0]["figures"][1]["value"] is None and judged["status"] == "not_proven"


def test_an_error_of_an_instrument_that_is_none(run):
    """An accuracy that cannot be read is told, and the band it would have given is not guessed."""
    told = answered(run, a_record(accuracy={"discharge_psi": "little@US"}))
    assert told["problems"] == [{"place": "accuracy.discharge_psi", "code": "not_a_number"}]


@pytest.mark.parametrize("record", [None, [], "test", {}, {"standard": "us"}])
def test_no_record(run, record):
    """What is no record of a test is refused whole."""
    with pytest.raises(CalcError) as refused:
        answered(run, record)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")


def with_sets(count, **values):
    """A record whose capacity run holds so many sets with one reading that cannot be."""
    record = a_record()
    one, = record["tests"]["capacity"]["attempts"][0]["sets"]
    bad = {"at_s": 0, "values": {**one["values"], **values}}
    record["tests"]["capacity"]["attempts"][0]["sets"] = [copy.deepcopy(bad) for _ in range(count)]
    return record


def test_a_test_full_of_what_cannot_be(run):
    """Impossible readings are told one by one; one taken before its run began is no test."""
    assert len(answered(run, with_sets(60, discharge_psi="-1@US"))["problems"]) == 60
    record = a_record()
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["at_s"] = -1
    with pytest.raises(CalcError) as refused:
        answered(run, record)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")


def test_a_suction_hose_of_no_length(run):
    """Suction hose that has no length is told at its field; the plan stands without it."""
    record = a_record()
    record["conditions"]["suction_length_ft"] = "0@US"
    told = answered(run, record)
    assert told["problems"] == [{"place": "conditions.suction_length_ft", "code": "out_of_range"}]
    assert of(told["plan"], "capacity")["gauge_text"] is None


def test_a_tip_that_is_none(run):
    """A reading on its way through a tip without a bore is told at its place, and the rest stands."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["tip"]["tip_in"] = "0@US"
    told = answered(run, record)
    assert told["problems"] == [{"place": "tests.capacity.draft.tip_in", "code": "not_positive"}]
    assert "capacity" not in told["live"] and told["plan"]


def test_a_vacuum_that_rose_by_itself(run):
    """No pump gains vacuum with the primer off: the later reading is told as the wrong way round, at its place."""
    record = a_record()
    record["tests"]["vacuum"] = {"values": {"vacuum_reached_inhg": "23@US", "vacuum_after_inhg": "24@US"}}
    told = answered(run, record)
    assert told["problems"] == [{"place": "tests.vacuum.vacuum_after_inhg", "code": "wrong_way"}]
    assert of(told["verdict"], "vacuum")["status"] == "not_proven"


@pytest.mark.parametrize(("strainer", "codes"), [("12@US", ["deeper_than_water"]), ("6.1@US", ["deeper_than_water"]), ("6@US", []), ("1.5@SI", [])])
def test_a_strainer_deeper_than_its_water(run, strainer, codes):
    """12 ft under in 6 ft of water contradict each other: said at the field, and neither depth is met. Hand: 1.5 m is 4.9 ft."""
    record = a_record()
    record["conditions"]["strainer_ft"] = strainer
    told = answered(run, record)
    assert [(problem["place"], problem["code"]) for problem in told["problems"]] == [("conditions.strainer_ft", code) for code in codes]
    site = {figure["id"]: figure for figure in of(told["verdict"], "conditions")["figures"]}
    for name in ("depth_ft", "strainer_ft"):
        assert (site[name]["value"] is None) == bool(codes)


def test_a_tip_past_any_pump(run):
    """A file may bring a reading that is being entered at a tip of 150 in, by hand 29.84 x 150 x 150 x the root of 70 = 5.6 million gpm."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["tip"]["tip_in"] = "150@US"
    told = answered(run, record, "SI")
    assert told["live"] == {} and told["problems"] == [{"place": "tests.capacity.draft.value", "code": "too_large"}]
