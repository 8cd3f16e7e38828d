"""Everything that the Test page is told at once: without a plan, of several readings being entered, and of what they lie beside."""
import copy

import pytest

from site_src.content import standards
from tests.unit.service.made import of
from tests.unit.service.test_page import READY, a_record, answered

DRAFT = {"tip": {"tip_in": "2.25@US", "count": 1}, "values": {"discharge_psi": "145@US", "pitot_psi": ["70@US"], "engine_rpm": "1600"}}


def test_no_plan_and_why(run):
    """Nothing is shown of a plan that cannot be; what cannot be read is told with what it can be."""
    record = a_record(rig={}, tests={})
    record["conditions"]["lift_ft"] = "40@US"
    told = answered(run, record)
    lift, rated = told.pop("problems")
    assert told == {"plan": None, "verdict": None, "live": {}, "doubts": {}, "waits": {}, "before": None, "summary": None, "points": []}
    assert (rated["place"], rated["code"]) == ("rig.pump_rated", "not_a_number")
    assert (lift["place"], lift["least_text"], lift["most_text"]) == ("conditions.lift_ft", "0", "34")


def test_the_points_by_name(run):
    """The three of the pressure control, then those of the gauges; a standard without any has none."""
    told = answered(run, a_record())
    assert told["points"] == [{"id": f"at_{psi}", "text": str(psi)} for psi in (150, 90, 250, 150, 200, 250)]
    bare = {name: section for name, section in standards.standard("us", "annual").items() if name not in ("pressure_control", "gauges")}
    assert answered(run, a_record(standard=bare))["points"] == []


def with_drafts(**drafts):
    record = a_record()
    record["tests"] = {name: {"attempts": [], **({"draft": draft} if draft else {})} for name, draft in drafts.items()}
    return record


def test_several_readings_being_entered(run):
    """Each run's is judged by itself; nothing is made of a run in which nothing is being entered."""
    told = answered(run, with_drafts(overload=None, fifty=DRAFT, capacity=DRAFT))
    assert set(told["live"]) == set(told["doubts"]) == {"capacity", "fifty"}
    live = told["live"]
    assert [live[name]["at_s"] for name in ("capacity", "fifty")] == [0, 0]
    # by hand: 145 on the gauge is 151.6 net at 1,250 gpm; half of it through the same hose loses less
    assert (live["capacity"]["status"], live["fifty"]["status"]) == ("pass", "fail")
    assert live["capacity"]["figures"][1]["value_text"] == "151.6"
    assert told["summary"]["status"] == told["verdict"]["status"] == "not_proven"
    assert [point["id"] for point in told["summary"]["points"]] == ["capacity", "overload", "seventy", "fifty"]


def test_readings_past_any_pump(run):
    """A tip of a hundred inches passes 2 million gpm: refused at its place, and the next run's reading is judged all the same."""
    wide = {**copy.deepcopy(DRAFT), "tip": {"tip_in": "100@US", "count": 1}}
    told = answered(run, with_drafts(capacity=wide, fifty=DRAFT))
    assert told["problems"] == [{"place": "tests.capacity.draft.value", "code": "too_large"}]
    assert set(told["live"]) == {"fifty"}


@pytest.mark.parametrize(("values", "tip", "place"), [
    ({"engine_rpm": "fast"}, {}, "engine_rpm"), ({"pitot_psi": ["70@US", "much@US"]}, {}, "pitot_psi.1"), ({}, {"tip_in": "wide@US"}, "tip")])
def test_where_a_reading_cannot_be_read(run, values, tip, place):
    draft = {"tip": {**DRAFT["tip"], **tip}, "values": {**DRAFT["values"], **values}}
    told = answered(run, with_drafts(capacity=draft))
    assert told["problems"] == [{"place": f"tests.capacity.draft.{place}", "code": "not_a_number"}]
    assert told["live"]["capacity"]["status"] == "not_proven"


def test_a_draft_of_nothing_but_its_tip(run):
    told = answered(run, with_drafts(capacity={"tip": DRAFT["tip"], "values": {}}))
    assert told["live"]["capacity"]["missing"][:3] == ["discharge_psi", "pitot_psi", "engine_rpm"]


def kept(engine_rpm, at_s=0):
    return {"at_s": at_s, "values": {"discharge_psi": "140@US", "pitot_psi": ["70@US"], "engine_rpm": engine_rpm}}


