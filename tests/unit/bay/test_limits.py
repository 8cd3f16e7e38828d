"""A reading against its limit."""
import pytest

from calc.base.errors import CalcError
from site_src.content import checks, units
from tests.unit.bay.logs import DAY_MS, NOW_MS

US = units.shown_in("US")
VACUUM = {"kind": "min", "value": 22, "to": None, "quantity": "vacuum"}
TREAD = {"kind": "min", "value": 4, "to": None, "quantity": None}
VOLTS = {"kind": "range", "value": 13.7, "to": 14.7, "quantity": None}
LOSS = {"kind": "max", "value": 10, "to": None, "quantity": "vacuum"}
AIM = {"kind": "target", "value": 120, "to": None, "quantity": "temperature"}


def judged(run, limit, text, own=None, earlier=(), shown=US):
    rows = [{"at_ms": NOW_MS + count * DAY_MS, "amount": amount} for count, amount in enumerate(earlier)]
    return run("bay.limits", "judged", limit=limit, text=text, own=own, earlier=rows, units=shown)


@pytest.mark.parametrize(("limit", "text", "is_good", "side"), [
    (VACUUM, "22@US", True, None), (VACUUM, "21.9@US", False, "low"),
    (LOSS, "10@US", True, None), (LOSS, "10.1@US", False, "high"),
    (TREAD, "4", True, None), (TREAD, "3.9", False, "low"),
    (VOLTS, "13.7", True, None), (VOLTS, "13.6", False, "low"), (VOLTS, "14.7", True, None), (VOLTS, "14.8", False, "high"),
    (AIM, "140@US", None, None),
])
def test_both_sides(run, limit, text, is_good, side):
    """The limit itself is good; a target is only aimed at."""
    answer = judged(run, limit, text)
    assert (answer["is_good"], answer["side"], answer["whose"]) == (is_good, side, "list")


REST = {"kind": "min", "value": 12.4, "to": None, "quantity": None, "plausible": [6, 32]}
CUT_OUT = {"kind": "range", "value": 110, "to": 140, "quantity": "pressure", "plausible": [60, 200]}


@pytest.mark.parametrize(("limit", "text", "meant", "side"), [
    (REST, "126", "12.6", "high"), (REST, "1.26", "12.6", "low"), (REST, "99999", None, "high"), (REST, "0", None, "low"),
    (CUT_OUT, "1200@US", "120", "high"), (CUT_OUT, "12@US", "120", "low"),
])
def test_past_the_plausible_is_asked(run, limit, text, meant, side):
    """12.6 V without its point is 126: asked, with what was meant (by hand), and not good however often it is said."""
    answer = judged(run, limit, text)
    assert (answer["asked"]["meant"], answer["side"], answer["is_good"]) == (meant, side, False)
    assert judged(run, limit, "13" if limit is REST else "130@US")["asked"] is None


def test_a_rig_of_24_volts_is_not_asked(run):
    """24.8 V at rest (common practice) is plausible, and 40 is where the rig itself wants 40."""
    assert judged(run, REST, "24.8")["asked"] is None
    assert judged(run, REST, "40", {"value": 40, "to": None, "whose": "plate"})["is_good"] is True


@pytest.mark.parametrize("row", [row for row in checks.rows() if row["limit"]], ids=lambda row: row["id"])
def test_every_reading_has_a_plausible_range(row):
    """The limit lies inside it, so that what is good is never asked."""
    least, most = row["limit"]["plausible"]
    assert all(least <= end <= most for end in (row["limit"]["value"], row["limit"]["to"]) if end is not None)
    assert least < most


def test_the_rigs_own(run):
    """The rig's own limit goes before the list's, and says so."""
    own = {"value": 20, "to": None, "whose": "plate at the panel"}
    answer = judged(run, VACUUM, "20@US", own)
    assert (answer["is_good"], answer["whose"]) == (True, "rig")
    assert judged(run, VACUUM, "19.5@US", own)["is_good"] is False


def test_metric(run):
    """22 inHg is 74.5 kPa (1 inHg is 3.386 kPa), shown as 75: 75 is good, 74 is not."""
    metric = units.shown_in("SI")
    assert run("bay.limits", "shown", limit=VACUUM, own=None, units=metric)["value"] == "75"
    assert judged(run, VACUUM, "75@SI", shown=metric)["is_good"] is True
    assert judged(run, VACUUM, "74@SI", shown=metric)["is_good"] is False


