"""Which look comes next: what tells most, at what cost, and what the leading cause still has open. Small bases, by hand.

Classes weigh 4, 2 and 1, what is not in the base 1. A sign is seen in nine of ten where its cause is at work, in half where it
may, in three of a hundred else, and in a fifth of what is not in the base.
"""
import re

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import fault
from site_src.content import data


def base(causes, excludes=(), **changed):
    """A base of causes, {name: (likelihood, "signs it shows", "signs it may show")}; signs are a glance at idle, but for what is changed."""
    causes = [{"id": name, "likelihood": likelihood, "shows": shows.split(), "may": may.split()}
              for name, (likelihood, shows, may) in causes.items()]
    names = list(changed) + [sign for cause in causes for sign in cause["shows"] + cause["may"]]
    glance = {"role": "operator", "engine": ["idle"], "effort": 1, "danger": 0}
    signs = [{"id": name, **glance, **changed.get(name, {})} for name in dict.fromkeys(names)]
    return {"signs": signs, "causes": causes, "excludes": list(excludes), "facts": {}}


def next_check(run, knowledge, signs=None, role="operator", engine="idle"):
    return run("diagnosis.fault", "next_check", knowledge=knowledge, signs=signs or {}, role=role, engine=engine, questions=0)


TWO = {"one": ("common", "left", ""), "other": ("common", "right", "")}
FOUR = {"a": ("common", "own half", ""), "b": ("common", "b half", ""), "c": ("common", "c", ""), "d": ("common", "d", "")}


@pytest.mark.parametrize(
    ("knowledge", "sign"),
    [
        # no cause leads: shares are 4/9 and 4/9. Two looks that tell the same: the first named, at the same cost
        (base(TWO, left={}), "left"),
        (base(TWO, right={}), "right"),
        (base(TWO, left={"effort": 2}), "right"),
        (base(TWO, left={"danger": 1}), "right"),
        # what every other cause is in doubt about tells less
        (base(TWO, left={"either": True}), "right"),
        (base({**TWO, "other": ("common", "right", "left")}, left={}), "right"),
        # by hand, from the definition of information: of four causes of 4/17, a look that halves them tells 0.638 bits, one that
        # is a single cause's 0.513; a step of effort costs 0.06, a step of danger 0.15
        (base(FOUR, own={}), "half"),
        (base(FOUR, own={}, half={"effort": 2}), "half"),
        (base(FOUR, own={}, half={"effort": 3}), "half"),
        (base(FOUR, own={}, half={"danger": 1}), "own"),
        # beside 4 and 4 a sign of a rare cause tells 0.294 bits, one of a common cause 0.611: two steps of danger cost 0.30
        (base({**TWO, "rare": ("rare", "last", "")}, last={}, left={"danger": 2}, right={"danger": 3}), "left"),
        (base({**TWO, "rare": ("rare", "last", "")}, last={}, left={"danger": 2, "effort": 2}, right={"danger": 3}), "last"),
        # a sign that all three show tells only whether it is something else, 0.131 bits; one of a single cause 0.575
        (base({name: ("common", f"all {name}", "") for name in ("one", "two", "three")}, all={}), "one"),
    ],
)
def test_what_tells_most_for_its_cost(run, knowledge, sign):
    """Without a cause that leads, the look that tells most comes first, less what effort and danger cost."""
    assert next_check(run, knowledge)["sign"] == sign


