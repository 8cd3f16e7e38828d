"""When a question of the drill comes back: the Leitner rule, boxes by how often it was right in a row.

Right goes one box on and waits twice as long, wrong goes to the first and comes back at the next sitting. A scheduler that is kept
elsewhere and fits each person's forgetting wants a history of hundreds of answers and tens of kilobytes to be better than that; a
trainee has five questions an evening, and can say this rule aloud.
"""
from calc.base.errors import CalcError, check_within
from calc.teaching.dice import Dice

DAYS = (0, 1, 2, 4, 8, 16, 32)  # that a question waits, by its box
SITTING = 5
MOST_SEED = 1000000
_NEVER_DAY = 10 ** 6
_DAY_MS = 86400000


def day_of(on_ms, offset_min):
    """The day of the phone's own calendar, counted from 1970.

    on_ms: now, milliseconds since 1970
    offset_min: minutes that the place's clock is ahead of UTC

    Raises CalcError naming day. Source: the Gregorian calendar.
    """
    day = (on_ms + offset_min * 60000) // _DAY_MS
    check_within("day", day, 0, _NEVER_DAY)
    return int(day)


def _is_sound(row):
    return isinstance(row, dict) and all([isinstance(row.get(name), int) for name in ("box", "due")]) and 0 <= row["box"] < len(DAYS)


def is_due(row, day):
    """Whether a question that was asked before is due.

    row: {"box", "due"}, its box from 0 and the day it is due
    day: today, in whole days of the phone's own calendar

    A clock that was set back keeps nothing waiting longer than its box does. Raises nothing.
    """
    return row["due"] <= day or row["due"] - day > DAYS[row["box"]]


def after(row, is_right, day):
    """Where a question goes once it is answered.

    row: {"box", "due"} of it, or None where it was never asked
    is_right: whether it was answered right
    day: today, as for is_due

    Returns {"box", "due"}. Raises CalcError naming day.
    """
    check_within("day", day, 0, _NEVER_DAY)
    box = min(row["box"] + 1 if _is_sound(row) else 1, len(DAYS) - 1) if is_right else 0
    return {"box": box, "due": int(day) + DAYS[box]}


def sitting(cards, boxes, day, seed):
    """The questions of one sitting: what is due, the least known first; then what was never asked, a kind each; then what is due soonest.

    cards: names of all there are, "kind" or "kind:which"
    boxes: {"box", "due"} of those asked before, by name; others' and damaged rows are passed over
    day: today, as for is_due
    seed: whole number; mixes what is alike

    Returns up to five names. Raises CalcError naming day or cards.
    """
    check_within("day", day, 0, _NEVER_DAY)
    if not cards:
        raise CalcError("cards", "empty")
    due, fresh, waiting = [], [], []
    for place, card in enumerate(Dice(seed).mixed(cards)):
        row = boxes.get(card)
        if not _is_sound(row):
            fresh.append(card)
        elif is_due(row, day):
            due.append((row["box"], row["due"], place, card))
        else:
            waiting.append((row["due"], place, card))
    chosen = [row[-1] for row in sorted(due)][:SITTING]
    kinds = [card.split(":")[0] for card in chosen]
    for may_repeat in (False, True):
        for card in fresh:
            kind = card.split(":")[0]
            if len(chosen) < SITTING and card not in chosen and (may_repeat or kind not in kinds):
                chosen.append(card)
                kinds.append(kind)
    return (chosen + [row[-1] for row in sorted(waiting)])[:SITTING]


def standing(cards, boxes, day):
    """What was asked before, by kind, the least known first, with the days until it comes back.

    cards, boxes, day: as for sitting

    Returns a list of {"kind", "box", "days"}: of the kind's least known question, days 0 where it is due. Raises CalcError naming day.
    """
    check_within("day", day, 0, _NEVER_DAY)
    asked = [(boxes[card]["box"], 0 if is_due(boxes[card], day) else boxes[card]["due"] - day, card.split(":")[0])
             for card in cards if _is_sound(boxes.get(card))]
    rows = []
    for box, days, kind in sorted(asked):
        if kind not in [row["kind"] for row in rows]:
            rows.append({"kind": kind, "box": box, "days": int(days)})
    return rows
