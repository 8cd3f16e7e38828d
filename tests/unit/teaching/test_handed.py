"""A fault planted on one phone and found on another: what the codes carry, and what both read at the end."""
import pytest

from calc.base.errors import CalcError
from calc.teaching import handed, powertrain, sealed
from site_src.content import data, units
from site_src.routes import why
from tests.unit.teaching.test_practice import LIGHTS, PARAMETERS, SOUND_SHIFT, play, through

US = units.shown_in("US")
DEBRIEF = "teaching.debrief"


def found(run, fault="collar_stuck", *steps, how="stopped", named=None, proof=None, salt=99):
    """The code that comes back from a run of such steps."""
    code = run("teaching.handed", "plant", task="to_pump", fault=fault, salt=salt)
    begun = run(DEBRIEF, "begin", code=code, parameters=PARAMETERS, lights=LIGHTS, units=US)["run"]
    ended = play(lambda **given: run("teaching.practice", "advance", **given), begun, *steps, ("end", how))
    return run("teaching.handed", "sent_back", run=ended, named=named, proof=proof, salt=salt)


def debrief(run, code):
    return run(DEBRIEF, "debrief", code=code, models=why.models(), units=US)


@pytest.mark.parametrize("task", ["to_pump", "to_road"])
@pytest.mark.parametrize("fault", [None, *powertrain.FAULT_CODES])
def test_a_plant_begins_its_run(run, task, fault):
    """The run of a code is the run of its task and fault, and nothing that is asked about the code tells the fault."""
    code = run("teaching.handed", "plant", task=task, fault=fault, salt=5)
    assert run(DEBRIEF, "kind", code=code) == {"kind": "plant", "task": task}
    begun = run(DEBRIEF, "begin", code=code, parameters=PARAMETERS, lights=LIGHTS, units=US)["run"]
    assert begun == through(run, task, faults=[fault] if fault else [])
    assert fault is None or fault not in code


def test_what_was_done_beside_what_should_have_been(run):
    """By hand: center after 1 s, pump after 3 s, stopped after 6 s; the model stops at the same sign, the clunk that never came."""
    answer = debrief(run, found(run, "collar_stuck", 1, ("selector", "centre"), 2, ("selector", "pump"), 3, named="collar_stuck"))
    assert [(row["at"], row["to"], row["note"]) for row in answer["done"]] == [
        ("1.0", "centre", None), ("1.0", None, "sound_move"), ("3.0", "pump", None),  # the same note again at once is one
    ]
    assert answer["ended"] == {"how": "stopped", "at": "6.0"}
    assert [(row["to"], row["sign"], row["shows"]) for row in answer["should"]] == [
        (None, "starts_dark", True), ("centre", "silent", True), ("pump", "clunk_pump", False),
    ]
    assert (answer["should_end"]["how"], answer["verdict"]["outcome"], answer["naming"], answer["away"]) == ("stopped", "found", "right", None)


def test_harm_travels(run):
    """A gear before the collar is home is harm on both phones, and its row is marked; the figures of the run are its own."""
    answer = debrief(run, found(run, "collar_stuck", ("selector", "centre"), 2, ("gear", "drive"), 1, how="finished"))
    assert (answer["verdict"]["outcome"], answer["verdict"]["took_s"]) == ("harm", 3)
    assert [row["note"] for row in answer["done"] if row["is_harm"]] == answer["verdict"]["harm"] != []


@pytest.mark.parametrize(
    ("fault", "named", "naming"),
    [("no_air", "no_air", "right"), ("no_air", "selector_stuck", "alike"), ("no_air", "no_water", "other"), ("no_air", "unsure", "unsure"), ("no_air", None, None),
     (None, "no_air", "imagined"), (None, "nothing", "right"), ("no_air", "nothing", "overlooked"), (None, "unsure", "unsure")],
)
def test_what_the_finder_called_it(run, fault, named, naming):
    """A name is right, as good where the signs are the very same, or another."""
    answer = debrief(run, found(run, fault, ("selector", "centre"), 2, named=named))
    assert (answer["named"], answer["naming"]) == (named, naming)
    # a stop for what is not there is luck; to stop in doubt is not (common practice)
    assert fault is None or answer["verdict"]["outcome"] == ("luck" if naming in ("other", "overlooked") else "found")


