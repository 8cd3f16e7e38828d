"""What the fields of a record may hold, and the refusal of what they may not.

A field is "text", "texts", "time", "number", "flag", "limit" or the tuple of its choices; with "?" it may be null.
"""
from calc.base.errors import CalcError, LARGEST

MOST_TEXT = 2000
MOST_LISTED = 400
LATEST_MS = 4102444800000  # the year 2100


def listed(fields):
    """Fields as check takes them.

    fields: what each is, by name

    Returns the names of those that are plain text, and the others as (name, what it is, whether it may be null). Raises nothing.
    """
    others = []
    for name, kind in fields.items():
        may_be_null = isinstance(kind, str) and kind.endswith("?")
        if kind != "text":
            others.append((name, kind[:-1] if may_be_null else kind, may_be_null))
    return [name for name in fields if fields[name] == "text"], others


def check(record, fields):
    """Refuse a record in which a field is missing or holds what it may not.

    record: a dict
    fields: as listed gives them

    Raises CalcError naming the field, with code missing, unknown, not_text, not_a_number, out_of_range, too_long, not_a_list,
    not_a_limit or out_of_order.
    """
    texts, others = fields
    if not _are_short([record.get(name) for name in texts]):
        for name in texts:
            _check_there(record, name)
            check_text(name, record[name])
    for name, kind, may_be_null in others:
        value = record.get(name)
        if value is None:
            _check_there(record, name)
        if value is not None or not may_be_null:
            _CHECKS.get(kind, check_choice)(name, value, kind)


def _are_short(values):
    """Whether all are texts, and none can be too long: all at once, in half the time of one by one."""
    try:
        return len("".join(values)) <= MOST_TEXT
    except TypeError:
        return False


def _check_there(record, name):
    if name not in record:
        raise CalcError(name, "missing")


def check_choice(field, value, choices):
    """Refuse what is none of the choices.

    field: name of the value, for the refusal
    value: anything
    choices: what it may be

    Raises CalcError with code unknown.
    """
    if value not in choices:
        raise CalcError(field, "unknown")


def check_text(field, value, most=MOST_TEXT):
    """Refuse what is no text that a person may write.

    field: name of the value, for the refusal
    value: anything
    most: characters, of up to 2,000

    Raises CalcError with code not_text or too_long.
    """
    if not isinstance(value, str):
        raise CalcError(field, "not_text")
    if len(value) > most:
        raise CalcError(field, "too_long", most=most)


def check_amount(field, value, most, least=0):
    """Refuse what is no number of those that are meant.

    field: name of the value, for the refusal
    value: anything; True and False are no numbers here
    most, least: bounds, both allowed

    Raises CalcError with code not_a_number or out_of_range.
    """
    if value is True or value is False or not isinstance(value, (int, float)) or value != value:
        raise CalcError(field, "not_a_number")
    if not least <= value <= most:
        raise CalcError(field, "out_of_range", least=least, most=most)


def _check_texts(field, value, _):
    if not isinstance(value, list) or len(value) > MOST_LISTED:
        raise CalcError(field, "not_a_list", most=MOST_LISTED)
    if not _are_short(value):
        for part in value:
            check_text(field, part)


def _check_flag(field, value, _):
    if value is not True and value is not False:
        raise CalcError(field, "unknown")


def _check_time(field, value, _):
    check_amount(field, value, LATEST_MS)


def _check_number(field, value, _):
    check_amount(field, value, LARGEST, -LARGEST)


def _check_limit(field, value, _):
    if not isinstance(value, dict):
        raise CalcError(field, "not_a_limit")
    for part in ("value", "to", "whose"):
        if part not in value:
            raise CalcError(field, "missing")
    check_text(field, value["whose"])
    check_amount(field, value["value"], LARGEST, -LARGEST)
    if value["to"] is not None:
        check_amount(field, value["to"], LARGEST, -LARGEST)
        if value["to"] < value["value"]:
            raise CalcError(field, "out_of_order")


_CHECKS = {
    "text": lambda field, value, _: check_text(field, value), "texts": _check_texts, "time": _check_time, "number": _check_number,
    "flag": _check_flag, "limit": _check_limit,
}