@pytest.mark.parametrize(("limit", "shown"), [
    (VACUUM, ("min", "22", None)), (VOLTS, ("range", "13.7", "14.7")), (AIM, ("target", "120", None)),
])
def test_shown(run, limit, shown):
    answer = run("bay.limits", "shown", limit=limit, own=None, units=US)
    assert (answer["kind"], answer["value"], answer["to"]) == shown


@pytest.mark.parametrize(("earlier", "text", "trend"), [
    ((26, 25), "24", "toward"), ((23, 24), "25", "away"), ((25, 24), "24.5", "level"), ((25,), "24", None), ((22, 26, 25), "24", "toward"),
])
def test_trend(run, earlier, text, trend):
    """Three readings in a row, each nearer the limit than the one before, are a trend."""
    answer = judged(run, VACUUM, text + "@US", earlier=earlier)
    assert answer["trend"] == trend
    assert [row["text"] for row in answer["earlier"]] == [str(amount) for amount in earlier]


ZERO = {"kind": "range", "value": -10, "to": 10, "quantity": "pressure"}


@pytest.mark.parametrize(("limit", "text", "code"), [
    (LOSS, "-2@US", "negative"), (TREAD, "-1", "negative"), ({**LOSS, "quantity": "pressure"}, "-0.1@US", "negative"),
    (VACUUM, "32@US", "out_of_range"),  # the air presses 29.92 inHg (standard atmosphere)
    (ZERO, "-2@US", None), ({**ZERO, "value": 0, "quantity": None}, "-2", None),  # a foam rate may be under what was set
    (AIM, "-10@US", None), (LOSS, "0@US", None), (VACUUM, "29.9@US", None),
])
def test_what_cannot_be_read(run, limit, text, code):
    """No gauge loses less than nothing; one that is off its zero may read below it."""
    if code is None:
        assert judged(run, limit, text)["amount"] is not None
        return
    with pytest.raises(CalcError) as refusal:
        judged(run, limit, text)
    assert (refusal.value.field, refusal.value.code) == ("reading", code)


@pytest.mark.parametrize("text", ["", "much", "1e9"])
def test_no_reading(run, text):
    with pytest.raises(CalcError) as refusal:
        judged(run, VACUUM, text)
    assert refusal.value.field == "reading"


@pytest.mark.parametrize(("limit", "own", "amounts", "side", "trend"), [
    (VACUUM, None, [], None, None), (VACUUM, None, [22], None, None), (VACUUM, None, [21.9], "low", None),
    (VACUUM, None, [25, 24, 23], None, "toward"), (VACUUM, None, [23, 24, 25], None, "away"), (VACUUM, None, [25, 23, 24], None, "level"),
    (VACUUM, {"value": 18, "to": None, "whose": "plate"}, [21], None, None), (LOSS, None, [8, 9, 10.1], "high", "toward"),
    (VOLTS, None, [14.2, 14.5, 14.8], "high", "toward"), (AIM, None, [120, 130, 140], None, None),
    (VOLTS, {"value": 13, "to": None, "whose": "plate"}, [14, 14.2, 14.8], None, "away"),  # an own limit of one side
])
def test_where_readings_went(run, limit, own, amounts, side, trend):
    """The newest against the limit, and three in a row, in whatever order they stand in the log; the last six are given."""
    rows = [{"at_ms": NOW_MS + count * DAY_MS, "amount": amount} for count, amount in enumerate(amounts)]
    answer = run("bay.limits", "course", limit=limit, own=own, earlier=rows[::-1])
    assert (answer["side"], answer["trend"], answer["amounts"]) == (side, trend, amounts)


def test_a_whole_answer(run):
    """By hand in kPa (3.386 to the inHg): 24.5 inHg are 83, 25 are 85; the six last readings are given, oldest first."""
    earlier = (30, 29, 22, 23, 24, 25, 26, 25)
    assert judged(run, VACUUM, "24.5@US", earlier=earlier, shown=units.shown_in("SI")) == {
        "amount": 24.5, "is_good": True, "asked": None, "side": None, "whose": "list", "trend": "toward",
        "earlier": [{"at_ms": NOW_MS + count * DAY_MS, "text": text} for count, text in zip(range(2, 8), ("75", "78", "81", "85", "88", "85"))]}