@pytest.mark.parametrize(("attempts", "is_doubted"), [
    ([], False), ([[]], False), ([["1700"]], True), ([["1600"]], False),
    ([["1600", "1700"]], True), ([["1700", "1600"]], False),  # the one before it, no other
    ([["1600"], ["1700"]], True), ([["1700"], ["1600"]], False), ([["1700"], []], False),  # of the attempt in hand
])
def test_a_reading_beside_the_one_before(run, attempts, is_doubted):
    """1,600 rpm, 145 psi: after 1,700 rpm at 140 psi it is slower and yet stronger, which an engine and a pump are not."""
    record = with_drafts(capacity=DRAFT)
    record["tests"]["capacity"]["attempts"] = [
        {"tip": DRAFT["tip"], "clock_s": 300, "sets": [kept(rpm, 300 * count) for count, rpm in enumerate(speeds)]} for speeds in attempts]
    doubts = answered(run, record)["doubts"]["capacity"]
    assert doubts == ([{"code": "speed_down_pressure_up", "field": "engine_rpm"}] if is_doubted else [])


def test_more_vacuum_than_the_lift_takes(run):
    """10 ft and 5.2 ft of loss take 13.5 inHg; 25 do not come of them."""
    draft = {**DRAFT, "values": {**DRAFT["values"], "intake_inhg": "25@US"}}
    assert answered(run, with_drafts(capacity=draft))["doubts"]["capacity"] == [{"code": "vacuum_over_lift", "field": "intake_inhg"}]


def test_what_the_clocks_wait_for(run):
    """A run for what is being entered and for the checks before it, a hold for its own figures; a part that no clock counts for nothing."""
    record = with_drafts(capacity=DRAFT)
    record["tests"]["vacuum"] = {"values": {"vacuum_reached_inhg": "24@US"}}
    waits = answered(run, record)["waits"]
    assert set(waits) == {"vacuum", "vacuum_valves", "capacity", "overload", "seventy", "fifty"}
    assert waits["vacuum"] == [] and waits["vacuum_valves"] == [{"id": "vacuum_reached_inhg", "code": "blank"}]
    assert waits["capacity"] == [{"id": name, "code": "unready"} for name in READY]
    record["tests"].update(READY)
    told = answered(run, record)
    assert (told["waits"]["capacity"], told["before"]["open"]) == ([], [])
    # and for tips: by hand, 625 gpm through 2.25 in read 17 psi, under the 40 that a pitot is good from
    assert told["waits"]["fifty"] == [{"id": name, "code": "blank"} for name in ("tips_in", "discharge_psi", "pitot_psi", "engine_rpm")]


def test_every_figure_has_its_text(run):
    """Of plan, verdict and what is being entered alike."""
    told = answered(run, with_drafts(capacity=DRAFT))
    assert {limit["id"]: limit["most_text"] for limit in of(told["plan"], "conditions")["limits"]}["altitude_ft"] == "2000"
    assert {figure["id"]: figure["value_text"] for figure in of(told["verdict"], "conditions")["figures"]}["lift_ft"] == "10"
    assert told["live"]["capacity"]["figures"][1]["least_text"] == "150"


def test_every_figure_has_its_text_in_the_units_shown(run):
    """A reading, how far it may be off, and what was noticed beside its limit. By hand: 1 psi is 6.895 kPa.

    151.609 psi net, 150 asked: 1045.3 of 1034.2 kPa, shown whole and the least inside it; the bands as in test_set, with a gauge that errs by 2 psi. 1,761 rpm are over 1,760.
    """
    record = a_record()
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["values"]["engine_rpm"] = "1761"
    told = of(answered(run, record, "SI")["verdict"], "capacity")
    net = told["sets"][0]["figures"][1]
    assert (net["value_text"], net["least_text"], net["most_text"]) == ("1045", "1035", None)
    assert net["band_text"] == f"{6.894757 * 2 * ((4 + (0.5 / 2.3) ** 2 + (0.78 / 2.3) ** 2) / 3) ** 0.5:.0f}"
    assert [(caution["value_text"], caution["limit_text"]) for caution in told["cautions"]] == [("1761", "1760")]


def test_what_cannot_be_is_told_with_what_it_can_be(run):
    """A gauge that ends at 1,000 psi ends at 6,894.757 kPa; 25 and 32.5 inHg are 84.66 and 110.06: what is told lies inside them."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["values"]["discharge_psi"] = "-1@SI"
    record["conditions"]["barometer_inhg"] = "999@SI"
    told = {problem["place"]: (problem["least_text"], problem["most_text"]) for problem in answered(run, record, "SI")["problems"]}
    assert told == {"conditions.barometer_inhg": ("84.7", "110"), "tests.capacity.draft.discharge_psi": ("0", "6894")}
