"""What a pumping run asks for, offers and expects: US standard, 1,250 gpm. Figures by hand."""
import math

import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import SITE, a_rig
from tests.unit.service.test_plan_parts import fields, without

OTHERS = [("pump_rpm", "speed"), ("panel_rpm", "speed"), ("engine_f", "temperature"), ("oil_psi", "pressure")]


def a_run(run, name="capacity", rig=None, **site):
    plan = run("service.plan", "plan", rig=rig or a_rig(), conditions={**SITE, **site})
    [found] = [test for test in plan["tests"] if test["id"] == name]
    return found


def unneeded(pairs):
    return [{**field, "needed": False} for field in fields(pairs)]


@pytest.mark.parametrize(("flow_by", "measured"), [("pitot", ("pitot_psi", "pitot")), ("meter", ("meter_gpm", "flow")), (None, ("pitot_psi", "pitot"))])
@pytest.mark.parametrize(("source", "intake"), [
    ("draft", unneeded([("intake_inhg", "vacuum")])), ("pressurised", fields([("intake_psi", "pressure")]))])
def test_what_is_read(run, flow_by, measured, source, intake):
    """Gauge, flow and engine speed must be read, and the intake of a pump that is fed; its clock starts once they stand."""
    site = {"source": source, "flow_by": flow_by}
    if flow_by is None:
        told = run("service.plan", "plan", rig=a_rig(), conditions={name: value for name, value in {**SITE, **site}.items() if name != "flow_by"})
        [found] = [test for test in told["tests"] if test["id"] == "capacity"]
    else:
        found = a_run(run, **site)
    assert found["fields"] == fields([("discharge_psi", "pressure"), measured, ("engine_rpm", "speed")]) + intake + unneeded(OTHERS)
    assert found["start"] == ["discharge_psi", measured[0], "engine_rpm"] + [field["id"] for field in intake if field["needed"]]
    assert bool(found["tips"]) is (flow_by != "meter")


def test_what_a_run_aims_at(run):
    """Seventy per cent of 1,250 gpm at 200 psi for ten minutes, read every five; flow within five per cent."""
    found = a_run(run, "seventy")
    assert (found["kind"], found["flow_gpm"], found["net_psi"], found["hold_s"]) == ("run", 875, 200, 600)
    assert (found["flow_least_gpm"], found["flow_most_gpm"]) == (pytest.approx(831.25), pytest.approx(918.75))
    assert (found["interval_s"], found["due_s"]) == (300, [0, 300, 600])


@pytest.mark.parametrize(("hold_s", "interval_s", "due"), [
    (600, 300, [0, 300, 600]), (700, 300, [0, 300, 600, 700]), (300, 300, [0, 300]), (None, 300, [0])])
def test_when_readings_are_due(run, hold_s, interval_s, due):
    assert run("service.runs", "due_s", hold_s=hold_s, interval_s=interval_s) == due


@pytest.mark.parametrize(("function", "given", "field"), [
    ("due_s", {"hold_s": 600, "interval_s": 0}, "interval_s"),
    ("tip_options", {"flow_gpm": 0, "tips_in": [1], "least_psi": 40, "most_psi": 80}, "flow_gpm"),
])
def test_refused(run, function, given, field):
    with pytest.raises(CalcError) as refusal:
        run("service.runs", function, **given)
    assert refusal.value.field == field


def tips(run, flow_gpm, tips_in, least_psi=40, most_psi=80):
    options = run("service.runs", "tip_options", flow_gpm=flow_gpm, tips_in=tips_in, least_psi=least_psi, most_psi=most_psi)
    return [(option["count"], option["place"], option["tip_in"]) for option in options]


def test_tips_by_count_then_by_the_middle(run):
    """Q = 29.7 d² √P: 594 gpm through 1, 2, 3 and 4 tips of such a size that each reads 60, 42 or 78 psi; 60 is the middle."""
    def size_in(pitot_psi, count):
        return math.sqrt(594 / count / 29.7 / math.sqrt(pitot_psi))

    sizes = [size_in(42, 1), size_in(60, 1), size_in(66, 1), size_in(60, 2), size_in(60, 4), size_in(60, 5)]
    assert tips(run, 594, sizes) == [(1, 1, sizes[1]), (1, 2, sizes[2]), (1, 0, sizes[0]), (2, 3, sizes[3]), (4, 4, sizes[4])]


def test_no_more_than_six_ways(run):
    sizes = [math.sqrt(594 / 29.7 / math.sqrt(psi)) for psi in (50, 53, 55.5, 57.5, 59, 60.5, 62, 64.2)]
    assert [place for _, place, _ in tips(run, 594, sizes)] == [5, 4, 6, 3, 7, 2]


