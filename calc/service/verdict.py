"""The verdict on a service test: every reading, every test, the whole. Never a pass by default.

Readings are, by test, `{"values": {field: amount, or "yes" or "no"}, "clock_s", "not_done": reason}`; of a pumping run
`{"attempts": [{"clock_s", "stopped": reason or None, "tip": {"tip_in", "count"}, "sets": [{"at_s", field: amount}]}]}`,
where "pitot_psi" is a list, one reading a tip; a set may carry a tip of its own. All amounts are in calc's units; None, or nothing, is a blank.
"""
from calc.base.errors import CalcError, check_not_negative, check_number
from calc.service import uncertainty
from calc.service.judge import FAIL, NOT_PROVEN, PASS, deciding, judged, reading, summed
from calc.service.signs import cautions_of, signs_of

END_GRACE_S = 30  # the last reading of a run is taken no sooner than this before its end


def verdict(plan, readings):
    """What the readings prove.

    plan: of service_plan.plan
    readings: as the module says

    Returns `{"status", "decided", "tests", "signs"}`. A test carries "status" (pass, fail, not_proven), "code" (why),
    "decided" (the figure that decided), "missing" and "figures"; a run also "attempts". The whole passes only where every
    planned test does. Raises CalcError naming the field, with the test, and in a run the attempt and set, as facts.
    """
    tests = [_test(test, readings.get(test["id"]) or {}, plan) for test in plan["tests"]]
    order = {FAIL: 0, NOT_PROVEN: 1, PASS: 2}
    status = min([order[test["status"]] for test in tests] or [1])
    status = [FAIL, NOT_PROVEN, PASS][status]
    of_it = [test for test in tests if test["status"] == status]
    decided = deciding([test["decided"] for test in of_it if test["decided"]])
    return {
        "status": status,
        "decided": {"test": [test["id"] for test in of_it if decided is None or test["decided"] is decided][0], "figure": decided}
        if of_it else None,
        "counts": {each: len([test for test in tests if test["status"] == each]) for each in order},
        "tests": tests,
        "signs": signs_of(plan, tests),
    }


def _test(test, given, plan):
    try:
        if test["kind"] == "run":
            told = _run(test, given, plan)
        else:
            told = _figures(test, given, plan)
    except CalcError as error:
        facts = dict(error.facts)
        facts["test"] = test["id"]
        raise CalcError(error.field, error.code, **facts)
    told["id"] = test["id"]
    told["kind"] = test["kind"]
    told["not_done"] = given.get("not_done")
    if told["not_done"] and told["status"] != FAIL:
        told["status"], told["code"] = NOT_PROVEN, "not_done"
    return told


def _figures(test, given, plan):
    """A test of figures and checks."""
    values = dict(plan["conditions"]) if test["kind"] == "conditions" else {}
    values.update({name: value for name, value in (given.get("values") or {}).items() if value is not None})
    missing = list(test["missing"]) + [field["id"] for field in test["fields"] if values.get(field["id"]) is None]
    figures = [_checked(field["id"], values.get(field["id"])) for field in test["fields"] if field["kind"] == "check"]
    for limit in test["limits"]:
        figures.append(_limited(limit, values, plan["accuracy"]))
    clock_s = given.get("clock_s")
    if test["hold_s"] is not None and (clock_s is None or clock_s < test["hold_s"]):
        missing.append("time")
    told = summed(figures, missing)
    if test["kind"] == "conditions" or test["id"] == "checks_dry":
        if told["status"] == FAIL:  # the site or the crew is not ready, which says nothing of the pump
            told["status"] = NOT_PROVEN
            told["code"] = "outside" if test["kind"] == "conditions" else "not_ready"
    told["cautions"] = []
    return told


def _checked(name, value):
    """A check answered yes, no, or not at all."""
    if value not in ("yes", "no", None):
        raise CalcError(name, "unknown")
    status = {"yes": PASS, "no": FAIL, None: NOT_PROVEN}[value]
    return {"id": name, "kind": "check", "value": value, "least": None, "most": None, "band": None, "margin": None,
            "status": status, "is_close": False}


def _limited(limit, values, accuracy):
    """The figure of a limit, worked from the readings it hangs on."""
    given = [values.get(name) for name in limit["of"]]
    band_each = {"pressure": accuracy["discharge_psi"], "vacuum": accuracy["vacuum_inhg"], "speed": accuracy["speed_rpm"]}.get(limit["kind"])
    value, band = None, band_each
    if all(each is not None for each in given):
        for name, each in zip(limit["of"], given):
            check_number(name, each)
        if limit["how"] == "value":
            value = given[0]
        elif limit["how"] in ("loss", "rise"):
            value = given[0] - given[1] if limit["how"] == "loss" else given[1] - given[0]
            if value < 0:
                raise CalcError(limit["of"][1], "wrong_way")
        elif limit["how"] == "error":
            value = abs(given[0] - given[1])
        else:
            value = None if given[1] == 0 else abs(given[0] - given[1]) / abs(given[1]) * 100
    if limit["how"] in ("loss", "rise"):
        band = uncertainty.combined_band([band_each, band_each])
    if limit["how"] == "error":
        band = accuracy["reference_psi"]
    if limit["kind"] == "flow" and value is not None:
        band = value * accuracy["meter_percent"] / 100
    return judged(limit["id"], limit["kind"], value, limit["least"], limit["most"], band)


def _run(test, given, plan):
    """A pumping run: the last attempt that proved something either way decides; every one is kept."""
    attempts = [_attempt(test, attempt, plan, place) for place, attempt in enumerate(given.get("attempts") or [])]
    begun = [attempt for attempt in attempts if attempt["sets"]]
    proved = [attempt for attempt in begun if attempt["status"] != NOT_PROVEN]
    if proved or begun:
        told = dict((proved or begun)[-1])
    else:
        told = summed([], list(test["missing"]) + ["readings"])
        told["sets"] = []
    told["attempts"] = attempts
    told["cautions"] = cautions_of(test, told["sets"], plan)
    return told


def _attempt(test, attempt, plan, place):
    sets = [_set(test, attempt, each, plan, place, count) for count, each in enumerate(attempt.get("sets") or [])]
    missing = list(test["missing"])
    complete = [each for each in sets if not each["missing"]]
    for due_s in test["due_s"]:
        if not any(_is_for(each["at_s"], due_s, test) for each in complete):
            missing.append("due_" + str(due_s))
    clock_s = attempt.get("clock_s") or 0
    check_not_negative("clock_s", clock_s)
    if test["hold_s"] is not None and clock_s < test["hold_s"]:
        missing.append("time")
    code = "blank"
    if any(each["is_strayed"] for each in sets):
        missing.append("strayed")
        code = "strayed"
    if attempt.get("stopped"):
        missing.append("stopped")
        code = "strayed" if attempt["stopped"] == "flow_strayed" else "stopped"
    told = summed([figure for each in sets for figure in each["figures"]], missing, code)
    told.update({"sets": sets, "clock_s": clock_s, "stopped": attempt.get("stopped")})
    return told


def _is_for(at_s, due_s, test):
    """Whether a reading is the one that is due: the nearest of the due times, the last not before the end."""
    if test["hold_s"] is not None and due_s == test["hold_s"]:
        return at_s >= due_s - END_GRACE_S
    gaps = [abs(at_s - each) for each in test["due_s"]]
    return abs(at_s - due_s) == min(gaps)


def _set(test, attempt, given, plan, place, count):
    try:
        return reading(test, given.get("tip") or attempt.get("tip"), given, plan)
    except CalcError as error:
        raise CalcError(error.field, error.code, attempt=place, set=count, **error.facts)
