"""What must stand before the time of a test counts."""
from calc.service.judge import FAIL


def waits(test, judged):
    """What the clock of a test still waits for.

    test: of a plan; its "start" names the readings that must stand
    judged: the reading that is being entered of a pumping run, by calc.service.judge.judged_set, or None; else the test's verdict

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
    return [{"id": name, "code": "blank"} for name in blank] + [{"id": name, "code": "outside"} for name in outside]
