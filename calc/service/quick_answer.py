"""The quick check after a repair as typed, in any units, beside the rig's baseline."""
from calc.base import display
from calc.base.errors import CalcError
from calc.service import doubts, entries, quick as service_quick
from calc.service.texts import add_bound_texts

FIELDS = (("engine_rpm", "speed"), ("discharge_psi", "pressure"))
MOST_STEPS = 12


def answer(baseline, readings, quick, accuracy, units):
    """Each step's pressure beside what the baseline gives at that speed, with texts.

    baseline, readings: as typed, each contract `quick_entry`; a blank is "" or None
    quick, accuracy: see calc.service.quick.compare; amounts in calc's units; step_psi of quick is what each step is raised to
    units: see calc.base.display

    Returns the answer of contract `quick.answer`; an entry with a problem counts as blank, and baseline readings that are not
    whole are left out; a step whose pressure seems to have its decimal point elsewhere has that as its doubt. Raises CalcError naming the input.
    """
    if len(baseline) > MOST_STEPS or len(readings) > MOST_STEPS:
        raise CalcError("readings", "too_many", most=MOST_STEPS)
    problems = []
    amounts = [_read(reading, units, str(place), problems) for place, reading in enumerate(readings)]
    compared_with = known(baseline, units)
    for _ in range(2 * MOST_STEPS):  # pragma: no branch - each round blanks one entry, so the last has none to refuse
        try:
            check = service_quick.compare(compared_with, amounts, quick, accuracy)
            break
        except CalcError as error:
            if "step" not in error.facts:
                raise
            problems.append({"place": str(error.facts["step"]) + "." + error.field, "code": error.code})
            amounts[error.facts["step"]][error.field] = None
    points_psi = quick["step_psi"]
    for place, step in enumerate(check["steps"]):
        step["expected_text"] = display.figure(units, "pressure", step["expected_psi"])
        step["band_text"] = display.figure(units, "pressure", step["band_psi"])
        step["percent_text"] = None if step["percent"] is None else display.plain(units, abs(step["percent"]), 1)
        point_psi = points_psi[place] if place < len(points_psi) else None
        step["doubt"] = "point_slipped" if doubts.is_slipped(step["discharge_psi"], point_psi) else None
    check["has_baseline"] = bool(compared_with)
    add_bound_texts(problems, units)
    check["problems"] = problems
    return check


def known(baseline, units):
    """The readings of a baseline that can be compared with, in calc's units.

    baseline, units: as for answer

    Raises nothing.
    """
    readings = [_read(reading, units, str(place), []) for place, reading in enumerate(baseline)]
    return [reading for reading in readings if reading["engine_rpm"] and reading["discharge_psi"]]


def _read(typed, units, place, problems):
    return {name: entries.read(units, kind, place + "." + name, typed.get(name), problems, name) for name, kind in FIELDS}