@pytest.mark.parametrize(
    ("fault", "proof", "outcome"),
    [("no_air", "air", "found"), ("no_air", "engaged", "found"), ("no_air", "gauge", "luck"), ("no_air", "unsure", "found"), ("no_air", None, "found"), (None, "air", "unneeded")],
)
def test_a_stop_at_another_proof_is_luck(run, fault, proof, outcome):
    """On both phones: no exhaust, so no clunk and no lamp; the gauge had nothing to say yet. To stop in doubt is no luck (common practice)."""
    answer = debrief(run, found(run, fault, ("selector", "centre"), 2, named=fault or "nothing", proof=proof))
    assert (answer["proof"], answer["verdict"]["outcome"]) == (proof, outcome)
    assert answer["proofs"] == (["air", "clunk", "engaged"] if fault else [])


def test_a_stop_with_nothing_wrong_is_debriefed(run):
    """By hand: center, then pump, both in order, after the look: three steps of six; the next is the gear, where a sound rig loads its engine.

    Source: the order of the into-pump card.
    """
    answer = debrief(run, found(run, None, 1, ("selector", "centre"), 2, ("selector", "pump"), 3, named="no_air"))
    assert (answer["verdict"]["outcome"], answer["verdict"]["faults"], answer["naming"], answer["stopped_after"]) == ("unneeded", [], "imagined", 3)
    assert (answer["should"][3]["kind"], answer["should"][3]["to"], len(answer["should"])) == ("gear", "drive", 6)
    assert all(step["shows"] for step in answer["should"]) and answer["should_end"]["how"] == "finished"


def test_only_a_stop_of_a_sound_rig_says_how_far_it_came(run):
    """A planted fault has its own place to stop, and a run that was finished was not stopped."""
    assert debrief(run, found(run, "collar_stuck", ("selector", "centre"), 2))["stopped_after"] is None
    finished = debrief(run, found(run, None, ("selector", "centre"), 2, how="finished"))
    assert (finished["stopped_after"], finished["verdict"]["outcome"]) == (None, "unreached")
    assert debrief(run, found(run, None, 1))["stopped_after"] == 1


def test_time_away_counts_on_the_clock(run):
    """By hand: 1 s, 90 s away, then 2 s: an act at 91 s, an end at 93 s, 90 s of it away; the rig stood still meanwhile."""
    begun = through(run, "to_pump")
    away = run("teaching.practice", "advance", run=play(lambda **given: run("teaching.practice", "advance", **given), begun, 1), event={"kind": "away", "passed_s": 90})
    assert away["train"]["rise_f"] == begun["train"]["rise_f"]
    ended = play(lambda **given: run("teaching.practice", "advance", **given), away, ("selector", "centre"), 2, ("end", "stopped"))
    assert (ended["verdict"]["took_s"], ended["verdict"]["away_s"]) == (93, 90)
    answer = debrief(run, run("teaching.handed", "sent_back", run=ended, named=None, proof=None, salt=1))
    assert (answer["done"][0]["at"], answer["ended"]["at"], answer["away"]) == ("91.0", "93.0", "90.0")


