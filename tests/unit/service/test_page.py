"""A service test as typed, in any units, to a plan and a verdict that read the same."""
import pytest

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


@pytest.mark.parametrize(("discharge", "text", "status"), [
    ("143.4@US", "150.0", "pass"),  # by hand: 143.4 + (10 + 5.2) / 2.3 = 150.01
    ("143.35@US", "149.9", "fail"),  # 149.96: short is never shown as enough
    ("144.4@US", "151.0", "pass")])
def test_a_net_pressure_has_one_decimal(run, discharge, text, status):
    """Net pressures that stand one below the other have as many decimals, and none is shown past its point."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["values"]["discharge_psi"] = discharge
    net = answered(run, record, "US")["live"]["capacity"]["figures"][1]
    assert (net["value_text"], net["exact_text"], net["status"]) == (text, text, status)
    assert len(net["band_text"].split(".")[1]) == 1


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
