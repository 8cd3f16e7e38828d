"""The diagnosis: every cause can be found, no wrong answer makes one up, danger comes first, and it ends."""
import itertools
import random

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import choice, fault, likelihood
from calc.shift import laws
from site_src.content import data
from tests.unit.diagnosis.dialogue import BASE, CAUSES, ENTRIES, QUESTIONS, SIGNS, answers_of, look_of, rig_of, talk

EASY = {"signs": [
    {"id": "dark", "role": "operator", "engine": ["idle"], "effort": 1, "danger": 0},
    {"id": "hiss", "role": "operator", "engine": ["off"], "effort": 1, "danger": 0},
    {"id": "bent", "role": "technician", "engine": ["off"], "under": True, "effort": 3, "danger": 0},
    {"id": "moves", "role": "operator", "engine": ["idle"], "effort": 1, "danger": 0, "alarm": True},
], "causes": [
    {"id": "leak", "likelihood": "common", "shows": ["dark", "hiss"]},
    {"id": "fork", "likelihood": "rare", "shows": ["dark", "bent"], "applies": {"drive": ["midship"]}},
], "excludes": [["hiss", "bent"]], "facts": {"light": "dark"}}


def full_set(cause):
    """All that a cause shows is seen, and all that it cannot show is not."""
    return {sign: said for sign in SIGNS for said in [answers_of(cause)(sign)] if said != "unknown"}


def assert_first(ranked, name):
    """The likeliest by far, with nothing against it and none of its signs open."""
    first, second = ranked["causes"][:2]
    assert first["id"] == name and not first["against"] and not first["open"]
    assert first["share"] > 0.99 > second["share"]


def test_full_set_of_signs_ranks_its_cause_first():
    """A cause is the likeliest, with nothing against it, once all of its own signs and no others are seen."""
    for name, cause in CAUSES.items():
        assert_first(fault.rank(BASE, full_set(cause)), name)


@pytest.mark.parametrize("name", list(CAUSES)[::12])
def test_full_set_on_both(run, name):
    """The same on both Pythons, for every twelfth cause."""
    assert_first(run("diagnosis.fault", "rank", knowledge=BASE, signs=full_set(CAUSES[name])), name)


def test_every_cause_is_reached():
    """From one complaint at least, true answers end in each cause, and never in another; none takes more than eight."""
    for name, cause in CAUSES.items():
        found = set()
        for entry in [entry for entry in ENTRIES if entry in cause["shows"] + cause.get("may", [])]:
            for engine in ("idle", "pumping"):
                end, asked, _ = talk({entry: "seen"}, answers_of(cause), rig_of(cause), "technician", engine)
                assert len(asked) <= fault.MOST_QUESTIONS
                assert end["cause"] in (None, name), (name, entry)
                found.add(end["cause"])
        assert name in found, name


def slips(look, truly):
    """Each wrong answer to a look, as what is then said of a sign and the slip in a question."""
    if look not in QUESTIONS:
        yield lambda sign: {"seen": "not_seen", "not_seen": "seen", "unknown": "seen"}[truly(sign)] if sign == look else truly(sign), None
        return
    for answer in QUESTIONS[look]["answers"]:
        if any(truly(sign) != "seen" for sign in answer["seen"]) or not answer["seen"]:
            yield truly, (look, answer["id"])


def test_no_wrong_answer_ends_in_a_wrong_cause():
    """One wrong answer, whichever it is, never ends in another cause, nor in this one against its own signs."""
    for name, cause in CAUSES.items():
        truly = answers_of(cause)
        for entry in [entry for entry in ENTRIES if entry in cause["shows"]]:
            _, asked, signs = talk({entry: "seen"}, truly, rig_of(cause), "technician", "idle")
            for look in asked:
                for said, slip in slips(look, truly):
                    end, _, other = talk({entry: "seen"}, said, rig_of(cause), "technician", "idle", slip)
                    assert end["cause"] in (None, name), (name, entry, look, slip)
                    if any(cause_sign in signs and other.get(cause_sign) == "not_seen" for cause_sign in cause["shows"]):
                        assert end["cause"] is None, (name, entry, look, slip)


# The cause that is one look away from the other, which brings every other sign of it too, and the look that is left
ONE_LOOK = {
    ("switch_stuck", "collar_in_road"): "lamp_on_in_road", ("refused_above_idle", "regeneration_runs"): "takes_at_idle",
    ("pto_too_fast", "regeneration_runs"): "engages_at_idle", ("no_lock_up", "retarder_working"): "ratio_falls",
    ("kink_or_block", "hose_clamped"): "kink_found",
}