@pytest.mark.parametrize("passed_s", [-1, 86401, "5", None])
def test_no_such_time_away(run, passed_s):
    """A day at most, never backwards."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("teaching.practice", "advance", run=through(run, "to_pump"), event={"kind": "away", "passed_s": passed_s})
    assert refusal.value.field == "passed_s"


def test_the_wrong_kind_of_code(run):
    """A plant has no debrief yet, and a run that came back is not begun again."""
    plant = run("teaching.handed", "plant", task="to_pump", fault=None, salt=7)
    back = found(run, None)
    assert run(DEBRIEF, "kind", code=back) == {"kind": "return", "task": "to_pump"}
    for function, given, code in (
        ("debrief", {"code": plant, "models": why.models()}, "not_ended"),
        ("begin", {"code": back, "parameters": PARAMETERS, "lights": LIGHTS}, "ended"),
    ):
        with pytest.raises(CalcError) as refusal:
            run(DEBRIEF, function, units=US, **given)
        assert (refusal.value.field, refusal.value.code) == ("code", code)


@pytest.mark.parametrize(
    ("values", "code"),
    [([1, 0, 0], "broken"), ([0, 0, 0, 0], "newer"), ([4, 0, 0, 0], "newer"), ([1, 0, 2, 0], "broken"), ([1, 0, 0, 10], "broken"), ([1, 0, 0, 0, 0], "broken"), ([1, 2, 0, 0], "broken"),
     ([1, 1, 0, 0, 12, 0, 0, 0, 0, 0, 0, 0, 0], "broken"), ([1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 11, 0, 0, 0], "broken"), ([1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 250, 0, 0, 0], "broken"),
     ([1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1], "broken"), ([3, 2] + [0] * 12, "broken"), ([3, 1] + [0] * 8, "broken"),
     ([3, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], "broken"), ([3, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 9], "broken")],
)
def test_what_no_phone_of_ours_seals(run, values, code):
    """A code whose check is right but whose contents are none of ours is refused, never half read."""
    with pytest.raises(CalcError) as refusal:
        run("teaching.handed", "opened", code=sealed.sealed(values, 3))
    assert (refusal.value.field, refusal.value.code) == ("code", code)


@pytest.mark.parametrize(("arguments", "field"), [({"task": "fly", "fault": None}, "task"), ({"task": "to_pump", "fault": "ghost"}, "fault")])
def test_nothing_unknown_is_planted(run, arguments, field):
    """Only tasks and faults of the made-up rig."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("teaching.handed", "plant", salt=1, **arguments)
    assert (refusal.value.field, refusal.value.code) == (field, "unknown")


def test_only_an_ended_run_is_sent_back(run):
    """A run that goes on has nothing to show, and a name is one of the rig's faults."""
    with pytest.raises(CalcError) as refusal:
        run("teaching.handed", "sent_back", run=through(run, "to_pump"), named=None, proof=None, salt=1)
    assert (refusal.value.field, refusal.value.code) == ("run", "not_ended")
    with pytest.raises(CalcError) as refusal:
        found(run, None, named="ghost")
    assert (refusal.value.field, refusal.value.code) == ("named", "unknown")
    with pytest.raises(CalcError) as refusal:
        found(run, None, proof="ghost")
    assert (refusal.value.field, refusal.value.code) == ("proof", "unknown")


def test_the_longest_run_fits_a_link(run):
    """200 acts and 200 notes, four bytes each and fourteen before them: some 2,160 letters, which a code still opens."""
    values = [3, 1, 0, 0, 0, 0, 0] + [0] * 7 + [0, 0, 0, 1] * 201 + [100, 0, 0, 1] * 201
    text = sealed.sealed(values, 65535)
    assert len(text) <= sealed.MOST_LETTERS
    assert len(run("teaching.handed", "opened", code=text)["record"]["acts"]) == 201


# What stands at each number of a code: a phone that was not renewed since counts by it, so that it moves only with VERSION.
NUMBERED = {
    "task": "to_pump to_road",
    "fault": "- no_air selector_stuck collar_stuck switch_closed switch_open bulb_dead no_water throttle_dead tank_shut",
    "named": "- unsure no_air selector_stuck collar_stuck switch_closed switch_open bulb_dead no_water throttle_dead nothing tank_shut",
    "ended": "finished stopped",
    "proof": "- unsure engaged ok gauge speed air clunk throttle",
    "note": "neutral gear_refused dead_throttle sound_move home_pump home_road gear_taken water_moved throttle_answered in_gear turning above_idle no_pause clash "
            "not_home strain runaway unproved no_flow second_try hot dry past_proof lamp_dark tank_opened tank_closed",
}
ACTS = [("selector", "road"), ("selector", "centre"), ("selector", "pump"), ("gear", "neutral"), ("gear", "drive"), ("throttle", "idle"), ("throttle", "raised"),
        ("circulate", True), ("circulate", False), ("tank", True), ("tank", False)]


@pytest.mark.parametrize(("at", "name"), [(2, "task"), (3, "fault"), (4, "named"), (5, "ended"), (13, "proof")])
def test_the_numbers_of_a_code_stay(run, at, name):
    """Each number says what it said when its version was made."""
    for number, word in enumerate(NUMBERED[name].split()):
        values = [3, 1] + [0] * 12
        values[at] = number
        read = run("teaching.handed", "opened", code=sealed.sealed(values, 3))
        said = {**read, "fault": (read["faults"] or [None])[0], "ended": read["record"]["ended"]}[name]
        assert said == (None if word == "-" else word)


