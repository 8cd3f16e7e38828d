"""What each part of a service test asks for and is judged by: US standard, 1,250 gpm from draft.

The figures are those of NFPA 1911 and 1901 as study cards, a pump maker's manual and a service firm tell them, or from memory,
as site_src/data/service/us.toml says row by row.
"""
import copy

import pytest

from calc.base.errors import CalcError
from site_src.content import data
from tests.unit.service.made import SITE, a_rig

ANNUAL = ["conditions", "checks_dry", "interlock", "shift", "governed", "gauges_zero", "vacuum", "vacuum_valves", "priming", "capacity", "overload",
          "seventy", "fifty", "governor", "transfer", "intake_relief", "tank", "tank_level", "gauges", "line_gauges", "compound", "meters", "leaks"]
CHECKS = {
    "checks_dry": ["limits_confirmed", "chocks", "people_clear", "streams_secured", "hearing", "stop_control", "fluids"],
    "interlock": ["road_released", "road_set", "pump_neutral", "pump_gear", "pump_wrong_gear"],
    "shift": ["shift_proved", "shift_locked", "shift_gear_locked"],
    "gauges_zero": ["zero_discharge", "zero_intake", "zero_pitot"],
    # the position of each point, from memory: volume for capacity and overload, the plate's at 70 %, pressure at 50 %
    "transfer": ["transfer_both_ways", "capacity.transfer_volume", "overload.transfer_volume", "seventy.transfer_plate", "fifty.transfer_pressure"],
    "tank_level": ["level_full", "level_three_quarters", "level_half", "level_quarter", "level_empty"],
    "leaks": ["leak_casing", "leak_shaft", "leak_valves", "leak_piping"],
}
# by part: fields as (name, kind); limits as (name, kind, how, of what, least, most)
FIGURES = {
    "governed": (  # the panel's tachometer beside the counter, 50 rpm: common practice
        [("governed_rpm", "speed"), ("panel_rpm", "speed")],
        [("governed_rpm", "speed", "value", None, 2150, 2250), ("tachometer_off_rpm", "speed", "error", ["governed_rpm", "panel_rpm"], None, 50)]),
    "vacuum": (
        [("vacuum_reached_inhg", "vacuum"), ("vacuum_after_inhg", "vacuum")],
        [("vacuum_reached_inhg", "vacuum", "value", None, 22, None),
         ("vacuum_lost_inhg", "vacuum", "loss", ["vacuum_reached_inhg", "vacuum_after_inhg"], None, 10)]),
    "vacuum_valves": (
        [("vacuum_reached_inhg", "vacuum"), ("vacuum_after_inhg", "vacuum")],
        [("vacuum_reached_inhg", "vacuum", "value", None, 22, None),
         ("vacuum_lost_inhg", "vacuum", "loss", ["vacuum_reached_inhg", "vacuum_after_inhg"], None, 10)]),
    "priming": ([("prime_s", "seconds")], [("prime_s", "seconds", "value", None, None, 30)]),
    # a fire journal on the acceptance test: rated flow at 150, down to 90 by the throttle alone, half flow at 250; 1,250 gpm here
    "governor": (
        [(f"at_{psi}.{name}", kind) for psi, flow in ((150, ("flow_gpm", "flow")), (90, ("throttle_only", "check")), (250, ("flow_gpm", "flow")))
         for name, kind in (("set_psi", "pressure"), flow, ("peak_psi", "pressure"), ("closing_s", "seconds"))],
        [limit for psi, flow_gpm in ((150, 1250), (90, None), (250, 625)) for limit in (
            (f"at_{psi}.set_psi", "pressure", "value", None, psi * 0.9, psi * 1.1),
            *([(f"at_{psi}.flow_gpm", "flow", "value", None, flow_gpm * 0.9, flow_gpm * 1.1)] if flow_gpm else []),
            (f"at_{psi}.rise_psi", "pressure", "rise", [f"at_{psi}.set_psi", f"at_{psi}.peak_psi"], None, 30),
            (f"at_{psi}.closing_s", "seconds", "value", None, 3, 10))]),
    # against this rig's own setting; 10 psi is a choice
    "intake_relief": (
        [("relief_set_psi", "pressure"), ("relief_setting_psi", "pressure"), ("relief_opened", "check"), ("relief_reseated", "check")],
        [("relief_off_psi", "pressure", "error", ["relief_set_psi", "relief_setting_psi"], None, 10)]),
    "tank": ([("tank_flow_gpm", "flow")], [("tank_flow_gpm", "flow", "value", None, 500, None)]),
    "gauges": (
        [(f"master.at_{psi}.{name}_psi", "pressure") for psi in (150, 200, 250) for name in ("panel", "reference")],
        [limit for psi in (150, 200, 250) for limit in (
            (f"master.at_{psi}.reference_psi", "pressure", "value", None, psi * 0.9, psi * 1.1),
            (f"master.at_{psi}.error_psi", "pressure", "error",
             [f"master.at_{psi}.panel_psi", f"master.at_{psi}.reference_psi"], None, 10))]),
    "line_gauges": (  # each at the three points beside one reading of the test gauge
        [pair for psi in (150, 200, 250) for pair in ((f"at_{psi}.reference_psi", "pressure"), (f"at_{psi}.gauge_1.panel_psi", "pressure"))],
        [limit for psi in (150, 200, 250) for limit in (
            (f"at_{psi}.reference_psi", "pressure", "value", None, psi * 0.9, psi * 1.1),
            (f"at_{psi}.gauge_1.error_psi", "pressure", "error", [f"at_{psi}.reference_psi", f"at_{psi}.gauge_1.panel_psi"], None, 10))]),
    "compound": (  # 10 psi as the other gauges; 1 inHg is a choice
        [("compound.reference_psi", "pressure"), ("compound.panel_psi", "pressure"), ("compound.reference_inhg", "vacuum"), ("compound.panel_inhg", "vacuum")],
        [("compound.error_psi", "pressure", "error", ["compound.reference_psi", "compound.panel_psi"], None, 10),
         ("compound.error_inhg", "vacuum", "error", ["compound.reference_inhg", "compound.panel_inhg"], None, 1)]),
    "meters": (  # near the flow that is its own by its pipe, which is entered: the table was not seen
        [("main.pipe_in", "diameter"), ("main.due_gpm", "flow"), ("main.shown_gpm", "flow"), ("main.pitot_gpm", "flow")],
        [("main.off_percent", "percent", "percent_error", ["main.pitot_gpm", "main.due_gpm"], None, 10),
         ("main.error_percent", "percent", "percent_error", ["main.shown_gpm", "main.pitot_gpm"], None, 10)]),
    "hydrostatic": (
        [("hydrostatic_psi", "pressure"), ("hydrostatic_held", "check")],
        [("hydrostatic_psi", "pressure", "value", None, 250, None)]),
}
SITE_LIMITS = [  # name, kind, least, most; the last four from draft alone
    ("air_f", "temperature", 0, 110), ("water_f", "temperature", 35, 90), ("water_end_f", "temperature", 35, 90),
    ("barometer_inhg", "barometer", 29, None), ("altitude_ft", "length", None, 2000), ("lift_ft", "length", 3, 10),
    ("suction_length_ft", "length", 20, None), ("depth_ft", "length", 4, None), ("strainer_ft", "length", 2, None),
]
HELD = {"vacuum": (300, ["vacuum_reached_inhg"]), "vacuum_valves": (300, ["vacuum_reached_inhg"]), "hydrostatic": (180, ["hydrostatic_psi"])}


