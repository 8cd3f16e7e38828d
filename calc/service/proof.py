"""What a record as typed proves, in calc's units and without a text: what a page shows is written by calc.service.texts."""
from calc.base.errors import CalcError
from calc.service import entries, plan as service_plan, verdict as service_verdict

MOST_PROBLEMS = 60
MOST_AMOUNT = 1e6  # of a plan or verdict, in calc's unit: in every unit of a page it can still be written


def proof(record, units):
    """Plan and verdict of a record as typed, and whatever of it cannot be used.

    record: see calc.service.entries
    units: see calc.base.display; only how entries are read hangs on them

    Returns `{"plan", "verdict", "problems"}`, contracts `plan`, `verdict` and `reading_problem`, less their texts; plan and
    verdict are None where there can be no plan. Raises CalcError naming record or units.
    """
    rig, conditions, readings, problems = entries.facts(record, units)
    plan = _plan(rig, conditions, problems)
    return {"plan": plan, "verdict": None if plan is None else _verdict(plan, readings, problems), "problems": problems}


def _plan(rig, conditions, problems):
    """The plan, leaving out conditions that cannot be, one a round; None where even so there is none."""
    for _ in range(MOST_PROBLEMS):  # pragma: no branch - there are fewer conditions than that
        try:
            return service_plan.plan(rig, conditions)
        except CalcError as error:
            place = "conditions." + error.field
            if conditions.get(error.field) is None:
                problems.append({"place": "rig.pump_rated" if error.field == "rated_gpm" else place, "code": error.code})
                return None
            problems.append({"place": place, "code": error.code})
            conditions[error.field] = None


def _verdict(plan, readings, problems):
    """The verdict, leaving out readings that cannot be."""
    for _ in range(MOST_PROBLEMS):
        try:
            return service_verdict.verdict(plan, readings)
        except CalcError as error:
            test = error.facts["test"]
            problems.append({"place": "tests." + test + "." + error.field, "code": error.code})
            readings[test]["values"][error.field] = None
    raise CalcError("record", "damaged")


def check_amounts(plan, verdict):
    """Refuse a plan or verdict with an amount past any pump, which no page could write.

    plan, verdict: of proof

    Raises CalcError naming value.
    """
    for test in plan["tests"]:
        for speed in test.get("expected", []):
            _check(speed, ("engine_rpm", "pump_rpm"))
    for test in verdict["tests"]:
        for figure in test["figures"]:
            if figure["kind"] != "check":
                _check(figure, ("value", "band", "least", "most"))
        for attempt in test.get("attempts", []):
            for row in attempt["sets"]:
                check_set(row)
        for caution in test["cautions"]:
            _check(caution, ("value", "limit"))


def check_set(row):
    """The same of one set of readings.

    row: contract `set_judged`

    Raises CalcError naming value.
    """
    for figure in row["figures"]:
        _check(figure, ("value", "band"))


def _check(amounts, names):
    for name in names:
        if amounts[name] is not None and not -MOST_AMOUNT <= amounts[name] <= MOST_AMOUNT:
            raise CalcError("value", "too_large", most=MOST_AMOUNT)
