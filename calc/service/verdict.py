"""The verdict on a service test: every reading, every test, the whole. Never a pass by default.

Readings are, by test, `{"values": {field: amount, or "yes" or "no"}, "clock_s", "not_done": reason}`; of a pumping run
`{"attempts": [{"clock_s", "stopped": reason or None, "tip": {"tip_in", "count"}, "sets": [{"at_s", field: amount}]}]}`,
where "pitot_psi" is a list, one reading a tip; a set may carry a tip of its own. All amounts are in calc's units; None, or nothing, is a blank.
"""
from calc.base.errors import CalcError, check_not_negative, check_number
from calc.service import uncertainty
from calc.service.judge import FAIL, NOT_PROVEN, PASS, deciding, judged, judged_set, summed
from calc.service.mean import counted, is_on_mean
from calc.service.runs import END_GRACE_S
from calc.service.signs import cautions_of, signs_of


def verdict(plan, readings):
    """What the readings prove.

    plan: of calc.service.plan
    readings: as the module says

    Returns contract `verdict`, less its texts; the whole passes only where every planned test does.
    Raises CalcError naming the field, with the test, and in a run the attempt and set, as facts.
    """
    tests = [_test(test, readings.get(test["id"]) or {}, plan) for test in plan["tests"]]
    order = {FAIL: 0, NOT_PROVEN: 1, PASS: 2}
    status = min([order[test["status"]] for test in tests] or [1])
    status = [FAIL, NOT_PROVEN, PASS][status]
    deciders = [test for test in tests if test["status"] == status]
    decided = deciding([test["decided"] for test in deciders if test["decided"]])
    return {
        "status": status,
        "decided": {"test": [test["id"] for test in deciders if decided is None or test["decided"] is decided][0], "figure": decided}
        if deciders else None,
        "counts": {name: len([test for test in tests if test["status"] == name]) for name in order},
        "tests": tests,
        "signs": signs_of(plan, tests),
    }


def _test(test, entered, plan):
    try:
        if test["kind"] == "run":
            outcome = _run(test, entered, plan)
        else:
            outcome = _figures(test, entered, plan)
    except CalcError as error:
        facts = dict(error.facts)
        facts["test"] = test["id"]
        raise CalcError(error.field, error.code, **facts)
    outcome["id"] = test["id"]
    outcome["kind"] = test["kind"]
    outcome["not_done"] = entered.get("not_done")
    if outcome["not_done"] and outcome["status"] != FAIL:
        outcome["status"], outcome["code"] = NOT_PROVEN, "not_done"
    return outcome


def _figures(test, entered, plan):
    """A test of figures and checks."""
    values = dict(plan["conditions"]) if test["kind"] == "conditions" else {}
    values.update({name: value for name, value in (entered.get("values") or {}).items() if value is not None})
    missing = list(test["missing"]) + [field["id"] for field in test["fields"] if values.get(field["id"]) is None]
    figures = [_checked(field["id"], values.get(field["id"])) for field in test["fields"] if field["kind"] == "check"]
    for limit in test["limits"]:
        figures.append(_limited(limit, values, plan["accuracy"]))
    clock_s = entered.get("clock_s")
    if test["hold_s"] is not None and (clock_s is None or clock_s < test["hold_s"]):
        missing.append("time")
    outcome = summed(figures, missing)
    if test["kind"] == "conditions" or test["id"] == "checks_dry":
        if outcome["status"] == FAIL:  # the site or the crew is not ready, which says nothing of the pump
            outcome["status"] = NOT_PROVEN
            outcome["code"] = "outside" if test["kind"] == "conditions" else "not_ready"
    failed = [figure["id"] for figure in figures if figure["status"] == FAIL]
    if test["id"] == "transfer" and failed and "transfer_both_ways" not in failed:  # pumped in the wrong position: no fault, and no proof
        outcome["status"], outcome["code"] = NOT_PROVEN, "position"
    outcome["cautions"] = []
    return outcome


def _checked(name, value):
    """A check answered yes, no, or not at all."""
    if value not in ("yes", "no", None):
        raise CalcError(name, "unknown")
    status = {"yes": PASS, "no": FAIL, None: NOT_PROVEN}[value]
    return {"id": name, "kind": "check", "value": value, "least": None, "most": None, "band": None, "margin": None,
            "status": status, "is_close": False}