@pytest.mark.parametrize(
    ("causes", "changed", "sign"),
    [
        # 4 of 6: it leads, and its own signs come first, however dear, wherever they stand
        ({"one": ("common", "left", ""), "rare": ("rare", "right", "")}, {"right": {}, "left": {"effort": 3, "danger": 2}}, "left"),
        ({"one": ("common", "left", ""), "rare": ("rare", "right", "")}, {"left": {"effort": 3, "danger": 2}, "right": {}}, "left"),
        # of its own two the cheaper, wherever it stands
        ({"one": ("common", "dear left", ""), "rare": ("rare", "right", "")}, {"right": {}, "dear": {"effort": 3}}, "left"),
        ({"one": ("common", "left dear", ""), "rare": ("rare", "right", "")}, {"right": {}, "left": {}, "dear": {"effort": 3}}, "left"),
        # 4 of 8 is just enough to lead
        ({"one": ("common", "left", ""), "two": ("occasional", "right", ""), "rare": ("rare", "last", "")},
         {"right": {}, "left": {"effort": 3, "danger": 2}}, "left"),
        # 4 of 9 is not
        ({"one": ("common", "left", ""), "two": ("occasional", "right", ""), "three": ("occasional", "last", "")},
         {"right": {}, "left": {"effort": 3, "danger": 2}}, "right"),
    ],
)
def test_the_leading_cause_is_followed(run, causes, changed, sign):
    """From half of all shares on, what is still open of the leading cause comes first."""
    assert next_check(run, base(causes, **changed))["sign"] == sign


def test_causes_ruled_out_no_longer_count(run):
    """By hand: of four causes left of twelve, halves tell 0.643 bits and three against one 0.510; two steps of effort cost 0.12."""
    out = {f"out{count}": ("common", f"gone out{count}", "") for count in range(8)}
    causes = {"a": ("common", "a half three", ""), "b": ("common", "b half three", ""), "c": ("common", "c three", ""), "d": ("common", "d", "")}
    told = next_check(run, base({**out, **causes}, three={}, half={"effort": 3}), {"gone": "not_seen"})
    assert (told["sign"], told["left"]) == ("half", ["a", "b", "c", "d"])


@pytest.mark.parametrize(
    ("changed", "signs", "engine", "kind", "sign"),
    [
        # a sign that only a report tells of is nobody's to look for
        ({"left": {"engine": [], "role": "technician"}}, {}, "idle", "maker", None),
        ({"left": {"role": "technician"}}, {}, "idle", "technician", None),
        # one that is asked only after another waits for that one to be seen
        ({"left": {"after": ["first"]}}, {}, "idle", "maker", None),
        ({"left": {"after": ["first"]}}, {"first": "not_seen"}, "idle", "maker", None),
        ({"left": {"after": ["first"]}}, {"first": "seen"}, "idle", "check", "left"),
        # one that has no answer beside another is not asked once that is seen
        ({"left": {"unless": ["first"]}}, {"first": "seen"}, "idle", "maker", None),
        ({"left": {"unless": ["first"]}}, {"first": "not_seen"}, "idle", "check", "left"),
        # with the engine secured one may look as with the engine off, but not as with it running
        ({"left": {"engine": ["off"]}}, {}, "secured", "check", "left"),
        ({"left": {"engine": ["off"]}}, {}, "idle", "engine", None),
        ({"left": {"engine": ["idle"]}}, {}, "secured", "engine", None),
    ],
)
def test_what_may_be_looked_for(run, changed, signs, engine, kind, sign):
    """Only what can be seen now, by this person, is asked."""
    told = next_check(run, base({"one": ("common", "left", "first")}, **changed), signs, engine=engine)
    assert (told["kind"], told["sign"]) == (kind, sign)


def test_what_speaks_for_a_cause(run):
    """By hand: common 4 x 0.9 x 0.5, occasional 2 x 0.03 x 0.5, other 0.2 x 0.2; a sign that tells nothing of a cause is not against it."""
    knowledge = base({"one": ("common", "left open", "now"), "two": ("occasional", "right", "")}, now={"either": True})
    ranked = run("diagnosis.fault", "rank", knowledge=knowledge, signs={"left": "seen", "now": "seen", "open": "unknown"})
    total = 1.8 + 0.03 + 0.04
    assert ranked["causes"] == [
        {"id": "one", "share": pytest.approx(1.8 / total), "for": ["left", "now"], "against": [], "open": ["open"], "unsure": ["open"], "unasked": []},
        {"id": "two", "share": pytest.approx(0.03 / total), "for": [], "against": ["left"], "open": ["right"], "unsure": [], "unasked": ["right"]},
    ]
    assert ranked["other"] == pytest.approx(0.04 / total)
    assert (ranked["alarms"], ranked["clashes"]) == ([], [])


