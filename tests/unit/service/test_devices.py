"""What of a service test hangs on what the rig has: its pressure controls, drive, override, meters, gauges, tank line, foam."""
import pytest

from calc.base.errors import CalcError
from tests import service_records
from tests.unit.service.made import a_plan, a_rig, good_readings, of
from tests.unit.service.test_plan_parts import fields, limits, parts, planned


@pytest.mark.parametrize(
    ("controls", "tried"),
    [(["governor"], ["governor"]), (["relief"], ["relief_valve"]), (["governor", "relief"], ["governor", "relief_valve"]), ([], [])],
)
def test_each_pressure_control_is_tried(run, controls, tried):
    """Governor and relief valve each, through the same three states; a rig with neither has nothing to try."""
    plan = parts(planned(run, a_rig(controls=controls)))
    assert [name for name in ("governor", "relief_valve") if name in plan] == tried
    for name in tried:
        assert [field["id"] for field in plan[name]["fields"] if field["id"].endswith(("set_psi", "flow_gpm", "throttle_only"))] == [
            "at_150.set_psi", "at_150.flow_gpm", "at_90.set_psi", "at_90.throttle_only", "at_250.set_psi", "at_250.flow_gpm"]


def test_what_controls_the_pressure_is_asked(run):
    plan = parts(planned(run, a_rig(controls=None)))
    assert (plan["governor"]["missing"], plan["governor"]["fields"]) == (["rig.pressure_control"], [])
    assert "relief_valve" not in plan


@pytest.mark.parametrize(
    ("drive", "checks"),
    [("midship", ["shift_locked", "shift_gear_locked"]), ("rear_shaft", ["shift_locked", "shift_gear_locked"]), ("rear_pto", ["pto_locked"]),
     ("pto", ["pto_locked"]), ("front", ["pto_locked"])],
)
def test_the_shift_goes_by_the_drive(run, drive, checks):
    """A split shaft is no PTO wherever it stands: interlock and shift of each (a military specification: both transmissions are held)."""
    plan = parts(planned(run, a_rig(drive=drive)))
    assert [field["id"] for field in plan["shift"]["fields"]] == ["shift_proved"] + checks
    assert {field["id"][:3] for field in plan["interlock"]["fields"]} == ({"pto"} if "pto_locked" in checks else {"roa", "pum"})
    with_override = parts(planned(run, a_rig(drive=drive, has_override=True)))["shift"]
    assert [field["id"] for field in with_override["fields"]] == ["shift_proved"] + checks + ["shift_override"]


def test_a_drive_that_says_too_little_is_asked(run):
    """An older profile's "rear" is either."""
    plan = parts(planned(run, a_rig(drive="rear", has_override=True)))
    assert (plan["shift"]["missing"], [field["id"] for field in plan["shift"]["fields"]]) == (["rig.drive"], ["shift_proved"])


@pytest.mark.parametrize(
    ("set_psi", "opened_psi", "status"),  # 10 psi either way of this rig's own setting, not the range a valve is built with
    [(125, 115, "pass"), (125, 114.9, "fail"), (125, 135, "pass"), (125, 135.1, "fail"), (180, 180, "pass"), (125, 180, "fail")],
)
def test_the_intake_relief_opens_at_the_rigs_own_setting(run, set_psi, opened_psi, status):
    """From the profile, where it is then not asked again, or as entered; and it has to shut again."""
    for rig, more in ((a_rig(relief_set_psi=set_psi), {}), (a_rig(), {"relief_set_psi": set_psi})):
        plan = a_plan(rig)
        values = {"relief_setting_psi": opened_psi, "relief_opened": "yes", "relief_reseated": "yes", **more}
        assert [field["id"] for field in of(plan, "intake_relief")["fields"]] == [*more, "relief_setting_psi", "relief_opened", "relief_reseated"]
        judge = lambda values: of(run("service.verdict", "verdict", plan=plan, readings={"intake_relief": {"values": values}}), "intake_relief")["status"]  # noqa: E731
        assert judge(values) == status
        assert judge({**values, "relief_reseated": "no"}) == "fail"