@pytest.mark.parametrize(("system", "text", "asked"), [
    ("US", "1200@US", {"meant": "120", "least": "60", "most": "200"}),
    ("SI", "8000@SI", {"meant": "800", "least": "414", "most": "1378"}),  # by hand: 60 and 200 psi are 413.7 and 1,379.0 kPa, told inside them
])
def test_what_is_asked_in_the_units_shown(run, system, text, asked):
    assert judged(run, CUT_OUT, text, shown=units.shown_in(system))["asked"] == asked


@pytest.mark.parametrize(("text", "meant"), [("1260", "12.6"), ("0.126", "12.6"), ("6", None), ("32", None), ("32.1", "3.21"), ("0.6", "60")])
def test_a_point_that_slipped_two_places(run, text, meant):
    """One place before two; but what would be good goes before what is only plausible; what stands at an end is not asked."""
    limit = {"32.1": {**REST, "plausible": [1, 32]}, "0.6": {**REST, "value": 50, "plausible": [5, 100]}}.get(text, REST)
    asked = judged(run, limit, text)["asked"]
    assert (asked and asked["meant"]) == meant


@pytest.mark.parametrize(("function", "more"), [("judged", {"text": "5", "units": US}), ("course", {})])
def test_a_limit_of_no_kind(run, function, more):
    with pytest.raises(CalcError) as refusal:
        run.unheld("bay.limits", function, limit={**TREAD, "kind": "about"}, own=None, earlier=[], **more)
    assert (refusal.value.field, refusal.value.code) == ("limit", "unknown")


def test_the_most_vacuum_there_is(run):
    """A day of high pressure: 31 inHg at sea level."""
    assert judged(run, VACUUM, "31@US")["amount"] == 31


@pytest.mark.parametrize(("limit", "own", "system", "answer"), [
    (LOSS, None, "SI", {"kind": "max", "value": "33", "to": None, "whose": "list"}),  # by hand: 33.86 kPa, and no more
    (AIM, None, "SI", {"kind": "target", "value": "48.9", "to": None, "whose": "list"}),  # 120 F, nearest
    (VOLTS, {"value": 13, "to": 14, "whose": "plate"}, "US", {"kind": "range", "value": "13", "to": "14", "whose": "rig"}),
    ({**CUT_OUT, "whose": "department"}, None, "SI", {"kind": "range", "value": "759", "to": "965", "whose": "department"}),  # 758.4 and 965.3 kPa
    ({**TREAD, "to": 9}, None, "US", {"kind": "min", "value": "4", "to": None, "whose": "list"}),  # only a range has another end
])
def test_a_whole_limit_shown(run, limit, own, system, answer):
    """Rounded inward, so that what meets the text meets the limit."""
    assert run("bay.limits", "shown", limit=limit, own=own, units=units.shown_in(system)) == answer


def test_where_seven_readings_went(run):
    rows = [{"at_ms": NOW_MS + count, "amount": 30 - count} for count in range(7)]
    assert run("bay.limits", "course", limit=VACUUM, own=None, earlier=rows)["amounts"] == [29, 28, 27, 26, 25, 24]


@pytest.mark.parametrize(("text", "is_good"), [("33@SI", True), ("34@SI", False)])
def test_the_most_as_it_is_shown(run, text, is_good):
    """By hand: 10 inHg are 33.86 kPa, shown as 33: what is typed is held to the figure that stands beside it."""
    assert judged(run, LOSS, text, shown=units.shown_in("SI"))["is_good"] is is_good


def test_a_trend_toward_the_most(run):
    assert judged(run, LOSS, "9.5@US", earlier=(8, 9))["trend"] == "toward"


def test_a_plain_number_is_shown_to_hundredths(run):
    assert judged(run, TREAD, "5", earlier=(4.128,))["earlier"][0]["text"] == "4.13"


COMMA = {**US, "decimal": ","}
SUB = {"kind": "range", "value": 0, "to": 10, "quantity": "pressure"}  # zero allowed, and less read too


@pytest.mark.parametrize(("text", "shown", "amount"), [("4.5@US", US, 4.5), ("4,5@SI", COMMA, 4.5), ("1,250@US", COMMA, None), ("1,250", US, 1250), ("1.250", US, None)])
def test_a_plain_number_as_typed(run, text, shown, amount):
    """A number without a unit is read by the page's decimal mark, whatever system stands behind it; one that is read two ways is asked."""
    if amount is not None:
        assert judged(run, TREAD, text, shown=shown)["amount"] == amount
        return
    with pytest.raises(CalcError) as refusal:
        judged(run, TREAD, text, shown=shown)
    assert (refusal.value.field, refusal.value.code) == ("reading", "thousands_or_decimals")


