"""Whose limits a test from a file was judged by: only our own standard's count, those in force or those of the test's day,
never those its file brings."""
from calc.base.errors import CalcError

MOST_PLACE = 200
DAY_MS = 86400000
LATE_DAYS = 90  # a phone without signal goes on with the edition it has: common practice


def is_ours(standard, standards):
    """Whether what a file brought as its standard is, written out, ours in force; most files' is, and needs no look at each limit.

    standard: any plain data
    standards: as for edition_of

    Raises nothing.
    """
    name, kind = (standard.get("id"), standard.get("kind")) if isinstance(standard, dict) else (None, None)
    ours = standards.get(name, {}).get(kind) if isinstance(name, str) and isinstance(kind, str) else None
    return ours is not None and standard == ours and str(standard) == str(ours)  # equal first: what nests deeper is never written out


def edition_of(standard, begun_ms, standards, former):
    """The edition of our own limits that a file's standard is, to the last limit; None for that in force.

    standard: what the file brought, of the shape that calc.service.file asks
    begun_ms: when its test was begun, milliseconds since 1970, or None
    standards: ours, by name and kind
    former: former editions, newest first: [{"id", "last_ms", "standards"}], by name and kind `{"was": the sections as they were,
        "later": names of sections that came later}`

    A former edition counts for tests begun up to 90 days after its last day. Raises CalcError with field file and code damaged
    (we have none of that name), other_limits with, as a fact, `at` which limit, or former_limits with `at` which edition.
    """
    ours = standards.get(standard["id"], {}).get(standard["kind"])
    if ours is None:
        raise CalcError("file", "damaged", at="standard")
    place = _where_unlike(standard, ours, "standard")
    if not place:
        return None
    for edition in former:
        changes = edition["standards"].get(standard["id"], {}).get(standard["kind"])
        if changes and not _where_unlike(standard, _as_it_was(ours, changes), "standard"):
            if begun_ms is None or begun_ms > edition["last_ms"] + LATE_DAYS * DAY_MS:
                raise CalcError("file", "former_limits", at=edition["id"])
            return edition["id"]
    raise CalcError("file", "other_limits", at=place[:MOST_PLACE])


def _as_it_was(ours, changes):
    """A standard of ours with its sections as a former edition had them."""
    old = {name: section for name, section in ours.items() if name not in changes["later"]}
    old.update(changes["was"])
    return old


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