@pytest.mark.parametrize(
    ("changes", "site", "least_gpm"),
    [  # by hand: 480 less 3 percent is 465.6, less 5 percent 456; else the rate a new rig is built to, and no more than its pump's rating
        ({"tank_new_gpm": 480}, {}, 465.6), ({"tank_new_gpm": 480}, {"accuracy": {"meter_percent": 5}}, 456), ({"tank_new_gpm": 480}, {"accuracy": {"meter_percent": 0}}, 480),
        ({}, {}, 500), ({"rated_gpm": 250}, {}, 250), ({"tank_gal": 499}, {}, 250), ({"tank_gal": 500}, {}, 500),
        ({"tank_new_gpm": 480, "kind": "acceptance"}, {}, 500),
    ],
)
def test_the_tank_line_is_held_to_its_rate_when_new(run, changes, site, least_gpm):
    assert parts(planned(run, a_rig(**changes), **site))["tank"]["limits"] == limits([("tank_flow_gpm", "flow", "value", None, least_gpm, None)])


def test_the_gauges_of_the_lines(run):
    """Each line's at each point; how many there are is asked, and a panel without any has none to try."""
    plan = parts(planned(run, a_rig(gauges=["gauge_1", "gauge_2"])))["line_gauges"]
    assert [field["id"] for field in plan["fields"]] == [
        f"at_{psi}.{name}" for psi in (150, 200, 250) for name in ("reference_psi", "gauge_1.panel_psi", "gauge_2.panel_psi")]
    unknown = parts(planned(run, a_rig(gauges=None)))["line_gauges"]
    assert (unknown["missing"], unknown["fields"], unknown["limits"]) == (["gauges"], [], [])
    assert "line_gauges" not in parts(planned(run, a_rig(gauges=[])))
    assert "tank_level" not in parts(planned(run, a_rig(tank_gal=0)))


def test_two_meters(run):
    """Each is asked for by its own name, pipe and due flow first."""
    fields = [field["id"] for field in parts(planned(run, a_rig(meters=["one", "two"])))["meters"]["fields"]]
    assert fields == [f"{meter}.{name}" for meter in ("one", "two") for name in ("pipe_in", "due_gpm", "shown_gpm", "pitot_gpm")]


@pytest.mark.parametrize(
    ("test", "field", "value", "status"),
    [  # boundaries from both sides, from the same sources as the plan's
        ("line_gauges", "at_150.gauge_1.panel_psi", 160, "pass"), ("line_gauges", "at_150.gauge_1.panel_psi", 160.1, "fail"),
        ("line_gauges", "at_150.gauge_1.panel_psi", 140, "pass"), ("line_gauges", "at_150.gauge_1.panel_psi", 139.9, "fail"),
        ("line_gauges", "at_250.reference_psi", 275, "fail"), ("line_gauges", "at_200.reference_psi", 179, "fail"),
        ("compound", "compound.panel_psi", 60, "pass"), ("compound", "compound.panel_psi", 60.1, "fail"),
        ("compound", "compound.panel_inhg", 11, "pass"), ("compound", "compound.panel_inhg", 11.1, "fail"), ("compound", "compound.panel_inhg", 8.9, "fail"),
        ("governed", "panel_rpm", 2260, "pass"), ("governed", "panel_rpm", 2261, "fail"), ("governed", "panel_rpm", 2160, "pass"), ("governed", "panel_rpm", 2159, "fail"),
        ("meters", "main.due_gpm", 1111.2, "fail"), ("meters", "main.due_gpm", 1111.1, "pass"), ("meters", "main.due_gpm", 909, "fail"), ("meters", "main.due_gpm", 909.1, "pass"),
        ("tank_level", "level_half", "no", "fail"), ("shift", "shift_locked", "no", "fail"),
        ("foam", "foam_sample", 0.4, "pass"), ("foam", "foam_sample", 0.39, "fail"), ("foam", "foam_sample", 0.6, "pass"), ("foam", "foam_sample", 0.61, "fail"),
        ("foam", "foam_flushed", "no", "fail"), ("foam", "foam_sample", None, "not_proven"),
    ],
)
def test_both_sides_of_each_limit(run, test, field, value, status):
    plan = a_plan(a_rig(foam="proportioner"), foam_by="refractometer")
    readings = good_readings(plan)
    assert of(run("service.verdict", "verdict", plan=plan, readings=readings), test)["status"] == "pass"
    readings[test]["values"][field] = value
    assert of(run("service.verdict", "verdict", plan=plan, readings=readings), test)["status"] == status


