"""What must stand before the time of a test counts."""
from calc.service.judge import FAIL


def waits(test, judged, before=None):
    """What the clock of a test still waits for.

    test: of a plan; its "start" names the readings that must stand
    judged: the reading that is being entered of a pumping run, by calc.service.judge.judged_set, or None; else the test's verdict
    before: of calc.service.before_run, or None; a pumping run waits for what is open in it until somebody went on without

    Returns a list, each contract `waiting`. Raises nothing.
    Source: the standard's data (the flow's band; the vacuum and pressure that are held).
    """
    blank = [name for name in test["start"] if judged is None or name in judged["missing"]]
    if "pitot_psi" in test["start"] and not test["tips"]:
        blank.insert(0, "tips_in")
    outside = []
    if judged and test["kind"] == "run":
        outside = ["flow_gpm"] if judged["is_strayed"] else []
    elif judged:
        outside = [figure["id"] for figure in judged["figures"] if figure["id"] in test["start"] and figure["status"] == FAIL]
    unready = []
    if before and test["kind"] == "run" and before["override"] is None:
        for row in before["open"]:
            if row["test"] not in unready:
                unready.append(row["test"])
    return [{"id": name, "code": code} for names, code in ((unready, "unready"), (blank, "blank"), (outside, "outside")) for name in names]
