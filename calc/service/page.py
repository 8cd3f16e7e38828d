"""What the Test page shows: plan and verdict of a record as typed, every figure with its text in the page's units."""
from calc.base import display
from calc.base.errors import CalcError
from calc.service import entries, judge, plan as service_plan, start, verdict as service_verdict, years
from calc.service.before_run import before_run
from calc.service.doubts import doubts_of

MOST_PROBLEMS = 60
# figures of a run that are set or expected, and their kinds; what is set is rounded so that its point is reached
SET = (("flow_gpm", "flow"), ("net_psi", "pressure"))


def answer(record, units):
    """Plan, verdict and whatever cannot be used, of a record as typed.

    record: see calc.service.entries; a run may hold `draft`, the readings that are being entered
    units: see calc.base.display

    Returns contract `service_answer`.
    Raises CalcError naming record or units.
    """
    rig, conditions, readings, problems = entries.facts(record, units)
    plan = _plan(rig, conditions, problems)
    if plan is None:
        add_bound_texts(problems, units)
        return {"plan": None, "verdict": None, "live": {}, "doubts": {}, "waits": {}, "before": None, "summary": None, "problems": problems, "points": []}
    verdict = _verdict(plan, readings, problems)
    live, doubts = _live(plan, record, units, problems, verdict)
    judged = {test["id"]: test for test in verdict["tests"]}
    before = before_run(verdict["tests"], record)
    waits = {test["id"]: start.waits(test, live.get(test["id"]) if test["kind"] == "run" else judged[test["id"]], before)
             for test in plan["tests"] if test["start"]}
    summary = years.summary(plan, verdict)
    said = {}
    for test in plan["tests"]:
        _add_test_texts(test, units, said)
    _add_texts(verdict, units, said)
    _add_texts(live, units, said)
    add_bound_texts(problems, units)
    return {"plan": plan, "verdict": verdict, "live": live, "doubts": doubts, "waits": waits, "before": before, "summary": summary, "problems": problems,
            "points": _points(rig["standard"], units)}


def _points(standard, units):
    """The pressures at which gauges and the pressure control are tried, by the names that readings carry."""
    points = [point for name in ("pressure_control", "gauges") for point in standard.get(name, {}).get("points", [])]
    return [{"id": point["id"], "text": display.figure(units, "pressure", point["pressure_psi"])} for point in points]


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
            test, place = error.facts["test"], error.field
            values = readings.get(test, {}).get("values", {})
            if "set" in error.facts:
                attempt, count = error.facts["attempt"], error.facts["set"]
                values = readings[test]["attempts"][attempt]["sets"][count]
                place = str(attempt) + "." + str(count) + "." + place
            problems.append({"place": "tests." + test + "." + place, "code": error.code})
            values[error.field] = None
    raise CalcError("record", "damaged")


def _live(plan, record, units, problems, verdict):
    """The readings that are being entered, judged as they stand, and what of them is in doubt, by run."""
    live, doubts = {}, {}
    judged = {test["id"]: test for test in verdict["tests"]}
    for test in plan["tests"]:
        draft = ((record.get("tests") or {}).get(test["id"]) or {}).get("draft")
        if test["kind"] != "run" or not draft:
            continue
        place = "tests." + test["id"] + ".draft."
        values = {}
        for name in draft.get("values") or {}:
            typed = draft["values"][name]
            if isinstance(typed, list):
                values[name] = [entries.read(units, "pitot", place + name + "." + str(count), reading, problems, name)
                                for count, reading in enumerate(typed)]
            else:
                values[name] = entries.read(units, entries.kind_of(name), place + name, typed, problems, name)
        values["at_s"] = 0
        try:
            live[test["id"]] = judge.judged_set(test, entries.tip_of(draft.get("tip"), units, place + "tip", problems), values, plan)
        except CalcError as error:
            problems.append({"place": place + error.field, "code": error.code})
            continue
        attempts = judged[test["id"]]["attempts"]
        before = attempts[-1]["sets"][-1] if attempts and attempts[-1]["sets"] else None
        doubts[test["id"]] = doubts_of(test, values, live[test["id"]], before, plan)
    return live, doubts


def add_bound_texts(problems, units):
    """Add to each entry that cannot be the texts of what it can be, "least_text" and "most_text".

    problems: of calc.service.entries
    units: see calc.base.display

    Raises CalcError naming units.
    """
    for problem in problems:
        if "least" in problem:
            problem["least_text"] = display.limit(units, problem["kind"], problem["least"], -1)
            problem["most_text"] = display.limit(units, problem["kind"], problem["most"], 1)


def _add_texts(data, units, said):
    """Add texts to every figure within plain data; `said` holds those of this answer, since most limits stand at many readings."""
    if isinstance(data, list):
        for row in data:
            _add_texts(row, units, said)
    elif isinstance(data, dict):
        if "kind" in data and "least" in data:
            _add_figure_texts(data, units, said)
        elif "limit" in data and "kind" in data:
            data["value_text"] = _figure(units, said, data["kind"], data["value"])
            data["limit_text"] = _figure(units, said, data["kind"], data["limit"])
        for name in data:
            if isinstance(data[name], (list, dict)):
                _add_texts(data[name], units, said)


def _add_figure_texts(figure, units, said):
    kind = figure["kind"]
    if kind == "check":
        return
    if "value" in figure:
        figure["value_text"] = _figure(units, said, kind, figure["value"])
        scale = display.scale(units, units["shown"], kind)
        figure["band_text"] = None if figure["band"] is None else display.plain(units, figure["band"] * scale["factor"], scale["places"])
    figure["least_text"] = _limit(units, said, kind, figure["least"], -1)
    figure["most_text"] = _limit(units, said, kind, figure["most"], 1)


def _figure(units, said, kind, value):
    if (kind, value) not in said:
        said[(kind, value)] = display.figure(units, kind, value)
    return said[(kind, value)]


def _limit(units, said, kind, value, side):
    if (kind, value, side) not in said:
        said[(kind, value, side)] = display.limit(units, kind, value, side)
    return said[(kind, value, side)]


def _add_test_texts(test, units, said):
    """Add texts to a test of the plan."""
    _add_texts(test.get("limits", []), units, said)
    if test["kind"] != "run":
        return
    for name, kind in SET:
        test[name.split("_")[0] + "_text"] = display.limit(units, kind, test[name], -1)
    test["gauge_text"] = display.needle(units, "pressure", test["gauge_psi"])
    hold_psi = test["hold_psi"]
    test["hold_texts"] = hold_psi and [display.limit(units, "pressure", hold_psi[0], -1), display.limit(units, "pressure", hold_psi[1], 1)]
    test["band_texts"] = [display.figure(units, "flow", test["flow_least_gpm"]), display.figure(units, "flow", test["flow_most_gpm"])]
    test["loss_text"] = display.figure(units, "length", test["suction_loss_ft"])
    for tip in test["tips"]:
        tip["tip_text"] = display.figure(units, "diameter", tip["tip_in"])
        tip["pitot_text"] = display.needle(units, "pitot", tip["pitot_psi"])
    for speed in test["expected"]:
        speed["engine_text"] = display.figure(units, "speed", speed["engine_rpm"])
        speed["pump_text"] = display.figure(units, "speed", speed["pump_rpm"])
