"""The base of faults: whole, said in words, each place and each question as calc takes it."""
import itertools
import re

import pytest

from calc.diagnosis import choice, fault, likelihood
from site_src.content import data, knowledge
from tests.unit.diagnosis.dialogue import BASE, CAUSES, ENTRIES, QUESTIONS, SIGNS

WORDS = data.words("faults")
FILE = data.load("faults")
ROWS = {row["id"]: row for row in FILE["sign"] + FILE["cause"]}
WAYS = ("role", "place", "engine", "effort", "danger", "under", "shifts", "radio", "alarm")
MOST_AT_A_PLACE = 6


def test_base_is_whole():
    """Thirty causes and more, each with its source; every sign is used, said, and can be asked or is reported."""
    assert len(CAUSES) >= 30
    used = {sign for cause in CAUSES.values() for sign in cause["shows"] + cause.get("brings", []) + cause.get("may", [])}
    alarms = {sign for sign in SIGNS if SIGNS[sign].get("alarm")}
    assert used | alarms == set(SIGNS)
    assert {other for sign in SIGNS.values() for other in sign.get("after", []) + sign.get("unless", [])} <= set(SIGNS)
    assert {sign for pair in BASE["excludes"] for sign in pair} <= set(SIGNS)
    for cause in CAUSES.values():
        assert cause["likelihood"] in likelihood.CLASSES and len(set(cause["shows"])) == len(cause["shows"]) >= 2
        named = cause["shows"] + cause.get("brings", []) + cause.get("may", [])
        assert len(set(named)) == len(named), cause["id"]


def test_base_has_its_words():
    """Each sign and cause is said in plain words, a look that can hurt says how, and radio words are there where named.

    Each sign that may be looked for is asked of in a question, with two answers that are nouns and neither of them a yes.
    """
    named = {sign for cause in CAUSES.values() for sign in cause["shows"] + cause.get("brings", [])}
    assert set(WORDS["asks"]) == {sign for sign in named if SIGNS[sign]["engine"]}
    for question, seen, not_seen in WORDS["asks"].values():
        assert question.endswith("?") and seen != not_seen and max(len(seen), len(not_seen)) <= 22
        assert not {seen.split()[0].strip(","), not_seen.split()[0].strip(",")} & {"Yes", "Oui"}
    assert set(WORDS["sees"]) == set(SIGNS)
    assert set(WORDS["name"]) == set(WORDS["act"]) == set(CAUSES)
    assert set(WORDS["look"]) <= set(SIGNS) | set(QUESTIONS)
    assert set(knowledge.cautions()) == {sign for sign in SIGNS if SIGNS[sign]["danger"]}
    assert knowledge.cautions()["screen_fouled"] == data.orders("trapped")["trapped"]["short"]
    assert not set(WORDS["mind"]) & {sign for sign in ROWS if "warns" in ROWS[sign]}
    assert {row["radio"] for row in ROWS.values() if "radio" in row} == set(knowledge.radio_words())
    assert {row["order"] for row in ROWS.values() if "order" in row} <= set(data.orders())
    assert all("order" in ROWS[sign] for sign in SIGNS if SIGNS[sign].get("alarm"))
    assert knowledge.base() == BASE


def test_no_call_outlives_its_cure():
    """Whoever has water again calls for no cover and reports no loss: each cause whose cure is seen to work says what remains (common practice)."""
    cured = {name for name, cause in CAUSES.items() if any(SIGNS[sign].get("cures") for sign in cause["shows"])}
    calls = {cause for cause in cured if ROWS[cause].get("radio") in ("none_yet", "lost")}
    assert calls >= {"tank_valve_short", "source_ran_out"}
    for language in ("en", "fr"):
        assert calls <= set(data.words("faults", language)["remains"]) <= cured


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
    ("tightened_cures", "hiss_at_joint"), ("tank_brings_back", "source_out"), ("relief_set_holds", "relief_off"), ("pressure_mode_holds", "in_speed_mode"),
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