def test_two_causes_differ_by_two_looks():
    """No cause is one answer away from another, but for five: it shows two signs at least that the other cannot, by two looks."""
    for one, other in itertools.permutations(CAUSES.values(), 2):
        apart = set(one["shows"]) - {sign for key in ("shows", "may", "brings") for sign in other.get(key, [])}
        if (one["id"], other["id"]) in ONE_LOOK:
            assert apart == {ONE_LOOK[one["id"], other["id"]]}
        else:
            assert len({look_of(sign) for sign in apart}) >= 2, (other["id"], one["id"])


def test_random_dialogues_end():
    """Any answers at all end within eight questions, and a cause that stands has every sign seen and none against it."""
    luck = random.Random(5)
    ends = set()
    for _ in range(300):
        entry = luck.choice(ENTRIES)
        role, engine = luck.choice(fault.ROLES), luck.choice(choice.ENGINES)
        said = {}

        def answer(sign, said=said):
            return said.setdefault(sign, luck.choice(["seen", "not_seen", "not_seen", "unknown"]))

        end, asked, signs = talk({entry: "seen"}, answer, {}, role, engine)
        ends.add(end["kind"])
        assert len(asked) <= fault.MOST_QUESTIONS
        if end["kind"] == "stands":
            cause = CAUSES[end["cause"]]
            seen = [sign for sign in signs if signs[sign] == "seen"]
            assert set(cause["shows"]) <= set(seen) and not [s for s in seen if answers_of(cause)(s) == "not_seen"
                                                             and not SIGNS[s].get("either")]
    assert ends >= {"unlisted", "enough", "technician", "maker"}


def test_what_no_single_fault_shows_is_a_contradiction(run):
    """Two complaints that no cause shows together end at once, whatever was not seen beside them."""
    for beside in ({}, {"oil_metal": "not_seen"}):
        signs = {"tank_overflows": "seen", "oil_milky": "seen", **beside}
        told = run("diagnosis.fault", "next_check", knowledge=BASE, signs=signs, role="technician", engine="off", questions=0)
        assert told["kind"] == "contradiction"


def test_only_no_is_no_contradiction():
    """Whoever answers every look with no has contradicted nothing: it ends where no known fault fits, or in a stop."""
    for entry, role in itertools.product(ENTRIES, fault.ROLES):
        end, _, _ = talk({entry: "seen"}, lambda sign: "not_seen", {}, role, "idle")
        assert end["kind"] in ("unlisted", "technician", "enough", "maker"), entry


@pytest.mark.parametrize("alarm", [sign for sign in SIGNS if SIGNS[sign].get("alarm")])
def test_danger_overrides(run, alarm):
    """A sign of danger ends every dialogue, even one whose cause stands."""
    for signs in ({}, full_set(CAUSES["teeth_meet"])):
        signs = {**signs, alarm: "seen"}
        assert run("diagnosis.fault", "rank", knowledge=BASE, signs=signs)["alarms"] == [alarm]
        end = run("diagnosis.fault", "next_check", knowledge=BASE, signs=signs, role="technician", engine="secured", questions=0)
        assert (end["kind"], end["sign"], end["cause"]) == ("danger", None, None)


@pytest.mark.parametrize("sign", [sign for sign in SIGNS if SIGNS[sign].get("under")])
def test_under_the_rig_only_when_secured(sign):
    """A look under the rig is a technician's, and is never offered while the engine could be started."""
    causes = [cause for cause in BASE["causes"] if sign in cause["shows"]]
    assert SIGNS[sign]["role"] == "technician"
    for cause in causes:
        signs = {other: "seen" for other in cause["shows"] if other != sign}
        for role, engine in itertools.product(fault.ROLES, choice.ENGINES):
            end = fault.next_check(BASE, signs, role, engine, 0)
            assert end["sign"] != sign or (role, engine) == ("technician", "secured")
            assert not end["sign"] or end["sign"] not in signs


def test_looks_suit_who_asks_and_how_the_engine_is():
    """Whatever is offered may be looked for by this role with the engine as it is."""
    for entry, role, engine in itertools.product(ENTRIES, fault.ROLES, choice.ENGINES):
        sign = fault.next_check(BASE, {entry: "seen"}, role, engine, 0)["sign"]
        if sign:
            assert role == "technician" or SIGNS[sign]["role"] == "operator"
            assert engine in SIGNS[sign]["engine"] or (engine == "secured" and "off" in SIGNS[sign]["engine"])