def test_the_ends_of_the_pitot_range_are_in_it(run):
    """A 1 in tip passes 29.7 √36 = 178.2 gpm at 36 psi, and half of that flow at 9."""
    assert tips(run, 178.2, [1], 36, 50) == tips(run, 178.2, [1], 20, 36) == [(1, 0, 1)]
    assert tips(run, 178.2, [1], 37, 50) == tips(run, 178.2, [1], 10, 35) == []


@pytest.mark.parametrize(("rated_gpm", "lines", "loss_ft"), [(1500, 1, 7.6), (3000, 2, 7.6)])
def test_suction_lines_share_the_flow(run, rated_gpm, lines, loss_ft):
    """Suction table, from memory: 1,500 gpm through 20 ft of 6 in hose lose 7.6 ft; two such hoses carry 3,000 gpm alike."""
    assert a_run(run, rig=a_rig(rated_gpm=rated_gpm), suction_lines=lines)["suction_loss_ft"] == pytest.approx(loss_ft)


@pytest.mark.parametrize(("site", "field"), [({"suction_length_ft": 0}, "suction_length_ft"), ({"suction_lines": 0}, "suction_lines")])
def test_a_suction_hose_that_cannot_be(run, site, field):
    with pytest.raises(CalcError) as refusal:
        a_run(run, **site)
    assert refusal.value.field == field


def test_a_suction_hose_that_no_table_holds_is_named(run):
    """Without its loss or the lift no gauge can be told; with the lift alone missing the loss still stands."""
    found = a_run(run, suction_size_in=7.5)
    assert (found["missing"], found["suction_loss_ft"], found["gauge_psi"]) == (["suction_size_in"], None, None)
    found = a_run(run, lift_ft=None)
    assert (found["missing"], found["suction_loss_ft"] > 0, found["gauge_psi"]) == (["lift_ft"], True, None)


def expected(run, name, **changes):
    return a_run(run, name, a_rig(**changes))["expected"]


def test_speeds_to_expect(run):
    """Speed goes with the root of the pressure: 1,600 rpm at 155 psi when new are 1,574 at 150; the pump turns twice as fast."""
    new, last = {"capacity": {"engine_rpm": 1600, "net_psi": 155}}, {"capacity": {"engine_rpm": 1650}}
    engine_rpm = 1600 * math.sqrt(150 / 155)
    assert expected(run, "capacity", new=new, last=last) == [
        {"of": "new", "engine_rpm": pytest.approx(engine_rpm), "pump_rpm": pytest.approx(2 * engine_rpm), "is_estimate": False},
        {"of": "last", "engine_rpm": 1650, "pump_rpm": 3300, "is_estimate": False},  # at its rated pressure, none told
    ]
    assert [each["pump_rpm"] for each in expected(run, "capacity", new=new, last=last, pump_ratio=None)] == [None, None]


def test_speeds_of_the_last_test_stand_where_none_are_known_of_the_new_pump(run):
    assert [each["of"] for each in expected(run, "seventy", new={}, last={"seventy": {"engine_rpm": 1700}})] == ["last"]
    assert expected(run, "seventy", new=None, last={"capacity": {"engine_rpm": 1600}}) == []


def test_an_overload_that_was_never_run_is_estimated_from_capacity(run):
    """From 1,600 rpm at the rated 150 psi: 1,600 √(165 / 150) = 1,678; one that was run stands as it was."""
    [estimate] = expected(run, "overload", new={"capacity": {"engine_rpm": 1600}})
    assert (estimate["engine_rpm"], estimate["is_estimate"]) == (pytest.approx(1600 * math.sqrt(1.1)), True)
    [run_before] = expected(run, "overload", new={"capacity": {"engine_rpm": 1600}, "overload": {"engine_rpm": 1690}})
    assert (run_before["engine_rpm"], run_before["is_estimate"]) == (1690, False)


@pytest.mark.parametrize(("earlier", "field"), [({"engine_rpm": -1}, "engine_rpm"), ({"engine_rpm": 1600, "net_psi": -1}, "net_psi")])
def test_an_earlier_speed_that_cannot_be(run, earlier, field):
    with pytest.raises(CalcError) as refusal:
        expected(run, "capacity", new={"capacity": earlier})
    assert refusal.value.field == field


def test_a_run_of_unknown_length_says_so(run):
    rig = without("runs", 0, "holds", 0)
    rig["standard"]["runs"][0]["holds"] = [{"below_gpm": 100, "hold_s": 60}]
    first = a_run(run, rig["standard"]["runs"][0]["id"], rig)
    assert (first["missing"], first["hold_s"], first["due_s"]) == (["hold"], None, [0])