def test_a_place_has_six_signs_at_most():
    """Whatever opens a diagnosis is tapped at one place, and no place has more signs than a screen of keys."""
    places = {}
    for row in FILE["sign"]:
        assert ("entry" in row) == ("at" in row) == ("sense" in row), row["id"]
        if "at" in row:
            places.setdefault(row["at"], []).append(row["id"])
    assert set(places) == set(data.words("diagnose")["at"]) and max(map(len, places.values())) <= MOST_AT_A_PLACE
    assert {row["sense"] for row in FILE["sign"] if "sense" in row} == set(data.words("diagnose")["sense"])


@pytest.mark.parametrize("name", QUESTIONS)
def test_a_question_is_one_look(name):
    """All signs of a question are looked for in one way, belong to no other, and no cause shows two of its answers."""
    answers = QUESTIONS[name]["answers"]
    signs = [sign for answer in answers for sign in answer["seen"]]
    assert len(signs) == len(set(signs)) and len(signs) > 1 and 2 <= len(answers) <= 4
    for way in WAYS:
        assert len({str(ROWS[sign].get(way)) for sign in signs}) == 1, way
    assert not any(set(signs) & {sign for answer in question["answers"] for sign in answer["seen"]} for other, question in QUESTIONS.items() if other != name)
    for cause in CAUSES.values():
        assert len([answer for answer in answers if set(answer["seen"]) & set(cause["shows"] + cause.get("brings", []))]) <= 1, cause["id"]


@pytest.mark.parametrize("language", ["en", "fr"])
def test_a_question_has_its_words(language):
    """Each question and each of its answers is said, by a noun short enough for its key."""
    words = data.words("faults", language)
    assert set(words["question"]) == set(words["said"]) == set(QUESTIONS)
    for name, question in QUESTIONS.items():
        assert set(words["said"][name]) == {answer["id"] for answer in question["answers"]}
        assert max(map(len, words["said"][name].values())) <= 22
    assert not set(QUESTIONS) & set(SIGNS)


def test_directions_are_never_mixed():
    """No question asks of a shift to pump and of one to road at once, and a sign of one side does not speak of the other."""
    for name, question in QUESTIONS.items():
        assert len({ROWS[sign]["way"] for answer in question["answers"] for sign in answer["seen"] if "way" in ROWS[sign]}) <= 1, name
    for sign, sees in WORDS["sees"].items():
        sides = {side.lower() for side in re.findall(r"\b(?:PUMP|ROAD)\b", sees)}
        assert "way" not in ROWS[sign] or sides <= {ROWS[sign]["way"]}, sign


def test_what_did_not_happen_is_not_timed():
    """Once no clunk came, how long the shift takes has no answer and is not asked, in either direction; before that it may be (common practice)."""
    slow = SIGNS["slow_shift"]
    for none in ("no_clunk", "no_clunk_road"):
        assert not choice.is_askable(slow, {none: "seen"})
    assert choice.is_askable(slow, {}) and choice.is_askable(slow, {"no_clunk": "not_seen"})


def test_a_light_that_never_came_has_an_answer():
    """Whoever saw a dark light from the first is not asked what it did after it came: never is one of the answers."""
    for language, never in (("en", "never"), ("fr", "jamais")):
        question, came, other = data.words("faults", language)["asks"]["lamp_went_out"]
        assert never in other and never not in came + question


def test_a_look_that_changes_a_line_is_said_first():
    """Whatever lowers, raises, shuts or opens a crew's line while it is looked for has the words for the radio (common practice)."""
    changes = r"shuts its nozzle|discharge closed|[Ss]hut one line|line to be throttled|Throttle down|Ease the throttle|[Oo]pen (it )?slowly|raise slowly"
    silent = {sign for sign, look in WORDS["look"].items() if sign in ROWS and re.search(changes, look) and "radio" not in ROWS[sign]}
    assert not silent
    assert {sign for sign, look in WORDS["look"].items() if re.search(changes, look)} >= {"relief_late", "same_no_flow", "retarder_off_cures"}
