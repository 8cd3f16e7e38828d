"""The diagnosis: every cause can be found, no wrong answer makes one up, danger comes first, and it ends."""
import itertools
import random
import re

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import choice, fault, likelihood
from calc.shift import laws
from site_src.content import data, knowledge
from tests.unit.diagnosis.dialogue import BASE, CAUSES, ENTRIES, SIGNS, answers_of, rig_of, talk

WORDS = data.words("faults")
ROWS = {row["id"]: row for row in data.load("faults")["sign"] + data.load("faults")["cause"]}
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
                end, asked = talk({entry: "seen"}, answers_of(cause), rig_of(cause), "technician", engine)
                assert len(asked) <= fault.MOST_QUESTIONS
                assert end["cause"] in (None, name), (name, entry)
                found.add(end["cause"])
        assert name in found, name


def test_no_wrong_answer_ends_in_a_wrong_cause():
    """One answer turned round, whichever it is, never ends in another cause, nor in this one against its own signs."""
    for name, cause in CAUSES.items():
        for entry in [entry for entry in ENTRIES if entry in cause["shows"]]:
            truly = answers_of(cause)
            _, asked = talk({entry: "seen"}, truly, rig_of(cause), "technician", "idle")
            for wrong in asked:
                def answer(sign, wrong=wrong, truly=truly):
                    turned = {"seen": "not_seen", "not_seen": "seen", "unknown": "seen"}
                    return turned[truly(sign)] if sign == wrong else truly(sign)

                end, _ = talk({entry: "seen"}, answer, rig_of(cause), "technician", "idle")
                assert end["cause"] in (None, name), (name, entry, wrong)
                if truly(wrong) != "unknown":
                    assert end["cause"] is None, (name, entry, wrong)


def test_two_causes_differ_by_two_signs():
    """No cause is one sign away from another: it shows two at least that the other cannot."""
    for one, other in itertools.permutations(CAUSES.values(), 2):
        assert len(set(one["shows"]) - set(other["shows"]) - set(other.get("may", []))) >= 2, (other["id"], one["id"])


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

        end, asked = talk({entry: "seen"}, answer, {}, role, engine)
        ends.add(end["kind"])
        assert len(asked) <= fault.MOST_QUESTIONS
        if end["kind"] == "stands":
            cause = CAUSES[end["cause"]]
            seen = [sign for sign in asked if said[sign] == "seen"] + [entry]
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
        end, _ = talk({entry: "seen"}, lambda sign: "not_seen", {}, role, "idle")
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


def test_base_is_whole():
    """Thirty causes and more, each with its source; every sign is used, said, and can be asked or is reported."""
    assert len(CAUSES) >= 30
    used = {sign for cause in CAUSES.values() for sign in cause["shows"] + cause.get("may", [])}
    alarms = {sign for sign in SIGNS if SIGNS[sign].get("alarm")}
    assert used | alarms == set(SIGNS)
    assert {other for sign in SIGNS.values() for other in sign.get("after", [])} <= set(SIGNS)
    assert {sign for pair in BASE["excludes"] for sign in pair} <= set(SIGNS)
    for cause in CAUSES.values():
        assert cause["likelihood"] in likelihood.CLASSES and len(set(cause["shows"])) == len(cause["shows"]) >= 2
        assert not set(cause["shows"]) & set(cause.get("may", []))


def test_base_has_its_words():
    """Each sign and cause is said in plain words, a look that can hurt says how, and radio words are there where named.

    A sign that says something is not so has keys of its own: a bare yes or no could be mistaken there.
    """
    negative = {sign for sign in SIGNS if SIGNS[sign]["engine"] and re.search(r"\b(not|no|never|dark|dead)\b", WORDS["sees"][sign])}
    assert len(negative) > 30 and negative <= set(WORDS["answers"])
    assert set(WORDS["sees"]) == set(SIGNS)
    assert set(WORDS["name"]) == set(WORDS["act"]) == set(CAUSES)
    assert set(WORDS["look"]) <= set(SIGNS)
    assert set(WORDS["mind"]) == {sign for sign in SIGNS if SIGNS[sign]["danger"]}
    assert {row["radio"] for row in ROWS.values() if "radio" in row} == set(knowledge.radio_words())
    assert {row["order"] for row in ROWS.values() if "order" in row} <= set(data.orders())
    assert all("order" in ROWS[sign] for sign in SIGNS if SIGNS[sign].get("alarm"))
    assert knowledge.base() == BASE


@pytest.mark.parametrize(
    ("sign", "engine"),
    [
        ("throttle_made_safe", "idle"),  # "Since then: idle, made safe"
        ("no_vacuum", "idle"), ("vacuum_no_water", "idle"), ("slow_prime", "idle"),  # a pump is primed at idle, see its card
        ("falls_to_idle", "idle"), ("no_pressure", "idle"),  # "drops back to idle"; nothing is raised before pressure shows
        ("hiss_stays", "off"),  # it is listened for with the engine off
        ("pressure_swings", "pumping"), ("water_lost", "pumping"), ("light_dark", "idle"), ("vacuum_falls", "off"),
        ("test_speed_high", "idle"),  # a report, and nothing is known of the engine now
    ],
)
def test_engine_as_the_sign_says(sign, engine):
    """A diagnosis opens with the engine as it must be where its sign was seen."""
    assert knowledge.begins(ROWS[sign]) == engine


def test_no_sign_opens_with_an_engine_it_cannot_be_seen_by():
    """Whatever opens a diagnosis can be seen with the engine as that opens."""
    for sign in ENTRIES:
        assert not SIGNS[sign]["engine"] or knowledge.begins(ROWS[sign]) in SIGNS[sign]["engine"]


@pytest.mark.parametrize(("cure", "found"), [
    ("set_right_cures", "mode_wrong"), ("control_returns", "station_on"), ("steady_when_one_off", "other_controller"),
    ("tightened_cures", "hiss_at_joint"), ("relief_set_holds", "relief_off"), ("pressure_mode_holds", "in_speed_mode"),
])
def test_what_is_wrong_is_found_before_it_is_put_right(cure, found):
    """"With that put right" is asked only once "that" was seen, whatever else is known."""
    [cause] = [cause for cause in CAUSES.values() if {cure, found} <= set(cause["shows"])]
    signs = {sign: "seen" for sign in cause["shows"] if sign not in (cure, found)}
    for role, engine in itertools.product(fault.ROLES, choice.ENGINES):
        for said in ({}, {found: "unknown"}):
            assert fault.next_check(BASE, {**signs, **said}, role, engine, 0)["sign"] != cure
    asked = [fault.next_check(BASE, {**signs, found: "seen"}, "technician", engine, 0)["sign"] for engine in choice.ENGINES]
    assert cure in asked
