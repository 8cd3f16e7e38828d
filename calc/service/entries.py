"""A service test as typed to what calc.service.plan and calc.service.verdict take.

A record is contract `record_entered`: every amount is text as typed ("145@US"), under the name calc knows it by. What cannot be
read, or cannot be at all, is left out and listed as a problem, contract `reading_problem`.
"""
from calc.base import entry
from calc.base.errors import CalcError, check_within
from calc.service import bounds as service_bounds

KINDS = {"f": "temperature", "inhg": "vacuum", "ft": "length", "in": "diameter", "psi": "pressure", "gpm": "flow", "rpm": "speed",
         "s": "seconds", "percent": "percent", "gal": "volume"}
RIG = (("pump_rated", "rated_gpm", "flow"), ("governed", "governed_rpm", "speed"), ("pump_ratio", "pump_ratio", "ratio"),
       ("tank", "tank_gal", "volume"), ("tank_rate", "tank_new_gpm", "flow"), ("relief_set", "relief_set_psi", "pressure"))
SPEEDS = (("speed_capacity", "capacity"), ("speed_seventy", "seventy"), ("speed_fifty", "fifty"))
CHOSEN = ("source", "flow_by", "foam_by")
COUNTED = ("meters", "gauges")  # on the panel: "meter_1", "gauge_1" and on


def kind_of(name):
    """The kind of quantity that a name's ending stands for.

    name: such as "suction_length_ft"; "barometer_inhg" and "suction_lines" are kinds of their own

    Raises nothing: an unknown ending is a plain number's, "ratio".
    """
    if name[:9] == "barometer":
        return "barometer"
    if name[:5] == "pitot" and name[-3:] == "psi":
        return "pitot"
    return KINDS.get(name.split("_")[-1], "ratio")


def is_blank(text):
    """Whether nothing was typed.

    text: as typed, or None

    Raises nothing.
    """
    return text is None or isinstance(text, str) and not text.partition("@")[0].strip()


def facts(record, units):
    """A record's rig, conditions and readings in calc's units, and what could not be read.

    record: as the module says
    units: see calc.base.display

    Returns `(rig, conditions, readings, problems)`. Raises CalcError naming record where it is none.
    """
    if not isinstance(record, dict) or not isinstance(record.get("standard"), dict):
        raise CalcError("record", "damaged")
    problems = []
    return (_rig(record, units, problems), _conditions(record, units, problems), _readings(record, units, problems), problems)


def read(units, kind, place, text, problems, name=None):
    """One entry as an amount, or None where it is blank or cannot be read; the latter is noted.

    units, kind: as for entry.quantity
    place: where it stands
    text: as typed, or None
    problems: list that is added to
    name: of the reading, whose bounds it is held to, or None where it has none

    Raises nothing.
    """
    if is_blank(text):
        return None
    bounds = name and service_bounds.bounds_of(name)
    try:
        value = entry.quantity(units, kind, place, text)
        if bounds:
            check_within(place, value, bounds[0], bounds[1])
    except CalcError as error:
        problem = {"place": place, "code": error.code}
        problem.update(error.facts)
        if error.code == "out_of_range":
            problem.update({"kind": kind, "least": bounds[0], "most": bounds[1], "is_below": value < bounds[0]})
        problems.append(problem)
        return None
    return value


def _rig(record, units, problems):
    typed = record.get("rig") or {}
    rig = {"standard": record["standard"], "drive": typed.get("drive") or None}
    for name, ours, kind in RIG:
        rig[ours] = read(units, kind, "rig." + name, typed.get(name), problems)
    if typed.get("pump_stages"):
        rig["stages"] = int(typed["pump_stages"])
    for name in COUNTED:
        count = typed.get(name)
        rig[name] = None if is_blank(count) else [name[:-1] + "_" + str(place + 1) for place in range(int(count))]
    rig["controls"] = _controls(typed)
    rig["foam"] = typed.get("foam") or None
    rig["intake_relief"] = typed.get("intake_relief") or None
    # an electric or air shift has a manual override (a military specification for fire trucks, published)
    rig["has_override"] = bool(typed.get("override_place")) or typed.get("shift_control") in ("air", "electric")
    rig["has_auxiliary_intake"] = typed.get("auxiliary") == "yes"
    rig["new"] = dict(typed.get("new") or {})
    for name, run in SPEEDS:
        engine_rpm = read(units, "speed", "rig." + name, typed.get(name), problems)
        if run not in rig["new"] and engine_rpm:
            rig["new"][run] = {"engine_rpm": engine_rpm}
    rig["last"] = typed.get("last") or {}
    return rig