def _limited(limit, values, accuracy):
    """The figure of a limit, worked from the readings it hangs on."""
    readings = [values.get(name) for name in limit["of"]]
    gauge_band = {"pressure": accuracy["discharge_psi"], "vacuum": accuracy["vacuum_inhg"], "speed": accuracy["speed_rpm"]}.get(limit["kind"])
    value, band, least, most = None, gauge_band, limit["least"], limit["most"]
    if None not in readings:
        for name, amount in zip(limit["of"], readings):
            check_number(name, amount)
        if limit["how"] == "value":
            value = readings[0]
        elif limit["how"] in ("loss", "rise"):
            value = readings[0] - readings[1] if limit["how"] == "loss" else readings[1] - readings[0]
            if value < 0:
                raise CalcError(limit["of"][1], "wrong_way")
        elif limit["how"] == "between":
            value, least, most = readings
            if most < least:
                raise CalcError(limit["of"][2], "wrong_way")
        elif limit["how"] == "error":
            value = abs(readings[0] - readings[1])
        else:
            value = None if readings[1] == 0 else abs(readings[0] - readings[1]) / abs(readings[1]) * 100
    if limit["how"] in ("loss", "rise"):
        band = uncertainty.combined_band([gauge_band, gauge_band])
    if limit["how"] == "error":
        band = gauge_band if limit["kind"] in ("vacuum", "speed") else accuracy["reference_psi"]
    if limit["kind"] == "flow" and value is not None:
        band = value * accuracy["meter_percent"] / 100
    return judged(limit["id"], limit["kind"], value, least, most, band)


def _run(test, entered, plan):
    """A pumping run: the last attempt that proved something either way decides; the others stand beside it."""
    attempts = [_attempt(test, attempt, plan, place) for place, attempt in enumerate(entered.get("attempts") or [])]
    begun = [attempt for attempt in attempts if attempt["sets"]]
    proved = [attempt for attempt in begun if attempt["status"] != NOT_PROVEN]
    if proved or begun:
        outcome = dict((proved or begun)[-1])
    else:
        outcome = summed([], list(test["missing"]) + ["readings"])
        outcome["sets"] = []
    outcome["attempts"] = attempts
    outcome["cautions"] = cautions_of(test, outcome["sets"], plan)
    return outcome


def _attempt(test, attempt, plan, place):
    sets = [_set(test, attempt, values, plan, place, count) for count, values in enumerate(attempt.get("sets") or [])]
    missing = list(test["missing"])
    for row in sets:
        row["due_s"] = due_s = _due_s(row["at_s"], test)
        off_s = 0 if due_s is None or test["hold_s"] is None else row["at_s"] - due_s
        row["off_s"] = off_s if abs(off_s) > END_GRACE_S else None  # what the last of a run is let off is not named
    taken_s = [row["due_s"] for row in sets if not row["missing"]]
    missing += ["due_" + str(due_s) for due_s in test["due_s"] if due_s not in taken_s]
    clock_s = attempt.get("clock_s") or 0
    check_not_negative("clock_s", clock_s)
    if test["hold_s"] is not None and clock_s < test["hold_s"]:
        missing.append("time")
    code = "blank"
    if any(row["is_strayed"] for row in sets):
        missing.append("strayed")
        code = "strayed"
    if attempt.get("stopped"):
        missing.append("stopped")
        code = "strayed" if attempt["stopped"] == "flow_strayed" else "stopped"
    figures = counted(sets) if plan["by_mean"] else [figure for row in sets for figure in row["figures"]]
    outcome = summed(figures, missing, code)
    if outcome["status"] == PASS and is_on_mean(figures):
        outcome["code"] = "mean"
    outcome.update({"sets": sets, "clock_s": clock_s, "stopped": attempt.get("stopped")})
    return outcome


def _due_s(at_s, test):
    """The due time that a reading counts for: the nearest, of two the earlier; None where that is the end and it came too soon."""
    _, due_s = min([(abs(at_s - due_s), due_s) for due_s in test["due_s"]])
    return None if due_s == test["hold_s"] and at_s < due_s - END_GRACE_S else due_s


def _set(test, attempt, values, plan, place, count):
    try:
        return judged_set(test, values.get("tip") or attempt.get("tip"), values, plan)
    except CalcError as error:
        raise CalcError(error.field, error.code, attempt=place, set=count, **error.facts)