def planned(run, rig=None, **site):
    return run("service.plan", "plan", rig=rig or a_rig(), conditions={**SITE, **site})


def without(*names, **changes):
    """A rig whose standard lacks a section, or a value of one."""
    rig = copy.deepcopy(a_rig(**changes))
    inner = rig["standard"]
    for name in names[:-1]:
        inner = inner[name]
    del inner[names[-1]]
    return rig


def parts(plan):
    return {test["id"]: test for test in plan["tests"]}


def fields(pairs):
    return [{"id": name, "kind": kind, "needed": True} for name, kind in pairs]


def limits(rows):
    return [{"id": name, "kind": kind, "how": how, "of": of or [name], "least": pytest.approx(least), "most": pytest.approx(most)}
            for name, kind, how, of, least, most in rows]


def unknown(plan, name, missing):
    """A part of which something is not known asks for its fields and judges nothing."""
    part = parts(plan)[name]
    assert (part["missing"], part["hold_s"], part["start"]) == (missing, HELD.get(name, (None,))[0], HELD.get(name, (None, []))[1])
    return part


def test_the_parts_stand_in_their_order(run):
    assert [test["id"] for test in planned(run)["tests"]] == ANNUAL


@pytest.mark.parametrize("name", sorted(CHECKS))
def test_checks(run, name):
    assert parts(planned(run))[name] == {
        "id": name, "kind": "checks", "fields": fields((each, "check") for each in CHECKS[name]), "limits": [], "missing": [],
        "hold_s": None, "start": []}


@pytest.mark.parametrize("name", sorted(FIGURES))
def test_figures(run, name):
    asked, judged = FIGURES[name]
    hold_s, start = HELD.get(name, (None, []))
    assert parts(planned(run, a_rig(kind="acceptance" if name == "hydrostatic" else "annual")))[name] == {
        "id": name, "kind": "figures", "fields": fields(asked), "limits": limits(judged), "missing": [], "hold_s": hold_s, "start": start}


