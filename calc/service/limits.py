"""Whose limits a test from a file was judged by: only our own standard's count, never those its file brings."""
from calc.base.errors import CalcError

MOST_PLACE = 200


def check_ours(standard, standards):
    """Raise unless a file's standard is ours of that name and kind, to the last limit.

    standard: what the file brought, of the shape that calc.service.file asks
    standards: ours, by name and kind

    Raises CalcError with field file and code damaged (we have none of that name) or other_limits, and as a fact where: `at`.
    """
    ours = standards.get(standard["id"], {}).get(standard["kind"])
    if ours is None:
        raise CalcError("file", "damaged", at="standard")
    place = _where_unlike(standard, ours, "standard")
    if place:
        raise CalcError("file", "other_limits", at=place[:MOST_PLACE])


def _where_unlike(one, other, place):
    """The first place where two plain things differ, "" where nowhere; numbers to nine digits, since phones write the last one differently."""
    if _is_number(one) and _is_number(other):
        return "" if abs(one - other) <= 1e-9 * max(abs(one), abs(other)) else place
    if isinstance(one, dict) and isinstance(other, dict):
        for name in sorted(set(one) | set(other)):
            at = place + "." + name
            unlike = _where_unlike(one[name], other[name], at) if name in one and name in other else at
            if unlike:
                return unlike
        return ""
    if isinstance(one, list) and isinstance(other, list):
        if len(one) != len(other):
            return place
        for count, row in enumerate(one):
            unlike = _where_unlike(row, other[count], place)
            if unlike:
                return unlike
        return ""
    return "" if one == other and type(one) == type(other) else place


def _is_number(value):
    return isinstance(value, (int, float)) and value is not True and value is not False
