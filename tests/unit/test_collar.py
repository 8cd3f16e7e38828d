"""Where the collar can stand: proofs that agree, proofs that contradict, and the doubt that stays."""
import itertools

import pytest

from calc import collar
from calc.errors import CalcError
from site_src import data

PROOFS = data.load("collar")["proof"]
ANSWERS = {proof["id"]: [answer["id"] for answer in proof["answers"]] for proof in PROOFS}


def places(run, **given):
    return run("collar", "places", proofs=PROOFS, given=given)


@pytest.mark.parametrize(
    ("given", "candidates", "contradictions"),
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
def test_places(run, given, candidates, contradictions):
    """Each set of proofs leaves its places, one contradiction is named, and "never in pump" is always there."""
    told = places(run, **given)
    assert told["candidates"] == candidates
    assert told["contradictions"] == contradictions


def test_never_is_always_a_candidate():
    """No set of answers takes the doubt away; two that share no place are a contradiction, and no others are."""
    for given in itertools.product(*([None, *answers] for answers in ANSWERS.values())):
        given = {proof: answer for proof, answer in zip(ANSWERS, given, strict=True) if answer}
        told = collar.places(PROOFS, given)
        assert told["candidates"][-1] == "never"
        if told["contradictions"]:
            assert not set(told["candidates"]) & {"pump"}


@pytest.mark.parametrize("given", [{"ground": "leans"}, {"ground": "moves"}, {"throttle": "dead"}])
def test_alarms(run, given):
    """Strain, movement and a dead throttle are told as danger."""
    assert places(run, light="on", **given)["alarms"] == list(given)


@pytest.mark.parametrize(("given", "code"), [({"smell": "odd"}, "unknown_proof"), ({"light": "green"}, "unknown_answer")])
def test_refusals(run, given, code):
    """What is no proof or no answer is refused."""
    with pytest.raises(CalcError) as refusal:
        places(run, **given)
    assert (refusal.value.field, refusal.value.code) == ("given", code)
