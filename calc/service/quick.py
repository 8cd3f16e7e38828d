"""The quick check in the bay after a repair: the rig against its own baseline, by the affinity laws. It is no service test."""
from calc.base.errors import CalcError, check_positive, check_within
from calc.pump import rating
from calc.service.uncertainty import combined_band

WORST_FIRST = ("below", "above", "not_proven", "as_baseline")
ENTER = {"below": "pressure_short", "above": "pressure_over"}  # by status, the sign by which the diagnosis is entered


def compare(baseline, readings, quick, accuracy):
    """Pressure at each speed beside what the rig's baseline gives there.

    baseline: what this rig showed when it was sound, circulating from its tank: [{"engine_rpm", "discharge_psi"}], above 0
    readings: what it shows now, the same way, in steps: [{"engine_rpm", "discharge_psi"}]; None is a blank
    quick: the standard's section: tolerance_percent, 0 to 50
    accuracy: discharge_psi and speed_rpm, how far the instruments may err

    Returns the answer of contract `quick.answer`, less its texts and problems; pressure is expected from the baseline reading
    nearest in speed. Nothing here says that a rating is met. Raises CalcError naming the field and, as a fact, the step.
    Source: affinity laws (pressure as speed squared), from memory; the tolerance is common practice.
    """
    check_within("tolerance_percent", quick["tolerance_percent"], 0, 50)
    for known in baseline:
        check_positive("engine_rpm", known.get("engine_rpm"))
        check_positive("discharge_psi", known.get("discharge_psi"))
    steps = []
    for place, reading in enumerate(readings):
        try:
            steps.append(_step(baseline, reading, quick["tolerance_percent"], accuracy))
        except CalcError as error:
            raise CalcError(error.field, error.code, step=place)
    statuses = [step["status"] for step in steps] or ["not_proven"]
    status = [worst for worst in WORST_FIRST if worst in statuses][0]
    return {"status": status, "steps": steps, "enter": ENTER.get(status)}


def _step(baseline, reading, tolerance_percent, accuracy):
    engine_rpm, discharge_psi = reading.get("engine_rpm"), reading.get("discharge_psi")
    step = {"engine_rpm": engine_rpm, "discharge_psi": discharge_psi, "expected_psi": None, "band_psi": None, "percent": None,
            "is_close": False, "status": "not_proven"}
    if engine_rpm is None or not baseline:
        return step
    check_positive("engine_rpm", engine_rpm)
    nearest = baseline[0]
    for known in baseline:
        if abs(known["engine_rpm"] - engine_rpm) < abs(nearest["engine_rpm"] - engine_rpm):
            nearest = known
    expected_psi = rating.pressure_at_speed_psi(nearest["discharge_psi"], nearest["engine_rpm"], engine_rpm)
    step["expected_psi"] = expected_psi
    if discharge_psi is None:
        return step
    check_within("discharge_psi", discharge_psi, 0, 1000)
    allowed_psi = expected_psi * tolerance_percent / 100
    # the same gauge and tachometer read both times, so each errs twice
    speed_psi = 2 * expected_psi * accuracy["speed_rpm"] / engine_rpm
    step["band_psi"] = combined_band([accuracy["discharge_psi"], accuracy["discharge_psi"], speed_psi, speed_psi])
    step["percent"] = (discharge_psi / expected_psi - 1) * 100
    off_psi = discharge_psi - expected_psi
    step["status"] = "below" if off_psi < -allowed_psi else "above" if off_psi > allowed_psi else "as_baseline"
    step["is_close"] = abs(abs(off_psi) - allowed_psi) <= step["band_psi"]
    return step
