"""The plan of a service test: each test in order, with what is entered in it and the limits it is judged by.

A standard (contract `standard`) is plain data in calc's units, as site_src/content/standards.py makes it. A rig is
`{"rated_gpm", "standard"}` and, where known, "drive", "stages", "governed_rpm", "pump_ratio", "tank_gal", "tank_new_gpm", "relief_set_psi",
"controls" (of "governor" and "relief", [] for neither), "foam" and "intake_relief" ("none" for none), "has_override",
"has_auxiliary_intake", "meters" and "gauges" (their names, [] for none), and "new" and "last": by run, what was read when the pump was new
and at its last test, `{"engine_rpm", "net_psi"}`.
Conditions are contract `conditions`, always with its source, and "accuracy" (what instruments' own certificates say, in place of
the standard's).
"""
from calc.base.errors import CalcError, check_within
from calc.service import uncertainty
from calc.service.parts import made
from calc.service.runs import run_plan, runs_of

SCHEMA = 1
ROOM_PERCENT = 2  # of net pressure, for a needle to move in above the instruments' error: common practice
AMOUNTS = ("air_f", "water_f", "barometer_inhg", "altitude_ft", "lift_ft", "depth_ft", "strainer_ft", "suction_size_in",
           "suction_length_ft", "suction_lines")


def plan(rig, conditions):
    """The whole service test of a rig at a site.

    rig: as the module says; rated capacity 50 to 6,000 US gallons per minute
    conditions: as the module says, in calc's units

    Returns contract `plan`, less its texts; what is not known is named in it and nothing is put in its place.
    Raises CalcError naming the input.
    Source: the standard's data, where every section tells its own.
    """
    standard = rig.get("standard")
    if not isinstance(standard, dict):
        raise CalcError("standard", "missing")
    check_within("rated_gpm", rig.get("rated_gpm"), 50, 6000)
    if conditions.get("source") not in ("draft", "pressurised"):
        raise CalcError("source", "unknown")
    for name in AMOUNTS:
        if conditions.get(name) is not None:
            check_within(name, conditions[name], -1500, 20000)
    accuracy = dict(standard["accuracy"])
    accuracy.update(conditions.get("accuracy") or {})
    for name in accuracy:
        check_within(name, accuracy[name], 0, 1000)
    return {
        "schema": SCHEMA,
        "standard": standard["id"],
        "kind": standard["kind"],
        "rated_gpm": rig["rated_gpm"],
        "conditions": {name: value for name, value in conditions.items() if name != "accuracy"},
        "accuracy": accuracy,
        "unsure": standard["unsure"],
        "tachometer_most_off_rpm": standard.get("engine", {}).get("tachometer_most_off_rpm"),
        "speed_rise_percent": standard.get("engine", {}).get("speed_rise_percent"),
        "by_mean": standard.get("flow", {}).get("by_mean", False),
        "pump_ratio": rig.get("pump_ratio"),
        "tests": [_held_clear(test, conditions, accuracy) for test in _tests(rig, conditions, standard)],
    }


def _held_clear(test, conditions, accuracy):
    """A run with the readings of the discharge gauge to hold it between, so that its verdict is clear with these instruments."""
    if test["kind"] == "run":
        test["hold_psi"] = None
        if test["gauge_psi"] is not None:
            least_psi = test["gauge_psi"] + uncertainty.net_band_from_draft_psi(
                accuracy["discharge_psi"], accuracy["lift_ft"], test["suction_loss_ft"] * accuracy["loss_percent"] / 100)
            test["hold_psi"] = [least_psi, least_psi + test["net_psi"] * ROOM_PERCENT / 100]
    return test


def _tests(rig, conditions, standard):
    runs = {run["id"]: run for run in runs_of(standard, rig["rated_gpm"])}
    everywhere = [run["id"] for run in standard["runs"]]
    tests = []
    for name in standard["tests"]:
        if name in runs:
            tests.append(run_plan(runs[name], rig, conditions))
        elif name not in everywhere:
            part = made(name, rig, conditions, standard)
            if part:
                tests.append(part)
    return tests