@pytest.mark.parametrize(
    ("signs", "role", "engine", "questions", "kind", "sign", "wanted"),
    [
        ({"dark": "seen"}, "operator", "off", 0, "check", "hiss", []),
        ({"dark": "seen"}, "operator", "idle", 0, "engine", None, ["off"]),
        ({"dark": "seen", "hiss": "not_seen"}, "operator", "off", 1, "technician", None, []),
        ({"dark": "seen", "hiss": "not_seen"}, "technician", "off", 1, "engine", None, ["secured"]),
        ({"dark": "seen", "hiss": "not_seen"}, "technician", "secured", 1, "check", "bent", []),
        ({"dark": "seen", "hiss": "unknown", "bent": "unknown"}, "technician", "secured", 2, "maker", None, []),
        ({"dark": "seen"}, "operator", "off", 8, "enough", None, []),
        ({"hiss": "seen", "bent": "seen"}, "operator", "off", 0, "contradiction", None, []),
        ({"dark": "not_seen"}, "operator", "off", 0, "unlisted", None, []),
        ({"dark": "seen", "hiss": "not_seen", "bent": "not_seen"}, "operator", "off", 0, "unlisted", None, []),
        ({"hiss": "seen", "dark": "not_seen"}, "operator", "off", 0, "unlisted", None, []),
        ({"dark": "seen", "hiss": "seen"}, "operator", "off", 0, "stands", None, []),
    ],
)
def test_how_it_ends(run, signs, role, engine, questions, kind, sign, wanted):
    """A small base, by hand: the look that is open, or what stands in its way."""
    end = run("diagnosis.fault", "next_check", knowledge=EASY, signs=signs, role=role, engine=engine, questions=questions)
    assert (end["kind"], end["sign"], end["engine"]) == (kind, sign, wanted)


def test_shares_by_hand(run):
    """Common 4, rare 1, other 1: a sign both show leaves 3.6 to 0.9 to 0.2; not seeing one's own takes it to a tenth."""
    ranked = run("diagnosis.fault", "rank", knowledge=EASY, signs={"dark": "seen"})
    assert [cause["share"] for cause in ranked["causes"]] == pytest.approx([3.6 / 4.7, 0.9 / 4.7])
    assert ranked["other"] == pytest.approx(0.2 / 4.7)
    ranked = run("diagnosis.fault", "rank", knowledge=EASY, signs={"dark": "seen", "hiss": "not_seen"})
    # by hand: leak 3.6 x 0.1, fork 0.9 x 0.97, other 0.2 x 0.8
    assert [(cause["id"], cause["against"]) for cause in ranked["causes"]] == [("fork", []), ("leak", ["hiss"])]
    assert ranked["causes"][0]["share"] == pytest.approx(0.873 / (0.36 + 0.873 + 0.16))


def test_rig_rules_causes_out(run):
    """What a rig is known to be leaves out what it cannot have; what is not known leaves out nothing."""
    def left(rig):
        return [cause["id"] for cause in run("diagnosis.fault", "for_rig", knowledge=EASY, rig=rig)["causes"]]

    assert left({}) == left({"drive": "midship"}) == ["leak", "fork"]
    assert left({"drive": "pto"}) == ["leak"]


def test_card_enters_with_what_it_knows(run):
    """A fact that stands says its sign is not there; the fact that a step did not prove says it is."""
    entered = run("diagnosis.fault", "entered", knowledge=BASE, facts=["air_up", "kit_on"], missing=["pump_light", "light_answered"])
    assert entered == {"air_below": "not_seen", "light_dark": "seen"}


def test_facts_are_those_of_the_cards():
    """Each fact of the table is proved by some card's step, and speaks of a sign of the base."""
    proved = {fact for card in data.cards() for step in data.sequence(card["id"])["steps"]
              for fact in laws.every_proof(step)}
    assert set(BASE["facts"]) <= proved
    assert set(BASE["facts"].values()) <= set(SIGNS)


@pytest.mark.parametrize(("facts", "missing", "field"), [(3, [], "facts"), ([["air_up"]], [], "facts"), ([], {}, "missing")])
def test_entered_refuses_what_no_card_says(run, facts, missing, field):
    """What is handed over and is no list of facts is refused by name."""
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.fault", "entered", knowledge=BASE, facts=facts, missing=missing)
    assert (refusal.value.field, refusal.value.code) == (field, "damaged")


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"signs": {"odd": "seen"}}, "signs", "unknown_sign"), ({"signs": {"dark": "maybe"}}, "signs", "unknown_answer"),
        ({"signs": {"dark": ["seen"]}}, "signs", "unknown_answer"), ({"signs": []}, "signs", "damaged"), ({"role": "chief"}, "role", "unknown"), ({"engine": "warm"}, "engine", "unknown"),
        ({"questions": -1}, "questions", "not_a_count"), ({"questions": 1.5}, "questions", "not_a_count"),
    ],
)
def test_refusals(run, change, field, code):
    """What cannot be used is refused by field and code."""
    asked = {"knowledge": EASY, "signs": {}, "role": "operator", "engine": "idle", "questions": 0, **change}
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.fault", "next_check", **asked)
    assert (refusal.value.field, refusal.value.code) == (field, code)
