"""Loss of water from three gauges, and the leak hunt that halves."""
import itertools
import math

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import leak, water_loss
from site_src.content import data, units
from tests.unit.diagnosis import dialogue

FILE = data.load("diagnose/water_loss")
ROWS, PARTS = FILE["row"], FILE["part"]
US = units.shown_in("US")
NAMES = [part["id"] for part in PARTS]
ANSWERS = {gauge: sorted({answer for row in ROWS for answer in row[gauge]}) for gauge in water_loss.GAUGES}


@pytest.mark.parametrize(
    ("seen", "sides"),
    [
        # trade articles: panel right and crew short is the discharge side; speed up, intake at zero is supply
        ({"intake": "steady", "master": "usual", "line": "above"}, ["discharge"]),
        ({"intake": "zero", "master": "low", "line": "with"}, ["supply"]),
        # a gated line reads low before and after: by hand, its valve and hose lose with the square of flow, so at half the master it shows half of its own
        ({"intake": "vacuum", "master": "low", "line": "with"}, ["supply"]),
        ({"intake": "vacuum", "master": "none", "line": "with"}, ["supply"]),
        ({"intake": "steady", "master": "none", "line": "with"}, ["pump"]),
        ({"intake": "zero", "master": "low", "line": "below"}, ["line"]),
        ({"intake": "zero", "master": "none", "line": "below"}, []),  # nothing reads below nothing
        ({"intake": "zero"}, ["discharge", "line", "supply"]),
        ({}, ["discharge", "line", "supply", "pump"]),
    ],
)
def test_side(run, seen, sides):
    """What three gauges say, and what fewer leave open."""
    assert run("diagnosis.water_loss", "side", rows=ROWS, seen=seen)["sides"] == sides


def test_every_picture_is_in_one_row():
    """Whatever the three gauges do, one row says where to go, and only one; but none where a line reads below nothing."""
    for picture in itertools.product(*ANSWERS.values()):
        seen = dict(zip(ANSWERS, picture, strict=True))
        rows = sum(all(seen[gauge] in row[gauge] for gauge in seen) for row in ROWS)
        assert rows == (0 if (seen["master"], seen["line"]) == ("none", "below") else 1)
        assert len(water_loss.side(ROWS, seen)["sides"]) == rows


def test_unknown_gauge(run):
    """A gauge or an answer that is not in the table is refused."""
    for seen in ({"flow": "low"}, {"intake": "blue"}):
        with pytest.raises(CalcError) as refusal:
            run("diagnosis.water_loss", "side", rows=ROWS, seen=seen)
        assert (refusal.value.field, refusal.value.code) == ("seen", "unknown")


def hunted(leaks, role="technician"):
    """Hunt in a pump that loses 9 in a minute, equally through each of its leaks; returns the last answer and the runs."""
    runs = []
    for _ in range(len(PARTS) + 2):
        told = leak.hunt(PARTS, runs, role, US)
        if told["kind"] not in ("first", "shut"):
            return told, runs
        lost = 9 * sum(part not in told["shut"] for part in leaks) / len(leaks)
        runs.append({"shut": told["shut"], "from": "22", "to": str(22 - lost)})
    raise AssertionError("no end")


@pytest.mark.parametrize("part", NAMES)
def test_one_leak_is_found_by_halving(part):
    """A single leak is found, in one minute with nothing shut and no more halvings than the count of parts needs."""
    told, runs = hunted([part])
    assert (told["kind"], told["suspects"], told["also"]) == ("found", [part], [])
    assert len(runs) <= 1 + math.ceil(math.log2(len(PARTS))) + 1  # one more where a half is uneven


def test_two_leaks():
    """Two leaks end in one of them, with the other among those named beside it."""
    for one, other in itertools.combinations(NAMES, 2):
        told, _ = hunted([one, other])
        assert told["kind"] == "found"
        assert told["suspects"][0] in (one, other)
        assert {one, other} <= set(told["suspects"] + told["also"])


def test_operator_shuts_off_only_their_own():
    """An operator is never told to shut off a technician's part, and is told when the rest is a technician's."""
    own = [part["id"] for part in PARTS if part["role"] == "operator"]
    for part in NAMES:
        told, runs = hunted([part], role="operator")
        assert all(set(run["shut"]) <= set(own) for run in runs)
        assert (told["kind"], told["suspects"]) == (("found", [part]) if part in own else ("technician", told["suspects"]))
        assert part in told["suspects"]


@pytest.mark.parametrize(
    ("losses", "kind", "mattered"),
    [
        # by hand: of a loss of 9, no more than 3 is cured, 6 or more unchanged
        ([], "first", []), ([0], "tight", []), ([9], "shut", []), ([9, 3], "shut", [1]), ([9, 6], "shut", []),
        ([9, 6, 1], "shut", [2]),
    ],
)
def test_what_mattered(run, losses, kind, mattered):
    """The runs that changed the loss are kept by number."""
    runs = []
    for lost in losses:
        shut = run("diagnosis.leak", "hunt", parts=PARTS, runs=runs, role="technician", units=US)["shut"]
        runs.append({"shut": shut, "from": "22", "to": str(22 - lost)})
    told = run("diagnosis.leak", "hunt", parts=PARTS, runs=runs, role="technician", units=US)
    assert (told["kind"], told["mattered"], told["losses"]) == (kind, mattered, [str(lost) for lost in losses])


