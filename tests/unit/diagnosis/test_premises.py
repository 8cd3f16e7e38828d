"""No look rests on what an answer has already ruled out: whatever a crew says truly, each question that follows can be answered."""
import pytest

from calc.diagnosis import fault
from site_src.content import data, knowledge
from tests.unit.diagnosis.dialogue import BASE, CAUSES, ENTRIES, answer_of, answers_of, rig_of, settled, talk

WORDS = data.words("faults")
ROWS = {row["id"]: row for row in data.load("faults")["sign"]}
MOST_TURNS = 14
NO_PUMP_GEAR = {("not_asked", "seen"), ("range_refused", "seen"), ("refused_at_idle", "seen"), ("display_neutral", "seen"), ("other_range", "seen"), ("road_no_drive", "seen")}
AT_DRAFT = {(sign, answer) for sign in ("strainer_fouled", "whirl_seen", "lift_over", "hose_soft") for answer in ("seen", "not_seen")}
SUPPLIED = {("supply_soft", "seen"), ("supply_soft", "not_seen")}
NO_LIGHT = {("light_dark", "seen")}
# What the words of a question take for granted, and the answers that rule it out; unless its nouns have one for that case, named
# last. By what the words say (common practice).
PREMISES = [
    ("In pump gear", NO_PUMP_GEAR, None),
    ("as the gear went in", NO_PUMP_GEAR - {("other_range", "seen"), ("road_no_drive", "seen")}, None),
    ("pump gear been selected", {("range_refused", "seen"), ("note_drops", "seen"), ("note_free", "seen")}, None),
    ("the noise come", {("grinds", "not_seen"), ("clunk_felt", "seen"), ("no_clunk", "seen"), ("light_dark", "seen")}, "No noise"),
    ("over the strainer", SUPPLIED, "or no"),
    ("the light come", NO_LIGHT | {("no_clunk", "seen")}, None),
    ("light do", NO_LIGHT, "never came"),
    ("light do after it came", NO_LIGHT, None),
    ("How long does the shift take", {("no_clunk", "seen"), ("no_clunk_road", "seen")}, None),
    ("With the air built up", {("air_below", "not_seen")}, None),
    ("the same repeat", {("repeat_clunk", "not_seen")}, None),
    ("With that", {("road_repeat_clunk", "not_seen"), ("mode_wrong", "not_seen"), ("station_on", "not_seen")}, None),
    ("the supply hose", AT_DRAFT, "or no"),
    ("does the strainer lie", SUPPLIED, "or no"),
    ("measured lift", SUPPLIED, "or no"),
    ("suction hose inside", SUPPLIED, "or no"),
    ("hear or feel as the pump shift control moved", {("no_clunk_road", "seen"), ("grinds_road", "seen"), ("road_no_drive", "seen"), ("lights_stay", "seen")}, None),
    ("does the primer do", {("ejector_dead", "not_seen")}, None),
    ("prime come", {("no_vacuum", "seen"), ("vacuum_no_water", "seen")}, None),
    ("what does the gear do", {("range_refused", "not_seen")}, None),
    ("what comes back", {("source_out", "not_seen")}, None),
    ("what comes?", {("valve_short", "not_seen")}, None),
]


def nouns_of(look):
    if look["question"]:
        return WORDS["question"][look["question"]], [WORDS["said"][look["question"]][answer] for answer in look["answers"]]
    return WORDS["asks"][look["sign"]][0], WORDS["asks"][look["sign"]][1:]


def ruled_out(look, signs):
    """The premises of a look that an answer contradicts, where no noun of it owns to that."""
    question, nouns = nouns_of(look)
    return [(question, sign) for phrase, denied, way_out in PREMISES if phrase in question
            for sign, answer in denied if signs.get(sign) == answer and not any(way_out and way_out in noun for noun in nouns)]


def walk(cause, entry, role, maybe):
    """The looks that follow true answers, each with what was known as it was asked; `maybe` is said of what the cause can show or not."""
    base, signs, engine, asked = fault.for_rig(BASE, rig_of(cause)), {entry: "seen"}, knowledge.begins(ROWS[entry]), 0
    surely = answers_of(cause)

    def answer(sign):
        return maybe if surely(sign) == "unknown" else surely(sign)

    for _ in range(MOST_TURNS):
        look = fault.next_check(base, signs, role, engine, asked)
        if look["kind"] == "check":
            yield look, signs
            asked += 1
            signs = {**settled(look, answer_of(look, answer)), **signs} if look["question"] else {**signs, look["sign"]: answer(look["sign"])}
        elif look["kind"] == "engine" and look["engine"][0] != engine:
            engine = look["engine"][0]
        else:
            return


@pytest.mark.parametrize("maybe", fault.ANSWERS)
def test_no_premise_contradicts_an_answer(maybe):
    """Each cause in turn is the truth, from each complaint that it brings: no look takes for granted what was said not to be."""
    dead = {each for cause in CAUSES.values() for entry in set(ENTRIES) & set(cause["shows"] + cause.get("may", []))
            for role in fault.ROLES for look, signs in walk(cause, entry, role, maybe) for each in ruled_out(look, signs)}
    assert not dead


def test_a_premise_is_of_the_base():
    """What rules a premise out is an answer that can be given."""
    for _, denied, _ in PREMISES:
        assert {sign for sign, _ in denied} <= set(ROWS) and {answer for _, answer in denied} <= {"seen", "not_seen"}


def test_a_light_that_never_came_did_not_drop_back():
    """Whoever heard one clunk and saw no light says that it never came: the collar that dropped back after the light is ruled out."""
    said = {"light_dark": "seen", "clunk_felt": "seen", "no_clunk": "not_seen", "grinds": "not_seen"}
    never = {cause["id"]: cause for cause in fault.rank(BASE, {**said, "lamp_went_out": "not_seen"})["causes"]}
    assert "lamp_went_out" in never["collar_dropped_back"]["against"]
    assert [noun for noun in WORDS["asks"]["lamp_went_out"][1:] if "never came" in noun] == [WORDS["asks"]["lamp_went_out"][2]]


def test_a_control_that_was_moved_still_tells_how_it_stood():
    """Whoever opened tank-to-pump before answering says how it stood: what a bleeder gives is asked with every valve left alone (common practice)."""
    for language, before, left in (("en", "before", "Leave"), ("fr", "avant", "Laisser")):
        words = data.words("faults", language)
        assert before in words["asks"]["valve_short"][0] and left in words["look"]["bleeder"]


@pytest.mark.parametrize("entry", ["no_pressure", "falls_to_idle"])
def test_pressure_that_comes_from_the_tank_is_never_the_sources_fault_while_it_runs(entry):
    """A dry pump at a source that runs, the valve found shut, pressure once it is open: the valve, with no look in between that speaks against it."""
    there = {entry, "no_pressure", "pump_stays_dry", "intake_near_zero", "valve_short", "valve_cures", "tank_brings_back"}
    end, _, signs = talk({entry: "seen"}, lambda sign: "seen" if sign in there else "not_seen", {}, "operator", "idle")
    assert (end["kind"], end["cause"]) == ("stands", "tank_valve_short")
    assert "tank_brings_back" not in signs  # asked only of a source that ran out