@pytest.mark.parametrize("limit", [{**SUB, "kind": "max", "value": 0, "to": None}, {**SUB, "value": 0.5}, {**SUB, "value": 1}])
def test_less_than_nothing(run, limit):
    """Only a range that begins at zero or under it has readings below zero."""
    assert judged(run, SUB, "-1@US")["side"] == "low"
    with pytest.raises(CalcError) as refusal:
        judged(run, limit, "-1@US")
    assert refusal.value.code == "negative"


@pytest.mark.parametrize(("text", "side"), [("75@SI", None), ("74@SI", "low")])
def test_a_bound_by_a_page_with_a_comma(run, text, side):
    """By hand: 22.2 inHg are 75.2 kPa; a page with a decimal comma holds what is typed to the same figure."""
    for shown in (units.shown_in("SI"), {**units.shown_in("SI"), "decimal": ","}):
        assert judged(run, VACUUM, text, shown=shown)["side"] == side


@pytest.mark.parametrize(("text", "low"), [("-7@SI", False), ("-69@SI", True), ("-68@SI", False)])
def test_a_bound_below_zero(run, text, low):
    """By hand: -10 psi are -68.9 kPa, told as -68, the nearest inside."""
    assert (judged(run, ZERO, text, shown=units.shown_in("SI"))["side"] == "low") is low


def test_a_limit_shown_below_zero(run):
    shown = run("bay.limits", "shown", limit=ZERO, own=None, units=units.shown_in("SI"))
    assert (shown["value"], shown["to"]) == ("-68", "68")


def test_a_level_course(run):
    """Three alike go nowhere, and one step that stands is no trend either way."""
    for earlier, text in [((24, 24), "24"), ((25, 24), "24"), ((23, 24), "24"), ((24, 24), "25"), ((24, 24), "23")]:
        assert judged(run, VACUUM, text + "@US", earlier=earlier)["trend"] == "level", earlier


@pytest.mark.parametrize(("amounts", "trend"), [((14.0, 13.9, 13.8), "toward"), ((14.4, 14.5, 14.6), "toward"), ((13.8, 14.0, 14.2), "away"), ((14.6, 14.4, 14.2), "away")])
def test_a_range_has_room_at_both_ends(run, amounts, trend):
    """The nearer end counts."""
    assert judged(run, VOLTS, str(amounts[-1]), earlier=amounts[:-1])["trend"] == trend


WIDE = {"kind": "min", "value": 50, "to": None, "quantity": None, "plausible": [5, 100]}


@pytest.mark.parametrize(("limit", "own", "text", "meant"), [
    (WIDE, None, "0.5", "50"), (WIDE, {"value": 5.5, "to": None, "whose": "plate"}, "0.6", "6"),  # the rig's own limit says what would be good
    ({**WIDE, "kind": "max", "value": 5, "plausible": [1, 60]}, None, "500", "5"), (REST, None, "320", "32"), (REST, None, "0.6", "6"),
    ({**REST, "plausible": [12, 14]}, None, "130", "13"), (REST, None, "126.44", "12.64"),
])
def test_what_was_meant(run, limit, own, text, meant):
    """The figure with its point moved that would be good, its ends included, before one that is only plausible; to hundredths."""
    assert judged(run, limit, text, own)["asked"]["meant"] == meant


@pytest.mark.parametrize(("own", "text"), [(None, "7"), ({"value": 3, "to": None, "whose": "plate"}, "3"), (None, "6")])
def test_what_is_plausible_is_not_asked(run, own, text):
    assert judged(run, REST, text, own)["asked"] is None


def test_the_plausible_is_told_inside_itself(run):
    """By hand: 62 psi are 427.5 kPa, told as 428; a target of 121 F is 49.4 C, the nearest."""
    asked = judged(run, {**CUT_OUT, "plausible": [62, 200]}, "8000@SI", shown=units.shown_in("SI"))["asked"]
    assert asked["least"] == "428"
    assert run("bay.limits", "shown", limit={**AIM, "value": 121}, own=None, units=units.shown_in("SI"))["value"] == "49.4"


def test_a_course_that_ends_at_the_most(run):
    assert run("bay.limits", "course", limit=LOSS, own=None, earlier=[{"at_ms": NOW_MS, "amount": 10}])["side"] is None
