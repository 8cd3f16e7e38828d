"""What the Test page shows: plan and verdict of a record as typed, every figure with its text in the page's units."""
from calc.base import display
from calc.base.errors import CalcError
from calc.service import entries, judge, start, years
from calc.service.before_run import before_run
from calc.service.doubts import doubts_of
from calc.service.proof import check_set, proof
from calc.service.texts import add_bound_texts, add_plan_texts, add_texts


def answer(record, units):
    """Plan, verdict and whatever cannot be used, of a record as typed.

    record: see calc.service.entries; a run may hold `draft`, the readings that are being entered
    units: see calc.base.display

    Returns contract `service_answer`.
    Raises CalcError naming record or units.
    """
    proved = proof(record, units)
    plan, verdict, problems = proved["plan"], proved["verdict"], proved["problems"]
    if plan is None:
        add_bound_texts(problems, units)
        return {"plan": None, "verdict": None, "live": {}, "doubts": {}, "waits": {}, "before": None, "summary": None, "problems": problems, "points": []}
    judged = {test["id"]: test for test in verdict["tests"]}
    live, doubts = _live(plan, record, units, problems, judged)
    before = before_run(verdict["tests"], record)
    waits = {test["id"]: start.waits(test, live.get(test["id"]) if test["kind"] == "run" else judged[test["id"]], before)
             for test in plan["tests"] if test["start"]}
    summary = years.summary(plan, verdict)
    said = {}
    for test in plan["tests"]:
        add_plan_texts(test, units, said)
    add_texts(verdict, units, said)
    add_texts(live, units, said)
    add_bound_texts(problems, units)
    return {"plan": plan, "verdict": verdict, "live": live, "doubts": doubts, "waits": waits, "before": before, "summary": summary, "problems": problems,
            "points": _points(record["standard"], units)}


def _points(standard, units):
    """The pressures at which gauges and the pressure control are tried, by the names that readings carry."""
    points = [point for name in ("pressure_control", "gauges") for point in standard.get(name, {}).get("points", [])]
    return [{"id": point["id"], "text": display.figure(units, "pressure", point["pressure_psi"])} for point in points]


def _live(plan, record, units, problems, judged):
    """The readings that are being entered, judged as they stand, and what of them is in doubt, by run."""
    live, doubts = {}, {}
    for test in plan["tests"]:
        draft = ((record.get("tests") or {}).get(test["id"]) or {}).get("draft")
        if test["kind"] != "run" or not draft:
            continue
        place = "tests." + test["id"] + ".draft."
        values = entries.values_of(draft.get("values") or {}, units, place, problems)
        values["at_s"] = 0
        try:
            row = judge.judged_set(test, entries.tip_of(draft.get("tip"), units, place + "tip", problems), values, plan)
            check_set(row)
        except CalcError as error:
            problems.append({"place": place + error.field, "code": error.code})
            continue
        live[test["id"]] = row
        attempts = judged[test["id"]]["attempts"]
        before = attempts[-1]["sets"][-1] if attempts and attempts[-1]["sets"] else None
        doubts[test["id"]] = doubts_of(test, values, row, before, plan)
    return live, doubts
