"""Where the collar can stand: proofs that agree, proofs that contradict, and the doubt that stays."""
import itertools

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import collar, fault
from site_src.content import data
from tests.unit.diagnosis.dialogue import BASE

PROOFS = data.load("diagnose/collar")["proof"]
ANSWERS = {proof["id"]: [answer["id"] for answer in proof["answers"]] for proof in PROOFS}


def places(run, **seen):
    return run("diagnosis.collar", "places", proofs=PROOFS, seen=seen)


@pytest.mark.parametrize(
    ("seen", "candidates", "contradictions"),
    [
        ({}, ["never"], []),
        # what a sound shift shows, from memory
        ({"light": "on", "clunk": "one", "speedometer": "usual", "note": "same", "pressure": "shows", "throttle": "both"},
         ["pump", "never"], []),
        # the runaway that crews tell of: every light on, speedometer at zero
        ({"light": "on", "speedometer": "zero"}, ["never"], [["light", "speedometer"]]),
        ({"light": "dark", "speedometer": "above"}, ["between", "never"], []),
        ({"light": "dark", "note": "dropped"}, ["road", "never"], []),
        ({"light": "on", "pressure": "none_full"}, ["never"], [["light", "pressure"]]),
        # what tells nothing stays silent
        ({"speedometer": "wheels", "pressure": "none_dry"}, ["never"], []),
    ],
)
def test_places(run, seen, candidates, contradictions):
    """Each set of proofs leaves its places, one contradiction is named, and "never in pump" is always there."""
    told = places(run, **seen)
    assert told["candidates"] == candidates
    assert told["contradictions"] == contradictions


def test_never_is_always_a_candidate():
    """No set of answers takes the doubt away; two that share no place are a contradiction, and no others are."""
    for chosen in itertools.product(*([None, *answers] for answers in ANSWERS.values())):
        seen = {proof: answer for proof, answer in zip(ANSWERS, chosen, strict=True) if answer}
        told = collar.places(PROOFS, seen)
        assert told["candidates"][-1] == "never"
        if told["contradictions"]:
            assert not set(told["candidates"]) & {"pump"}


@pytest.mark.parametrize("seen", [{"ground": "leans"}, {"ground": "moves"}, {"throttle": "dead"}])
def test_alarms(run, seen):
    """Strain, movement and a dead throttle are told as danger."""
    assert places(run, light="on", **seen)["alarms"] == list(seen)


@pytest.mark.parametrize(("seen", "code"), [({"smell": "odd"}, "unknown_proof"), ({"light": "green"}, "unknown_answer")])
def test_refusals(run, seen, code):
    """What is no proof or no answer is refused."""
    with pytest.raises(CalcError) as refusal:
        places(run, **seen)
    assert (refusal.value.field, refusal.value.code) == ("seen", code)


@pytest.mark.parametrize(
    ("seen", "kind"),
    [
        ({"light": "dark", "clunk": "none", "speedometer": "zero", "note": "dropped"}, "stands"),  # never left road
        ({"light": "dark", "pressure": "shows", "note": "same"}, "check"),  # a lamp, where all else says pump
        ({"light": "on", "speedometer": "zero", "note": "dropped"}, "check"),  # and the light is denied
        ({"throttle": "dead"}, "danger"), ({"ground": "moves"}, "danger"),
    ],
)
def test_answers_open_the_diagnosis(seen, kind):
    """What the proofs say is known to the diagnosis as signs, and fits something that it knows."""
    contradicted = [proof for pair in collar.places(PROOFS, seen)["contradictions"] for proof in pair]
    signs = {}
    for proof in PROOFS:
        for answer in proof["answers"]:
            if answer["id"] == seen.get(proof["id"]):
                sign = answer.get("sign") or (answer.get("denied") if proof["id"] in contradicted else None)
                signs.update({sign: "seen"} if sign else {})
    assert signs and fault.next_check(fault.for_rig(BASE, {"drive": "midship"}), signs, "technician", "idle", 0)["kind"] == kind


def test_what_speaks_for_and_against(run):
    """By the instruments, from memory: a dark light speaks for road and between, against pump; wheels on the needle tell nothing."""
    told = places(run, light="dark", speedometer="wheels")
    rows = {row["place"]: (row["for"], row["against"]) for row in told["places"]}
    assert rows == {"road": (["light"], []), "between": (["light"], []), "pump": ([], ["light"])}
    assert told["silent"] == ["speedometer"]
    with pytest.raises(CalcError) as refusal:
        places(run, light="blue")
    assert (refusal.value.code, refusal.value.facts) == ("unknown_answer", {"proof": "light"})
