"""Where a rig stands between tests: passed and in date, due, failed, or never passed."""
from calc.base.errors import CalcError, check_positive

DAY_MS = 86400000
SOON_DAYS = 30
# the order a fleet is read in: what needs somebody first
ORDER = ("failed", "never", "due", "soon", "current")


def standing(results, on_ms, interval_days):
    """What the finished tests of one rig say on a day.

    results: finished tests in any order, each contract `standing_result`
    on_ms: the day, milliseconds since 1970, 0 or more
    interval_days: how long a proof holds, days, above 0

    Returns the answer of contract `service.standing`: "failed" where the newest test that proved anything failed; "never"
    where none passed; "due" where the last pass is older than the interval, "soon" in its last 30 days, else "current". A
    test that proved nothing changes nothing. Tests dated after the day are left out. Raises CalcError naming the input.
    Source: common practice (a yearly proof; not proven is no pass).
    """
    check_positive("interval_days", interval_days)
    if not on_ms >= 0:
        raise CalcError("on_ms", "negative")
    known = []
    for place, result in enumerate(results):
        if result["status"] not in ("pass", "fail", "not_proven"):
            raise CalcError("status", "unknown")
        if result["at_ms"] <= on_ms:
            known.append((result["at_ms"], place, result["status"]))
    known = sorted(known)
    proving = [status for _, _, status in known if status != "not_proven"]
    passed = [at_ms for at_ms, _, status in known if status == "pass"]
    last_ms = known[-1][0] if known else None
    if not passed:
        status, due_ms = "never", None
    else:
        due_ms = passed[-1] + interval_days * DAY_MS
        left_days = (due_ms - on_ms) / DAY_MS
        status = "due" if left_days < 0 else "soon" if left_days <= SOON_DAYS else "current"
    if proving and proving[-1] == "fail":
        status = "failed"
    return {"status": status, "last_ms": last_ms, "passed_ms": passed[-1] if passed else None, "due_ms": due_ms}
