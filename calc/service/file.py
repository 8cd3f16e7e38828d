"""A service test that comes from elsewhere: only what has the shape of a test is let in, and its result is
worked out again from its readings.

Nothing in such a file is trusted: a test whose limits are not those of our standard of its name and kind, now or on its day, is refused, and a result
it claims is compared with what its own readings prove. A rig's baseline may travel beside its tests.
"""
from calc.base.errors import CalcError
from calc.service import limits, quick_answer, years
from calc.service.proof import check_amounts, proof

SCHEMA = 1
MOST_TEXT = 2000
MOST_NAME = 200
MOST_ROWS = 500
MOST_DEPTH = 12
MOST_PICTURE = 266_700  # of a photo of 200 kB, written in base 64
MOST_RECORDS = 2000  # in one file: a rig tested weekly for 38 years
MOST_VALUES = 4000  # in one test, its limits with it: a whole one has about 1,000, and a phone judges so many in a second
LARGEST_BYTES = 5_000_000  # of one file; a whole test has about 12,000
LATEST_MS = 7_300_000_000_000  # the year 2201
# "text", "name" (not empty), "number", "time" (milliseconds since 1970, or None), "any"; [shape] is a list, {"*": shape} any names;
# a name that ends in "?" may be left out, or None where it is no list of attempts or names; what the Test page comes to write besides is any plain data
CLOCK = {"counted_s": "number", "since?": "number", "events": [{"kind": "name", "at_s": "number", "wall": "time", "reason?": "text", "*": "any"}], "*": "any"}
TIP = {"tip_in": "text", "count": "count"}
SET = {"at_s": "number", "at_ms": "time", "tip?": TIP, "values": {"*": "typed"}, "back_ms?": "time", "as_before?": ["name"], "*": "any"}
ATTEMPT = {"tip?": TIP, "clock": CLOCK, "clock_s": "number", "stopped?": "text", "sets": [SET], "taken_back?": [SET], "*": "any"}
NEVER_NONE = ([ATTEMPT], ["name"])  # pages read them as they stand
SHAPE = {
    "schema": "number", "id": "name", "revision": "number", "rig_id": "name", "rig_name": "name",
    "rig": {"meters?": "few", "gauges?": "dozen", "pump_stages?": "few", "new?": {"*": {"engine_rpm": "number", "net_psi?": "number"}},
            "last?": {"*": {"engine_rpm": "number", "net_psi?": "number"}}, "*": "text"},
    "standard": {"id": "name", "kind": "name", "*": "any"},  # the rest is held to ours, see calc.service.limits
    "conditions": {"tips_in?": ["text"], "*": "text"},
    "accuracy": {"*": "text"},
    "equipment": [{"what": "text", "serial": "text", "calibrated": "text", "due?": "text"}],
    "people": {"tester": "text", "witness": "text"},
    "tests": {"*": {"values?": {"*": "typed"}, "not_done?": "text", "clock?": CLOCK, "clock_s?": "number", "attempts?": [ATTEMPT],
                    "draft?": {"tip?": TIP, "values?": {"*": "typed"}, "*": "any"}, "*": "any"}},
    "events": [{"kind": "name", "s": "number", "wall": "time", "counted_s?": "number", "*": "any"}],
    "overrides?": [{"name": "text", "reason": "text", "wall": "time", "open": [{"test": "name", "check": "name", "value?": "text"}]}],
    "override?": {"*": "text"},
    "signed?": [{"role": "name", "name": "name", "wall": "time", "digest": "name", "strokes": "text"}],
    "versions?": [{"digest": "name", "wall": "time", "what": "text", "why": "text", "by": "text", "signed": ["text"], "status?": "name"}],
    "photographed?": {"*": "name"},  # digests of the photos that were signed, by id
    "photos?": [{"id": "name", "part": "name", "at_ms": "time", "picture": "picture"}],  # of the file alone: a phone sets them apart before it judges
    "notes": "text", "begun_ms": "time", "finished_ms?": "time", "result?": "any", "*": "any",
}
WITH_OURS = {name: "ours" if name == "standard" else SHAPE[name] for name in SHAPE}
BASELINE = {"schema": "number", "rig_id": "name", "rig_name": "name",
            "baseline": {"at_ms": "moment", "readings": [{"engine_rpm": "name", "discharge_psi": "name"}]}}


def judged(record, standards, former, units):
    """A record from a file as it may be saved, with what its readings prove.

    record: whatever the file held, as plain data
    standards, former: ours, in force and before, see calc.service.limits
    units: see calc.base.display

    Returns the answer of contract `service.judged`, its verdict less its texts: the record carries its result worked out again
    where it is finished, and "edition" is that of our limits it was judged by where a later one is in force.
    Raises CalcError with field file and code not_a_test, newer, too_large, damaged, other_limits or former_limits, and as a fact
    where: `at`.
    """
    if not isinstance(record, dict) or "schema" not in record or "standard" not in record or "tests" not in record:
        raise CalcError("file", "not_a_test")
    if _has_too_many(record):
        raise CalcError("file", "too_large", most=MOST_VALUES)
    if record["schema"] != SCHEMA:
        raise CalcError("file", "newer")
    is_ours = limits.is_ours(record["standard"], standards)
    _check(record, WITH_OURS if is_ours else SHAPE)
    edition = None if is_ours else limits.edition_of(record["standard"], record["begun_ms"], standards, former)
    try:
        proved = proof(record, units)
        if proved["plan"]:
            check_amounts(proved["plan"], proved["verdict"])
    except CalcError as error:
        raise CalcError("file", "damaged", at=error.field)
    judged_record = dict(record)
    judged_record["finished_ms"] = record.get("finished_ms")
    claimed = None
    if judged_record["finished_ms"] is not None:
        result = record.get("result")
        judged_record["result"] = summary = proved["plan"] and years.summary(proved["plan"], proved["verdict"])
        status = result.get("status") if isinstance(result, dict) else None
        if summary is None or status != summary["status"]:
            claimed = status if isinstance(status, str) else "missing"
    else:
        judged_record["result"] = None
    return {"record": judged_record, "verdict": proved["verdict"], "claimed": claimed, "edition": edition}


