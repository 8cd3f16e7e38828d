"""A reading of a check against its limit: the rig's own where it has one, else the list's; and how it went before."""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.base.order import ordered

KINDS = ("min", "max", "range", "target")
TREND = 3  # readings in a row, each nearer the limit or farther from it, make a trend
MOST_EARLIER = 6
GREATEST_VACUUM_INHG = 31  # the air's whole pressure at sea level on a day of high pressure: no gauge reads more
SHIFTS = (0.1, 10, 0.01, 100)  # of a decimal point that was left out or slipped
HAIR = 1e-9  # of rounding in a conversion


def judged(limit, text, own, earlier, units):
    """A reading against its limit.

    limit: of the list: `{"kind", "value", "to", "quantity"}`. quantity: one of the units' kinds, or None for a plain number in
        the limit's own unit. kind min and max allow the value itself, range both ends; target says what to aim at only. whose: department or profile, where it is theirs
    text: the reading as typed, "22@US"
    own: the rig's own limit: `{"value", "to", "whose"}`, or None
    earlier: readings of this item before: `{"at_ms", "amount"}`, in any order
    units: see calc.base.display

    Returns the answer of contract `limits.judged`: the amount in calc's unit, whether it is good (None for a target), the
    limit and earlier readings as texts in the page's unit, whose it is, and the trend; `asked` where it is past the plausible: "meant", the
    figure with its point moved that is plausible, or None, and the plausible "least" and "most". Such a reading is never good. Raises CalcError naming reading or limit; with code negative or out_of_range for a reading that cannot be: less than nothing
    of what goes no lower, or more vacuum than the air has pressure (standard atmosphere, 29.92 inHg).
    """
    if limit["kind"] not in KINDS:
        raise CalcError("limit", "unknown")
    low, high = _ends(limit, own)
    quantity = limit["quantity"]
    if quantity:
        amount = entry.quantity(units, quantity, "reading", text)
    else:
        amount = entry.number("reading", text.split("@")[0], "count", display.decimal(units))
    goes_below = limit["kind"] == "range" and limit["value"] <= 0  # over or under what was set: a rate, a gauge's zero
    if amount < 0 and not goes_below and quantity != "temperature":
        raise CalcError("reading", "negative")
    if quantity == "vacuum" and amount > GREATEST_VACUUM_INHG:
        raise CalcError("reading", "out_of_range")
    bounds = [_bound(units, quantity, low, -1), _bound(units, quantity, high, 1)]
    shown = display.converted(display.scale(units, units["shown"], quantity), amount) if quantity else amount
    is_low = bounds[0] is not None and shown < bounds[0] - HAIR
    is_high = bounds[1] is not None and shown > bounds[1] + HAIR
    asked = _asked(limit, own, amount, shown, units)
    if asked:
        is_low, is_high = amount < limit["plausible"][0], amount > limit["plausible"][1]
    rows = _in_time(earlier)[-MOST_EARLIER:]
    return {
        "amount": amount, "is_good": None if limit["kind"] == "target" and not asked else not (is_low or is_high), "asked": asked,
        "side": "low" if is_low else "high" if is_high else None,
        "whose": _whose(limit, own),
        "earlier": [{"at_ms": at_ms, "text": _text(units, quantity, past)} for at_ms, past in rows],
        "trend": _trend([past for _, past in rows] + [amount], low, high),
    }