@pytest.mark.parametrize(
    ("rated_gpm", "size_in", "most_in", "lines", "lift_ft"),
    [  # the suction table by rated capacity, from memory; other ways of 2,250 and 2,500 gpm pumps with 8 in hose
        (250, 3, 3, 1, 10), (300, 4, 3, 1, 10), (350, 4, 4, 1, 10), (500, 4, 4, 1, 10), (750, 4.5, 4.5, 1, 10), (1000, 6, 6, 1, 10), (1000, 5, 6, 1, 10), (1250, 6, 6, 1, 10),
        (1500, 6, 6, 2, 10), (1750, 6, 6, 2, 8), (2000, 6, 6, 2, 6), (2250, 6, 6, 3, 6), (2250, 8, 8, 1, 6), (2500, 8, 8, 2, 6), (3000, 6, 6, 4, 6), (3000, 10, 8, 2, 6),
    ],
)
def test_suction_by_rating(run, rated_gpm, size_in, most_in, lines, lift_ft):
    """Hose and lift are held to what a pump of its rating is certified with: more would flatter it."""
    limits = {limit["id"]: limit for limit in parts(planned(run, a_rig(rated_gpm=rated_gpm), suction_size_in=size_in))["conditions"]["limits"]}
    assert (limits["suction_size_in"]["most"], limits["suction_lines"]["most"]) == (most_in, lines)
    assert (limits["lift_ft"]["least"], limits["lift_ft"]["most"]) == (3, lift_ft)


def test_no_table_no_suction_limit(run):
    """Past the table's last rating, and in a standard without one, nothing is made up."""
    for rig in (a_rig(rated_gpm=3001), a_rig(standard="europe")):
        assert not {"suction_size_in", "suction_lines"} & {limit["id"] for limit in parts(planned(run, rig))["conditions"]["limits"]}


def test_a_two_stage_pump_without_overload(run):
    """Under 750 gpm there is no overload, so none is asked for; a single-stage pump has no valve."""
    assert [field["id"] for field in parts(planned(run, a_rig(rated_gpm=500)))["transfer"]["fields"]] == [name for name in CHECKS["transfer"] if "overload" not in name]
    assert "transfer" not in parts(planned(run, a_rig(stages=1)))


@pytest.mark.parametrize(("source", "count"), [("draft", 9), ("pressurised", 5)])
def test_conditions(run, source, count):
    """The site is judged by what its water comes from."""
    site = parts(planned(run, source=source))["conditions"]
    told = SITE_LIMITS[:count]
    # 1,250 gpm on one 6 in hose: a trade article's worked test
    hose = [("suction_size_in", "diameter", None, 6), ("suction_lines", "ratio", None, 1)] if source == "draft" else []
    assert site == {
        "id": "conditions", "kind": "conditions", "fields": fields(row[:2] for row in told + hose),
        "limits": limits((name, kind, "value", None, least, most) for name, kind, least, most in told + hose), "missing": [], "hold_s": None,
        "start": []}


@pytest.mark.parametrize(
    ("name", "rig", "site", "missing", "asked"),
    [
        ("interlock", {"drive": None}, {}, ["rig.drive"], []),
        ("priming", {}, {"source": "pressurised"}, ["not_from_draft"], []),
        ("tank", {"tank_gal": None}, {}, ["rig.tank_gal"], FIGURES["tank"][0]),
        ("meters", {"meters": None}, {}, ["meters"], []),
    ],
)
def test_what_is_not_known_is_named(run, name, rig, site, missing, asked):
    part = unknown(planned(run, a_rig(**rig), **site), name, missing)
    assert (part["kind"], part["fields"], part["limits"]) == ("checks" if name == "interlock" else "figures", fields(asked), [])


def test_a_governed_speed_that_is_not_known_leaves_the_tachometer(run):
    part = unknown(planned(run, a_rig(governed_rpm=None)), "governed", ["rig.governed_rpm"])
    assert (part["fields"], part["limits"]) == (fields(FIGURES["governed"][0]), limits(FIGURES["governed"][1][1:]))


def test_a_vacuum_at_no_known_altitude_is_judged_by_its_loss_alone(run):
    part = unknown(planned(run, altitude_ft=None), "vacuum", ["altitude_ft"])
    assert part["limits"] == limits(FIGURES["vacuum"][1][1:])


def test_stages_that_are_not_known_leave_the_transfer_to_be_tried(run):
    part = unknown(planned(run, a_rig(stages=None)), "transfer", ["rig.stages"])
    assert part["fields"] == fields([("transfer_both_ways", "check")])