@pytest.mark.parametrize(
    ("fork", "signs", "questions", "kind", "sign"),
    [
        ({}, {}, 0, "check", "fork"),
        ({}, {}, 5, "check", "fork"),
        ({}, {}, 6, "stands", None),
        # not by a look that can hurt, that wants the engine otherwise, or that somebody else makes
        ({"danger": 1}, {}, 0, "stands", None),
        ({"engine": ["off"]}, {}, 0, "stands", None),
        ({"role": "technician"}, {}, 0, "stands", None),
        # nobody could tell: it stands by its own signs; it is not there: something speaks against the cause
        ({}, {"fork": "unknown"}, 1, "stands", None),
        ({}, {"fork": "seen"}, 1, "stands", None),
        ({}, {"fork": "not_seen"}, 1, "unlisted", None),
    ],
)
def test_what_stands_is_checked_by_what_it_brings(run, fork, signs, questions, kind, sign):
    """A cause with all of its signs seen, 3.6 to 0.2 by hand, stands once what it brings along was looked at, where that can be done now."""
    knowledge = base({"one": ("common", "left", "")}, fork=fork)
    knowledge["causes"][0]["brings"] = ["fork"]
    told = run("diagnosis.fault", "next_check", knowledge=knowledge, signs={"left": "seen", **signs}, role="operator", engine="idle", questions=questions)
    assert (told["kind"], told["sign"], told["cause"]) == (kind, sign, "one" if kind == "stands" else None)


def test_who_may_check_what_it_brings(run):
    """A technician is asked for a technician's fork; once seen it speaks for the cause."""
    knowledge = base({"one": ("common", "left", "")}, fork={"role": "technician"})
    knowledge["causes"][0]["brings"] = ["fork"]
    assert next_check(run, knowledge, {"left": "seen"}, role="technician")["sign"] == "fork"
    [one] = run("diagnosis.fault", "rank", knowledge=knowledge, signs={"left": "seen", "fork": "seen"})["causes"]
    assert one["for"] == ["left", "fork"]


@pytest.mark.parametrize(("shares", "other", "followed"), [
    ({"a": (0.5, ["x"]), "b": (0.3, []), "c": (0.1, ["x"])}, 0.1, ["a", "b"]),  # likelier than the best that fits whole
    ({"b": (0.5, []), "a": (0.3, ["x"])}, 0.2, ["b"]),
    ({"a": (0.45, ["x"]), "b": (0.2, ["x"])}, 0.35, ["a"]),  # nothing fits whole: likelier than what is not listed
    ({"a": (0.4, ["x"]), "b": (0.3, ["x"])}, 0.2, ["a", "b"]),
])
def test_a_cause_in_doubt_is_followed(run, shares, other, followed):
    """One answer against a cause does not strike it out while it still fits better than the rest."""
    ranked = {"causes": [{"id": name, "share": share, "against": against} for name, (share, against) in shares.items()], "other": other}
    assert [cause["id"] for cause in run("diagnosis.fault", "followed", ranked=ranked)] == followed


def test_a_cause_in_doubt_has_its_look(run):
    """By hand 4 x 0.9 x 0.9 x 0.1 to 0.2 x 0.2 x 0.8: nothing fits whole, and what is open of the cause that all but does is looked at."""
    told = next_check(run, base({"one": ("common", "a b c open", "")}), {"a": "seen", "b": "seen", "c": "not_seen"})
    assert (told["kind"], told["sign"], told["left"]) == ("check", "open", [])


def test_a_cause_among_others_is_not_cross_checked(run):
    """By hand, 3.6 and 3.6 to 0.2: neither is sure, so of two looks that tell the same the first comes, not what one of them brings along."""
    knowledge = base({"one": ("common", "left", ""), "two": ("common", "left right", "")}, right={}, fork={})
    knowledge["causes"][0]["brings"] = ["fork"]
    assert next_check(run, knowledge, {"left": "seen"})["sign"] == "right"


