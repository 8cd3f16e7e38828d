"""Lights report switches, not the collar, and a clunk is one proof of several: one alone does not clear it."""
import pytest

from calc.diagnosis import fault
from tests.unit.diagnosis.dialogue import BASE, SIGNS, talk

# What a shift card hands over when its pump light did not come: the lever was moved as it should be.
FROM_CARD = fault.entered(BASE, ["air_up", "engine_idle", "speed_zero", "centre_paused", "selector_pump"], ["pump_light"])
PROOFS = ("clunk_felt", "rod_at_pump")


def after_dark_light(proofs, role):
    """The end of a talk from the card in which these proofs are seen, and nothing else out of the ordinary."""
    def answer(sign):
        return "seen" if sign in proofs or sign == "switch_open" else "not_seen"

    return talk(FROM_CARD, answer, {}, role, "idle")


@pytest.mark.parametrize("role", fault.ROLES)
def test_a_clunk_does_not_clear_the_collar(run, role):
    """Light dark and one full clunk: a collar between, or fallen back, is still possible, and the talk goes on."""
    signs = {**FROM_CARD, "clunk_felt": "seen"}
    told = run("diagnosis.fault", "next_check", knowledge=BASE, signs=signs, role=role, engine="idle", questions=1)
    assert told["kind"] == "check" and {"collar_between", "collar_dropped_back"} < set(told["left"])


def test_an_operator_ends_with_the_collar_in_doubt():
    """No tools, no second proof: the talk ends at the technician, with a collar between among what is left."""
    end, asked, _ = after_dark_light(PROOFS, "operator")
    assert end["kind"] == "technician" and {"collar_between", "lamp_or_switch"} == set(end["left"])
    assert "shift_felt" in asked and len(asked) > 1


@pytest.mark.parametrize("missing", PROOFS)
def test_lamp_stands_only_by_two_proofs(missing):
    """Lamp or switch is the cause once clunk and rod both say pump and the switch is open, and not without either."""
    end, _, _ = after_dark_light(PROOFS, "technician")
    assert (end["kind"], end["cause"]) == ("stands", "lamp_or_switch")
    end, _, _ = after_dark_light([proof for proof in PROOFS if proof != missing], "technician")
    assert end["cause"] is None


def test_a_rod_at_its_mark_clears_it(run):
    """The second proof, seen with the engine secured, leaves no collar between."""
    signs = {**FROM_CARD, "clunk_felt": "seen", "rod_at_pump": "seen"}
    told = run("diagnosis.fault", "next_check", knowledge=BASE, signs=signs, role="technician", engine="secured", questions=2)
    assert "collar_between" not in told["left"] and SIGNS["rod_at_pump"]["under"]


def test_clunk_and_no_clunk_clash(run):
    """Nobody heard one and heard none."""
    signs = {"light_dark": "seen", "no_clunk": "seen", "clunk_felt": "seen"}
    assert run("diagnosis.fault", "rank", knowledge=BASE, signs=signs)["clashes"] == [["no_clunk", "clunk_felt"]]