def test_the_numbers_of_acts_and_notes_stay(run):
    """Each act and each note by its number, at its second: two bytes and a third, in tenths."""
    values = [3, 1] + [0] * 12
    for number in range(len(ACTS)):
        values += [number, 13, 0, 0]  # 13 x 65,536 tenths
    for number in range(26):
        values += [100 + number, 13, 46, 255]  # 851,968 and 46 x 256 and 255
    record = run("teaching.handed", "opened", code=sealed.sealed(values, 3))["record"]
    assert [(act["at_s"], act["kind"], act["to"]) for act in record["acts"]] == [(85196.8, *act) for act in ACTS]
    assert [(note["at_s"], note["code"]) for note in record["notes"]] == [(86399.9, code) for code in NUMBERED["note"].split()]


@pytest.mark.parametrize(
    ("at_s", "back_s"),
    [(85196.8, 85196.8), (86399.9, 86399.9), (0.04, 0), (0.06, 0.1), (1677721.5, 1677721.5), (20 * 86400, 1677721.5)],  # the most of three bytes in tenths: 2^24 - 1
)
def test_a_time_travels(run, at_s, back_s):
    """To the tenth of a second, up to nineteen days; what is longer comes back as that."""
    ended = through(run, "to_pump", ("end", "stopped"))
    ended.update({"at_s": at_s, "away_s": at_s, "acts": [{"at_s": at_s, "kind": "tank", "to": True}], "notes": [{"at_s": at_s, "code": "strain"}]})
    read = run("teaching.handed", "opened", code=run("teaching.handed", "sent_back", run=ended, named=None, proof=None, salt=1))
    assert read["record"] == {"faults": [], "ended": "stopped", "is_reached": False, "at_s": back_s, "away_s": back_s,
                              "acts": [{"at_s": back_s, "kind": "tank", "to": True}], "notes": [{"at_s": back_s, "code": "strain"}]}


def test_a_good_run_travels(run):
    """A task that was done is done on the planter's phone too."""
    answer = debrief(run, found(run, None, *SOUND_SHIFT, how="finished"))
    assert (answer["verdict"]["outcome"], answer["verdict"]["harm"]) == ("good", [])


def test_a_plant_holds_no_run(run):
    """What a plant says is its task and fault alone."""
    code = run("teaching.handed", "plant", task="to_road", fault="tank_shut", salt=7)
    assert run("teaching.handed", "opened", code=code) == {"task": "to_road", "faults": ["tank_shut"], "named": None, "proof": None, "record": None}


def test_every_note_travels():
    """What a run can note is what a code can say: the notes that have words."""
    assert set(handed.NOTES) == set(data.words("practice")["note"]) and len(set(handed.NOTES)) == len(handed.NOTES) < 156


def test_a_longer_list_is_another_version(run):
    """What a code counts by is that of its version, so a phone that has less calls the code newer, not damaged: version 1 had 23 notes, version 2 one
    more and neither the tank-to-pump valve nor the proof that was named; what both sealed is still read.

    Counted by hand in the lists; versions 1 and 2 are of 2026-11-28 and 29.
    """
    counts = [len(choices) for choices in (handed.NOTES, handed.ACTS, powertrain.FAULT_CODES)]
    assert (handed.VERSION, counts) == (3, [26, 11, 9])
    for code in (run("teaching.handed", "plant", task="to_pump", fault=None, salt=1), found(run, None)):
        assert sealed.opened(code)[0] == 3
    assert run("teaching.handed", "opened", code=sealed.sealed([1, 0, 0, 1], 3))["faults"] == [powertrain.FAULT_CODES[0]]
    older = run("teaching.handed", "opened", code=sealed.sealed([2, 1, 0, 1, 10, 1, 0, 0, 0, 9, 0, 0, 0, 123, 0, 0, 8], 3))  # named nothing; the note of a dark lamp
    assert (older["named"], older["proof"], older["record"]["notes"]) == ("nothing", None, [{"at_s": 0.8, "code": "lamp_dark"}])