def _has_too_many(record):
    """Whether there are more values in it than a test has, however deep: soon said, whatever it is."""
    pending, count = [record], 0
    while pending:
        value = pending.pop()
        if isinstance(value, (dict, list)):
            count += len(value)
            if count > MOST_VALUES:
                return True
            pending.extend(value.values() if isinstance(value, dict) else value)
    return False


def is_baseline(content):
    """Whether a thing in a file is a rig's baseline of the check after a repair rather than a test.

    content: whatever the file held, as plain data

    Raises nothing.
    """
    return isinstance(content, dict) and "baseline" in content


def baseline(content, units):
    """A rig's baseline from a file as it may be saved: every reading whole, readable and possible.

    content: whatever the file held, as plain data
    units: see calc.base.display

    Returns contract `baseline_file`. Raises CalcError as judged does.
    """
    if not is_baseline(content):
        raise CalcError("file", "not_a_test")
    if content.get("schema") != SCHEMA:
        raise CalcError("file", "newer")
    _check(content, BASELINE)
    readings = content["baseline"]["readings"]
    if not 0 < len(readings) <= quick_answer.MOST_STEPS:
        raise CalcError("file", "damaged", at="baseline.readings")
    if len(quick_answer.known(readings, units)) < len(readings):
        raise CalcError("file", "damaged", at="baseline.readings")
    return content


def _check(value, shape):
    fault = _fault(value, shape)
    if fault is not None:
        raise CalcError("file", "damaged", at=".".join(fault)[:MOST_NAME])


def _fault(value, shape):
    """Where a value first departs from a shape, as the names that lead there; None where nowhere."""
    if isinstance(shape, str):
        return None if _PLAIN[shape](value) else []
    if isinstance(shape, list):
        if not isinstance(value, list) or len(value) > MOST_ROWS:
            return []
        for row in value:
            fault = _fault(row, shape[0])
            if fault is not None:
                return fault
        return None
    return _fault_of_names(value, shape)


def _fault_of_names(value, shape):
    if not isinstance(value, dict) or len(value) > MOST_ROWS:
        return []
    for name in shape:
        if name not in value and name != "*" and name[-1] != "?":
            return [name]
    for name in value:
        if not _is_text(name, MOST_NAME):
            return []
        if name in shape:
            fault = _fault(value[name], shape[name])
        elif name + "?" in shape:
            asked = shape[name + "?"]
            fault = None if value[name] is None and asked not in NEVER_NONE else _fault(value[name], asked)
        else:
            fault = _fault(value[name], shape["*"]) if "*" in shape else []
        if fault is not None:
            return [name] + fault
    return None


def _is_text(value, most):
    return isinstance(value, str) and len(value) <= most


def _is_number(value):
    return value is not True and value is not False and isinstance(value, (int, float)) and value == value and abs(value) < 1e15


def _is_typed(value):
    """A reading as typed, or one for each tip."""
    if isinstance(value, list):
        return len(value) <= 9 and all(_is_text(reading, MOST_NAME) for reading in value)
    return value is None or _is_text(value, MOST_NAME)


def _is_any(value, depth=0):
    """Any JSON value, lists and objects at most twelve deep."""
    if depth > MOST_DEPTH:
        return False
    if isinstance(value, list):
        return len(value) <= MOST_ROWS and all(_is_any(row, depth + 1) for row in value)
    if isinstance(value, dict):
        return len(value) <= MOST_ROWS and all(_is_text(name, MOST_NAME) and _is_any(value[name], depth + 1) for name in value)
    if isinstance(value, str):
        return len(value) <= MOST_TEXT
    return value is None or value is True or value is False or _is_number(value)


_PLAIN = {
    "text": lambda value: _is_text(value, MOST_TEXT),
    "name": lambda value: _is_text(value, MOST_NAME) and value != "",
    "few": lambda value: value in ("", "0", "1", "2", "3", "4"),
    "dozen": lambda value: value == "" or value in [str(count) for count in range(13)],
    "count": lambda value: value in (1, 2, 3, 4) and value is not True,
    "number": _is_number,
    "moment": lambda value: _is_number(value) and 0 <= value <= LATEST_MS,
    "time": lambda value: value is None or _is_number(value) and 0 <= value <= LATEST_MS,
    "typed": _is_typed,
    "picture": lambda value: _is_text(value, MOST_PICTURE) and value.startswith("data:image/jpeg;base64,"),
    "any": _is_any,
    "ours": lambda value: True,
}