@pytest.mark.parametrize(("signs", "kind"), [({"left": "unknown"}, "enough"), ({"left": "not_seen", "right": "not_seen"}, "unlisted")])
def test_after_eight_questions(run, signs, kind):
    """What is still possible is named; where nothing is, no fault that is listed fits."""
    assert run("diagnosis.fault", "next_check", knowledge=base(TWO), signs=signs, role="operator", engine="idle", questions=8)["kind"] == kind


@pytest.mark.parametrize(("signs", "kind", "sign"), [
    ({}, "check", "fork"), ({"fork": "seen"}, "check", "cured"), ({"cured": "seen"}, "stands", None)])
def test_what_it_brings_is_looked_at_before_a_cure(run, signs, kind, sign):
    """What was wrong is no longer to be seen once it is put right: the fork comes before the cure, or not at all."""
    knowledge = base({"one": ("common", "left cured", "")}, fork={}, cured={"cures": True})
    knowledge["causes"][0]["brings"] = ["fork"]
    told = run("diagnosis.fault", "next_check", knowledge=knowledge, signs={"left": "seen", **signs}, role="operator", engine="idle", questions=0)
    assert (told["kind"], told["sign"]) == (kind, sign)


@pytest.mark.parametrize(("left", "right", "clashes"), [
    ("seen", "seen", True), ("seen", "not_seen", False), ("not_seen", "not_seen", False), ("unknown", "unknown", False), ("seen", "unknown", False)])
def test_signs_that_cannot_stand_together(run, left, right, clashes):
    """Two signs that exclude each other are a contradiction once both are seen, though a cause could show each."""
    knowledge = base({"one": ("common", "last", "left right")}, excludes=[["left", "right"]])
    signs = {"left": left, "right": right}
    assert run("diagnosis.fault", "rank", knowledge=knowledge, signs=signs)["clashes"] == ([["left", "right"]] if clashes else [])
    assert (next_check(run, knowledge, signs)["kind"] == "contradiction") == clashes


def test_equal_shares_keep_the_order_of_the_base(run):
    """Causes that weigh the same stand in the order of the base."""
    names = ["b", "a", "d", "c"]
    ranked = run("diagnosis.fault", "rank", knowledge=base({name: ("rare", f"{name}1 {name}2", "") for name in names}), signs={})
    assert [cause["id"] for cause in ranked["causes"]] == names


@pytest.mark.parametrize(("signs", "code", "sign"), [
    ({"x" * 61: "seen"}, "unknown_sign", "x" * 60), ({"left": "maybe"}, "unknown_answer", "left")])
def test_refused_sign_is_named(run, signs, code, sign):
    """A refusal names the sign, no longer than sixty letters."""
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.fault", "rank", knowledge=base(TWO), signs=signs)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("signs", code, {"sign": sign})


def test_no_look_shifts_a_rig_out_of_service(run):
    """A look that moves the shift is left out, and what it told before still counts."""
    shifting = run("diagnosis.fault", "without_shifts", knowledge=base(TWO, left={"shifts": True}))
    assert next_check(run, shifting)["sign"] == "right"
    assert next_check(run, shifting, {"right": "not_seen"})["kind"] == "maker"
    assert next_check(run, shifting, {"left": "seen", "right": "not_seen"})["kind"] == "stands"


@pytest.mark.parametrize("language", data.languages())
def test_every_look_that_says_to_shift_is_marked(language):
    """Words that send a hand to the pump shift control, or count its stroke, stand only at a look that is marked so."""
    moves = r"PUMP\. Once|then ROAD\. Once|one repeat|same repeat|[Cc]lean (repeat|shift)|whole shift|move of the pump|push it home"
    moves += r"|une seule fois|reprise|répétition|passage complet|mouvement du sélecteur|pousser à fond"
    told = data.load(f"words/{language}/faults")
    for row in data.load("faults")["sign"]:
        if re.search(moves, told["look"].get(row["id"], "")) and row.get("engine") not in ("none", "off"):
            assert row.get("shifts"), (row["id"], told["look"][row["id"]])


def test_a_look_is_asked_once():
    """What was asked and not answered is not asked again, and the rest goes on."""
    assert fault.next_check(base(TWO), {"left": "unknown"}, "operator", "idle", 1)["sign"] == "right"
