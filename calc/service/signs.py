"""What a pattern in the readings of a service test is a sign of, in the words of the diagnosis.

Each pattern has a stable id:

    pressure_low_speed_usual    net pressure short at the flow, engine no faster than when new
    pressure_low_speed_high     net pressure short at the flow, engine faster than when new
    pressure_low_speed_unknown  net pressure short at the flow, no speed from when new to compare with
    flow_low_pressure_good      flow short while net pressure is there: tip, valve or line rather than pump
    speed_high_at_pressure      flow and pressure there, engine faster than when new
    ratio_changed               pump speed over engine speed is not the plate's ratio
    vacuum_not_reached, vacuum_lost, prime_slow, rise_high, relief_shut, tank_flow_low, gauge_off, meter_off,
    relief_open, interlock_wrong, shift_wrong, shift_unproved, transfer_stuck, shaft_leak, governed_low, governed_high
"""
RATIO_PERCENT = 3  # two counters read to about 1 % each; common practice

ENTER = {  # by pattern, the sign by which the diagnosis is entered; None where it is entered at its beginning
    "pressure_low": "pressure_short",
    "flow_low_pressure_good": "test_flow_short",
    "speed_high_at_pressure": "test_speed_high",
    "ratio_changed": "ratio_differs",
    "vacuum_not_reached": "vacuum_short",
    "vacuum_lost": "vacuum_falls",
    "prime_slow": "slow_prime",
    "rise_high": "rise_over",
    "relief_shut": "intake_relief_shut",
    "relief_open": "intake_relief_shut",
    "shift_wrong": "interlock_fails",
    "shift_unproved": None,  # which proof did not come is not said: lamp, sound, range, speedometer or pressure
    "tank_flow_low": "low_from_tank",
    "gauge_off": "test_gauge_differs",
    "meter_off": "meter_differs",
    "interlock_wrong": "interlock_fails",
    "transfer_stuck": "pointer_short",
    "shaft_leak": "gland_drips_more",
    "governed_low": "governed_differs",
    "governed_high": "governed_differs",
}
FIGURES = {  # failed figure (its last part) of a test: pattern
    "vacuum_reached_inhg": "vacuum_not_reached",
    "vacuum_lost_inhg": "vacuum_lost",
    "prime_s": "prime_slow",
    "rise_psi": "rise_high",
    "relief_opened": "relief_shut",
    "relief_reseated": "relief_open",
    "shift_proved": "shift_unproved",
    "shift_locked": "shift_wrong",
    "shift_gear_locked": "shift_wrong",
    "pto_locked": "shift_wrong",
    "shift_override": "shift_wrong",
    "tank_flow_gpm": "tank_flow_low",
    "error_psi": "gauge_off",
    "error_inhg": "gauge_off",
    "tachometer_off_rpm": "gauge_off",
    "error_percent": "meter_off",
    "transfer_both_ways": "transfer_stuck",
    "leak_shaft": "shaft_leak",
}


def cautions_of(test, sets, plan):
    """What a run's readings call attention to without failing it.

    test: a run of the plan
    sets: its judged sets of readings
    plan: of calc.service.plan

    Returns a list, each contract `test_caution` less its texts, the worst reading for each code. Raises nothing.
    Source: NFPA 1911 (10 % above the speed when new), from memory; 3 % of ratio common practice.
    """
    cautions = []
    speeds = [row["engine_rpm"] for row in sets if row["engine_rpm"] is not None]
    new = [speed["engine_rpm"] for speed in test["expected"] if speed["of"] == "new"]
    if speeds and new and plan["speed_rise_percent"] is not None:
        most_rpm = new[0] * (1 + plan["speed_rise_percent"] / 100)
        if max(speeds) > most_rpm:
            cautions.append({"code": "speed_above_new", "kind": "speed", "value": max(speeds), "limit": most_rpm})
    most_off_rpm = plan["tachometer_most_off_rpm"]
    off_rpm = [abs(row["panel_rpm"] - row["engine_rpm"]) for row in sets if row["engine_rpm"] is not None and row["panel_rpm"] is not None]
    if off_rpm and most_off_rpm is not None and max(off_rpm) > most_off_rpm:
        cautions.append({"code": "tachometer_off", "kind": "speed", "value": max(off_rpm), "limit": most_off_rpm})
    ratios = [row["pump_rpm"] / row["engine_rpm"] for row in sets if row["engine_rpm"] and row["pump_rpm"] is not None]
    plate = plan["pump_ratio"]
    if ratios and plate:
        off = max(ratios) if max(ratios) - plate > plate - min(ratios) else min(ratios)
        if abs(off / plate - 1) * 100 > RATIO_PERCENT:
            cautions.append({"code": "ratio_off", "kind": "ratio", "value": off, "limit": plate})
    return cautions


def signs_of(plan, tests):
    """Every pattern that the judged tests show, in the order of the tests.

    plan: of calc.service.plan
    tests: as calc.service.verdict judged them

    Returns a list, each contract `test_sign`. Raises nothing. Source: trade articles on service tests and pump faults, mostly from memory.
    """
    planned = {test["id"]: test for test in plan["tests"]}
    signs = []
    for test in tests:
        if test["kind"] == "run":
            patterns = _run_patterns(test, planned[test["id"]])
        else:
            patterns = _figure_patterns(test)
        for pattern in patterns:
            if not any(sign["id"] == pattern for sign in signs):
                key = "pressure_low" if pattern[:12] == "pressure_low" else pattern
                signs.append({"id": pattern, "test": test["id"], "enter": ENTER[key]})
    return signs


def _figure_patterns(test):
    failed = [figure for figure in test["figures"] if figure["status"] == "fail"]
    if test["id"] == "interlock":
        return ["interlock_wrong" for _ in failed]
    if test["id"] == "governed":
        return [FIGURES.get(figure["id"]) or ("governed_low" if figure["value"] < figure["least"] else "governed_high") for figure in failed]
    names = [figure["id"].split(".")[-1] for figure in failed]
    return [FIGURES[name] for name in names if name in FIGURES]


def _run_patterns(test, planned):
    """Patterns of a pumping run, from the readings of the attempt that decided it."""
    codes = [caution["code"] for caution in test["cautions"]]
    is_known = any(speed["of"] == "new" for speed in planned["expected"])
    is_fast = is_known and "speed_above_new" in codes
    patterns = []
    for row in test["sets"]:
        if row["is_by_mean"]:
            continue
        flow, net = [figure["status"] for figure in row["figures"]]
        if net == "fail":
            patterns.append("pressure_low_speed_" + ("high" if is_fast else "usual" if is_known else "unknown"))
        elif flow == "fail" and net == "pass":
            patterns.append("flow_low_pressure_good")
    if is_fast and test["status"] != "fail":
        patterns.append("speed_high_at_pressure")
    if "ratio_off" in codes:
        patterns.append("ratio_changed")
    return patterns