def _controls(typed):
    """What holds the rig's discharge pressure: governor, relief valve, both or neither; None where the profile does not say."""
    said = [typed.get(name) for name in ("pressure_control", "other_control")]
    return None if not said[0] else [name for name in ("governor", "relief") if name in said]


def _conditions(record, units, problems):
    typed = record.get("conditions") or {}
    conditions = {name: typed.get(name) for name in CHOSEN if typed.get(name)}
    for name in typed:
        if name not in CHOSEN and name != "tips_in":
            conditions[name] = read(units, kind_of(name), "conditions." + name, typed[name], problems, name)
    _refuse_deeper(conditions, problems)
    tips = [read(units, "diameter", "conditions.tips_in", text, problems) for text in typed.get("tips_in") or []]
    conditions["tips_in"] = [tip_in for tip_in in tips if tip_in is not None]
    accuracy = record.get("accuracy") or {}
    conditions["accuracy"] = {}
    for name in accuracy:
        value = read(units, kind_of(name), "accuracy." + name, accuracy[name], problems)
        if value is not None:
            # how far an instrument may err is a width, to which no offset applies: none of these kinds has one
            conditions["accuracy"][name] = value
    return conditions


def _refuse_deeper(conditions, problems):
    """No strainer hangs deeper than the water is: two readings that cannot both be right prove nothing. Source: geometry."""
    depth_ft, strainer_ft = conditions.get("depth_ft"), conditions.get("strainer_ft")
    if depth_ft is not None and strainer_ft is not None and strainer_ft > depth_ft:
        problems.append({"place": "conditions.strainer_ft", "code": "deeper_than_water"})
        conditions["depth_ft"] = conditions["strainer_ft"] = None


def _readings(record, units, problems):
    readings = {}
    typed = record.get("tests") or {}
    for name in typed:
        entered = typed[name]
        place = "tests." + name + "."
        readings[name] = {"not_done": entered.get("not_done"), "clock_s": entered.get("clock_s"),
                          "values": values_of(entered.get("values") or {}, units, place, problems)}
        if "attempts" in entered:
            readings[name]["attempts"] = [
                _attempt(attempt, units, place + str(count) + ".", problems) for count, attempt in enumerate(entered["attempts"])]
    return readings


def values_of(typed, units, place, problems):
    """Readings by name in calc's units.

    typed: text by name, "yes" or "no", or a list of texts, one a tip
    units, problems: as for read
    place: where they stand, with a point at its end

    Raises nothing.
    """
    values = {}
    for name in typed:
        text = typed[name]
        if isinstance(text, list):
            values[name] = [read(units, "pitot", place + name + "." + str(count), reading, problems, name) for count, reading in enumerate(text)]
        elif text in ("yes", "no"):
            values[name] = text
        else:
            values[name] = read(units, kind_of(name), place + name, text, problems, name)
    return values


def _attempt(attempt, units, place, problems):
    sets = []
    for count, row in enumerate(attempt.get("sets") or []):
        values = values_of(row.get("values") or {}, units, place + str(count) + ".", problems)
        values["at_s"] = row["at_s"]
        values["tip"] = tip_of(row.get("tip"), units, place + str(count) + ".tip", problems)
        sets.append(values)
    return {"clock_s": attempt.get("clock_s"), "stopped": attempt.get("stopped"), "sets": sets,
            "tip": tip_of(attempt.get("tip"), units, place + "tip", problems)}


def tip_of(tip, units, place, problems):
    """The tips of an attempt in calc's units, or None.

    tip: contract `tip`, or None
    units, place, problems: as for read

    Raises nothing.
    """
    tip_in = read(units, "diameter", place, (tip or {}).get("tip_in"), problems)
    return None if tip_in is None else {"tip_in": tip_in, "count": int(tip["count"])}