@pytest.mark.parametrize(("lost", "beside"), [("3", False), ("3.1", True), ("5.9", True)])
def test_what_leaks_beside(run, lost, beside):
    """By hand: of a loss of 9 a third is left where the leak was shut off; above that, something else leaks too."""
    first, second = {"shut": [], "from": "9", "to": "0"}, {"shut": NAMES[:2], "from": lost, "to": "0"}
    told = run("diagnosis.leak", "hunt", parts=PARTS, runs=[first, second], role="technician", units=US)
    assert (told["suspects"], told["also"]) == (NAMES[:2], NAMES[2:] if beside else [])


@pytest.mark.parametrize(("count", "half"), [(2, 1), (3, 2), (4, 2), (5, 3), (6, 3)])
def test_half_of_what_could_leak_is_shut(run, count, half):
    """The first half, the greater one of an odd count, is shut off for the next minute."""
    told = run("diagnosis.leak", "hunt", parts=PARTS[:count], runs=[{"shut": [], "from": "22", "to": "13"}], role="technician", units=US)
    assert (told["kind"], told["shut"]) == ("shut", NAMES[:half])


def test_the_run_that_rose_is_named(run):
    """A gauge that rose within its minute is refused with the number of its run; half an inch of vacuum is a reading."""
    runs = [{"shut": [], "from": "0.5", "to": "0"}, {"shut": NAMES[:2], "from": "0.5", "to": "0.6"}]
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.leak", "hunt", parts=PARTS, runs=runs, role="technician", units=US)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("to", "rose", {"run": 1})


@pytest.mark.parametrize(
    ("one_run", "field", "code"),
    [
        ({"shut": [], "from": "20", "to": "22"}, "to", "rose"), ({"shut": [], "from": "", "to": "22"}, "from", "empty"),
        ({"shut": [], "from": "20", "to": "x"}, "to", "not_a_number"),
        # the standard atmosphere at the sea weighs 29.92 inHg: 60 of vacuum cannot be, nor less than none
        ({"shut": [], "from": "60", "to": "20"}, "from", "out_of_range"), ({"shut": [], "from": "-5", "to": "-6"}, "from", "out_of_range"),
        ({"shut": [], "from": "20", "to": "-1"}, "to", "out_of_range"), ({"shut": [], "from": "110@SI", "to": "20"}, "from", "out_of_range"),
    ],
)
def test_refusals(run, one_run, field, code):
    """A reading that cannot be is refused by its name."""
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.leak", "hunt", parts=PARTS, runs=[one_run], role="operator", units=US)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_no_such_role(run):
    """Who is neither operator nor technician is told nothing."""
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.leak", "hunt", parts=PARTS, runs=[], role="chief", units=US)
    assert (refusal.value.field, refusal.value.code) == ("role", "unknown")


@pytest.mark.parametrize("shut", [[], NAMES])
def test_a_run_that_halves_nothing(run, shut):
    """A second minute with nothing shut, or with all of it, says nothing and is refused by its number."""
    runs = [{"shut": [], "from": "22", "to": "12"}, {"shut": shut, "from": "22", "to": "12"}]
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.leak", "hunt", parts=PARTS, runs=runs, role="technician", units=US)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("runs", "halves_nothing", {"run": 1})


def test_vacuum_in_any_unit(run):
    """A kPa gauge and an inHg gauge tell one vacuum, and the bound is told in the page's unit."""
    assert run("diagnosis.leak", "vacuum_inhg", field="from", text="67.73@SI", units=US) == pytest.approx(20, abs=0.01)  # 3.3864 kPa an inch
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.leak", "vacuum_inhg", field="from", text="700", units=units.shown_in("SI"))
    assert (refusal.value.code, refusal.value.facts["most"]) == ("out_of_range", "101")  # 30 x 3.3864 = 101.6


def test_gauges_still_to_be_read(run):
    """What was not read is told in its order, and a gauge that there is none of by its name, no longer than sixty letters."""
    assert run("diagnosis.water_loss", "side", rows=ROWS, seen={"master": "low"})["unread"] == ["intake", "line"]
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.water_loss", "side", rows=ROWS, seen={"x" * 61: "low"})
    assert refusal.value.facts == {"gauge": "x" * 60}


@pytest.mark.parametrize(("gauge", "answer"), [(gauge, answer) for gauge in water_loss.GAUGES for answer in FILE["sees"].get(gauge, {})])
def test_a_gauge_that_was_read_is_not_asked_again(gauge, answer):
    """The diagnosis that goes on from here takes the needle as it was read: its question is settled from the first look on."""
    assert answer in ANSWERS[gauge]
    signs = FILE["sees"][gauge][answer]
    question = {"intake": "intake", "line": "line_gauge"}[gauge]
    members = {sign for each in dialogue.QUESTIONS[question]["answers"] for sign in each["seen"]}
    assert set(signs) == members
    for side in FILE["side"]:
        _, looks, _ = dialogue.talk({side["enters"]: "seen", **signs}, lambda sign: "not_seen", {}, "operator", "pumping")
        assert question not in looks