def _asked(limit, own, amount, shown, units):
    """What is asked of a reading past the plausible, or None: a point left out or put in by mistake first (common practice)."""
    plausible = limit.get("plausible")
    in_force = [value for value in _in_force(limit, own) if value is not None]
    if not plausible or min(plausible[0], min(in_force)) <= amount <= max(plausible[1], max(in_force)):
        return None
    ends = _ends(limit, own)
    quantity = limit["quantity"]
    here = display.scale(units, units["shown"], quantity) if quantity else {"factor": 1}
    moved = [shown * factor for factor in SHIFTS]
    amounts = [display.inside(here, figure) for figure in moved]
    best = [place for place in range(len(amounts)) if plausible[0] <= amounts[place] <= plausible[1]]
    good = [place for place in best if (ends[0] is None or amounts[place] >= ends[0]) and (ends[1] is None or amounts[place] <= ends[1])]
    chosen = (good or best or [None])[0]
    return {
        "meant": None if chosen is None else display.plain(units, moved[chosen], 2),
        "least": _limit_text(units, quantity, plausible[0], -1), "most": _limit_text(units, quantity, plausible[1], 1),
    }


def course(limit, own, earlier):
    """Where readings went, without a new one.

    limit, own, earlier: as for judged

    Returns `{"side", "trend", "amounts"}`: the newest against the limit as it stands, low, high or None; the trend; and the last
    readings, oldest first. Raises CalcError naming limit. Source: common practice (three in a row make a trend).
    """
    if limit["kind"] not in KINDS:
        raise CalcError("limit", "unknown")
    low, high = _ends(limit, own)
    amounts = [amount for _, amount in _in_time(earlier)[-MOST_EARLIER:]]
    is_low = bool(amounts) and low is not None and amounts[-1] < low - HAIR
    is_high = bool(amounts) and high is not None and amounts[-1] > high + HAIR
    return {"side": "low" if is_low else "high" if is_high else None, "trend": _trend(amounts, low, high), "amounts": amounts}


def shown(limit, own, units):
    """A limit as texts in the page's unit.

    limit, own, units: as for judged

    Returns `{"kind", "value", "to", "whose"}`; to is None but for a range. Raises CalcError naming limit or units.
    """
    value, to = _in_force(limit, own)
    side = {"max": 1, "target": 0}.get(limit["kind"], -1)
    return {
        "kind": limit["kind"], "value": _limit_text(units, limit["quantity"], value, side),
        "to": None if to is None or limit["kind"] != "range" else _limit_text(units, limit["quantity"], to, 1), "whose": _whose(limit, own),
    }


def _text(units, quantity, amount):
    return display.figure(units, quantity, amount) if quantity else display.plain(units, amount, 2)


def _limit_text(units, quantity, amount, side):
    """A limit as text, rounded inward: side -1 for the least, 1 for the most, 0 for what is only aimed at."""
    return display.limit(units, quantity, amount, side) if quantity and side else _text(units, quantity, amount)


def _bound(units, quantity, amount, side):
    """A bound as the page shows it: what is typed is held to the figure that stands beside it."""
    if amount is None:
        return None
    if not quantity:
        return amount
    return entry.number("limit", _limit_text(units, quantity, amount, side), quantity, display.decimal(units))


def _in_time(earlier):
    """When and what was read, oldest first."""
    return ordered([(row["at_ms"], row["amount"]) for row in earlier])


def _trend(amounts, low, high):
    """toward: each of the last three nearer the limit than the one before; away: each farther; level else; None for fewer."""
    if len(amounts) < TREND or (low is None and high is None):
        return None
    rooms = [min([bound for bound in (amount - low if low is not None else None, high - amount if high is not None else None) if bound is not None])
             for amount in amounts[-TREND:]]
    steps = [rooms[place + 1] - rooms[place] for place in range(TREND - 1)]
    if all([step < 0 for step in steps]):
        return "toward"
    return "away" if all([step > 0 for step in steps]) else "level"


def _in_force(limit, own):
    """The value of a limit, and of a range its other end: what was set for the rig, else the limit's own."""
    return (own["value"], own["to"]) if own else (limit["value"], limit["to"])


def _ends(limit, own):
    """Below what a reading is low and above what it is high, each None where nothing is."""
    value, to = _in_force(limit, own)
    return value if limit["kind"] in ("min", "range") else None, {"max": value, "range": to}.get(limit["kind"])


def _whose(limit, own):
    return "rig" if own else limit.get("whose", "list")