@pytest.mark.parametrize(("name", "rig"), [("transfer", {"stages": 1}), ("meters", {"meters": []}), ("tank", {"tank_gal": 0})])
def test_what_a_rig_does_not_have_is_not_tested(run, name, rig):
    assert name not in parts(planned(run, a_rig(**rig)))


def test_a_topic_the_standard_does_not_hold_is_named(run):
    assert parts(planned(run, without("gauges")))["gauges"] == {
        "id": "gauges", "kind": "figures", "fields": [], "limits": [], "missing": ["gauges"], "hold_s": None, "start": []}


def test_every_meter_is_tested(run):
    tests = parts(planned(run, a_rig(meters=["main", "deck"])))
    assert [limit["id"] for limit in tests["meters"]["limits"]] == ["main.off_percent", "main.error_percent", "deck.off_percent", "deck.error_percent"]


@pytest.mark.parametrize(("auxiliary", "most_s"), [(False, 30), (True, 45)])
def test_an_auxiliary_intake_takes_longer_to_prime(run, auxiliary, most_s):
    assert parts(planned(run, a_rig(has_auxiliary_intake=auxiliary)))["priming"]["limits"][0]["most"] == most_s


def test_a_primer_of_a_standard_without_more_time_gets_none(run):
    rig = without("priming", "extra_s", has_auxiliary_intake=True)
    assert parts(planned(run, rig))["priming"]["limits"][0]["most"] == 30


def test_the_heads_of_a_plan(run):
    """What a plan says of itself; a certificate's accuracy goes before the standard's, and is no condition."""
    rig = a_rig()
    plan = planned(run, rig, accuracy={"discharge_psi": 0.5})
    assert plan["accuracy"] == {**rig["standard"]["accuracy"], "discharge_psi": 0.5}
    assert plan["conditions"] == SITE
    told = {key: plan[key] for key in ("schema", "standard", "kind", "rated_gpm", "unsure", "speed_rise_percent", "pump_ratio")}
    assert told == {"schema": 1, "standard": "us", "kind": "annual", "rated_gpm": 1250, "unsure": rig["standard"]["unsure"],
                    "speed_rise_percent": 10, "pump_ratio": 2.0}
    assert planned(run, without("engine"))["speed_rise_percent"] is None


AMOUNTS = ("air_f", "water_f", "barometer_inhg", "altitude_ft", "lift_ft", "depth_ft", "strainer_ft", "suction_size_in",
           "suction_length_ft", "suction_lines")


@pytest.mark.parametrize("name", AMOUNTS)
@pytest.mark.parametrize("amount", [-1501, 20001])
def test_an_amount_of_the_site_past_all_bounds_is_refused(run, name, amount):
    with pytest.raises(CalcError) as refusal:
        planned(run, **{name: amount})
    assert refusal.value.field == name


@pytest.mark.parametrize("rated_gpm", [49, 6001])
def test_a_rating_past_all_bounds_is_refused(run, rated_gpm):
    with pytest.raises(CalcError) as refusal:
        planned(run, a_rig(rated_gpm=rated_gpm))
    assert refusal.value.field == "rated_gpm"


@pytest.mark.parametrize("rated_gpm", [50, 6000])
def test_a_rating_at_its_bounds_is_planned(run, rated_gpm):
    assert planned(run, a_rig(rated_gpm=rated_gpm))["rated_gpm"] == rated_gpm


@pytest.mark.parametrize("amount", [-0.1, 1000.1])
def test_an_accuracy_past_all_bounds_is_refused(run, amount):
    with pytest.raises(CalcError) as refusal:
        planned(run, accuracy={"pitot_psi": amount})
    assert refusal.value.field == "pitot_psi"


def test_every_part_and_figure_has_its_words(run):
    words = data.words("service")
    for kind in ("annual", "acceptance"):
        for part in planned(run, a_rig(kind=kind))["tests"]:
            assert words["test_name"][part["id"]]
            for field in part["fields"]:
                name = field["id"].split(".")[-1]
                assert words["check"][name] if field["kind"] == "check" else words["field"][name]


def test_what_a_rig_has_not_is_no_part_of_its_test(run):
    """Parts the standard asks for of what this rig has not are left out; nothing unknown counts as not there."""
    rig = a_rig(stages=1, meters=[], gauges=[], tank_gal=0, foam="none", intake_relief="none", controls=["governor"])

    def left_out(of):
        return set(of["standard"]["tests"]) - {test["id"] for test in run("service.plan", "plan", rig=of, conditions=SITE)["tests"]}

    assert left_out(rig) == {"relief_valve", "transfer", "intake_relief", "tank", "tank_level", "line_gauges", "meters", "foam"}
    unknown = {**a_rig(), "stages": None, "meters": None, "gauges": None, "tank_gal": None, "foam": None}
    assert left_out(unknown) == {"relief_valve"}  # the rig's governor is known