@pytest.mark.parametrize("method", ["refractometer", "conductivity", "volume"])
def test_foam_by_any_method(run, method):
    """The three methods of the study notes; no limit but the tester's own two solutions."""
    part = parts(planned(run, a_rig(foam="cafs"), foam_by=method))["foam"]
    assert part["limits"] == [{"id": "foam_sample", "kind": "ratio", "how": "between", "of": ["foam_sample", "foam_least", "foam_most"], "least": None, "most": None}]
    assert (part["missing"], part["fields"]) == ([], fields([(name, "ratio") for name in ("foam_least", "foam_most", "foam_sample")] + [("foam_flushed", "check")]))


def test_a_setting_of_the_profile_is_the_limit(run):
    plan = parts(planned(run, a_rig(relief_set_psi=125)))
    assert plan["intake_relief"]["limits"] == limits([("relief_setting_psi", "pressure", "value", None, 115, 135)])


def test_foam_that_is_not_known(run):
    """Whether there is any is asked of the profile, the method of the site; a rig without any has nothing to try."""
    part = parts(planned(run, a_rig(foam=None)))["foam"]
    assert (part["missing"], part["fields"], part["limits"]) == (["rig.foam"], [], [])
    for site in ({}, {"foam_by": "eye"}):
        assert parts(planned(run, a_rig(foam="proportioner"), **site))["foam"]["missing"] == ["foam_by"]
    assert "foam" not in parts(planned(run, a_rig(foam="none")))


def test_solutions_the_wrong_way_round_are_refused(run):
    plan = a_plan(a_rig(foam="proportioner"), foam_by="refractometer")
    with pytest.raises(CalcError) as refused:
        run("service.verdict", "verdict", plan=plan, readings={"foam": {"values": {"foam_least": 0.6, "foam_most": 0.5, "foam_sample": 0.55}}})
    assert (refused.value.field, refused.value.code) == ("foam_most", "wrong_way")


def test_bands_of_what_is_compared(run):
    """A test gauge reads to 1 psi, vacuum to half an inch, speed to 10 rpm, as the standard's accuracies say."""
    told = run("service.verdict", "verdict", plan=a_plan(), readings=good_readings(a_plan()))
    bands = {figure["id"]: figure["band"] for name in ("compound", "governed", "line_gauges") for figure in of(told, name)["figures"]}
    assert (bands["compound.error_psi"], bands["compound.error_inhg"], bands["tachometer_off_rpm"], bands["at_150.gauge_1.error_psi"]) == (1, 0.5, 10, 1)


def rig_of(run, **typed):
    record = {**service_records.a_record(), "rig": typed}
    return run("service.entries", "facts", record=record, units=service_records.US)[0]


@pytest.mark.parametrize(
    ("typed", "controls"),
    [({}, None), ({"pressure_control": "none"}, []), ({"pressure_control": "relief"}, ["relief"]),
     ({"pressure_control": "governor", "other_control": "relief"}, ["governor", "relief"]), ({"pressure_control": "none", "other_control": "none"}, []),
     ({"other_control": "relief"}, None)],
)
def test_controls_of_a_profile(run, typed, controls):
    assert rig_of(run, **typed)["controls"] == controls


def test_the_rest_of_a_profile(run):
    rig = rig_of(run, tank_rate="480@US", relief_set="125@US", foam="cafs", gauges="2", meters="1", shift_control="air")
    assert (rig["tank_new_gpm"], rig["relief_set_psi"], rig["foam"], rig["gauges"], rig["meters"], rig["has_override"]) == (
        480, 125, "cafs", ["gauge_1", "gauge_2"], ["meter_1"], True)
    for typed, has in (({}, False), ({"shift_control": "manual"}, False), ({"shift_control": "electric"}, True), ({"override_place": "left step"}, True)):
        assert rig_of(run, **typed)["has_override"] is has
    assert (rig_of(run)["foam"], rig_of(run)["gauges"], rig_of(run, gauges="0")["gauges"]) == (None, None, [])
