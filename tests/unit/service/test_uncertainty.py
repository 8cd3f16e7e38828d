"""Bands of uncertainty, by hand and against a Monte Carlo run."""
import math
import random
import statistics

import pytest

from calc.base.errors import CalcError
from calc.hydraulics import nozzle
from calc.pump import draft
from calc.service import uncertainty

DRAWS = 20_000
SAMPLES = random.Random(20261125)


def off(width):
    """One error, anywhere within its width."""
    return SAMPLES.uniform(-width, width)


@pytest.mark.parametrize(
    ("widths", "band"),
    # by hand: two standard deviations, 2 sqrt(sum w^2 / 3), and never more than the sum
    [([3], 3), ([3, 3], 2 * math.sqrt(6)), ([0], 0), ([], 0), ([3, 0.2], 3.2), ([1, 1, 1], 2)],
)
def test_combined(run, widths, band):
    """One error is its whole width; several rarely all lie the same way."""
    assert run("service.uncertainty", "combined_band", widths=widths) == pytest.approx(band)


def agrees(errors, band, slack=0.03):
    """The band holds 19 of 20 draws, and is two standard deviations but where the widths themselves are less."""
    covered = sum(abs(error) <= band for error in errors) / len(errors)
    assert covered >= 0.95
    assert band <= 2 * statistics.pstdev(errors) * (1 + slack)


@pytest.mark.parametrize(("gauge_psi", "lift_ft", "loss_ft"), [(3, 0.5, 1.35), (1, 1, 2), (5, 0.1, 0.1)])
def test_net_from_draft_against_draws(gauge_psi, lift_ft, loss_ft):
    """The band of net pressure against 20,000 draws of the gauge, the lift and the loss."""
    true_psi = draft.net_pump_pressure_psi(142, 10, 9)
    errors = [
        draft.net_pump_pressure_psi(142 + off(gauge_psi), 10 + off(lift_ft), 9 + off(loss_ft)) - true_psi for _ in range(DRAWS)
    ]
    agrees(errors, uncertainty.net_band_from_draft_psi(gauge_psi, lift_ft, loss_ft))


@pytest.mark.parametrize(("tips", "accuracy_psi", "percent"), [([(2.25, 69.1)], 1, 0.5), ([(1.75, 68), (1.75, 66)], 2, 0.5), ([(2.0, 45)], 1, 2)])
def test_pitot_flow_against_draws(tips, accuracy_psi, percent):
    """The band of flow against draws of one pitot gauge's error, shared by the tips, and of the rule's own."""
    flows = [nozzle.smooth_bore_flow_gpm(tip_in, psi) for tip_in, psi in tips]
    errors = []
    for _ in range(DRAWS):
        gauge, rule = off(accuracy_psi), 1 + off(percent) / 100
        errors.append(sum(nozzle.smooth_bore_flow_gpm(tip_in, psi + gauge) for tip_in, psi in tips) * rule - sum(flows))
    agrees(errors, uncertainty.pitot_flow_band_gpm(flows, [psi for _, psi in tips], accuracy_psi, percent))


def test_pitot_band(run):
    """By hand: 1 psi of 69.1 is 0.7236 % of 1,250 gpm, 9.045; with no error of the rule that is the band."""
    band = run("service.uncertainty", "pitot_flow_band_gpm", flows_gpm=[1250], pitots_psi=[69.1], pitot_accuracy_psi=1, tip_percent=0)
    assert band == pytest.approx(9.045, abs=0.001)


@pytest.mark.parametrize(
    ("function", "arguments", "field", "code"),
    [
        ("combined_band", {"widths": [-1]}, "widths", "negative"),
        ("combined_band", {"widths": None}, "widths", "missing"),
        ("net_band_from_draft_psi", {"discharge_accuracy_psi": 1, "lift_accuracy_ft": -1, "loss_accuracy_ft": 0}, "lift_accuracy_ft", "negative"),
        ("net_band_from_draft_psi", {"discharge_accuracy_psi": -1, "lift_accuracy_ft": 1, "loss_accuracy_ft": 0}, "discharge_accuracy_psi", "negative"),
        ("net_band_from_draft_psi", {"discharge_accuracy_psi": 1, "lift_accuracy_ft": 1, "loss_accuracy_ft": -1}, "loss_accuracy_ft", "negative"),
        ("pitot_flow_band_gpm", {"flows_gpm": [1], "pitots_psi": [], "pitot_accuracy_psi": 1, "tip_percent": 1}, "pitots_psi", "not_as_many"),
        ("pitot_flow_band_gpm", {"flows_gpm": [1], "pitots_psi": [1], "pitot_accuracy_psi": -1, "tip_percent": 1}, "pitot_accuracy_psi", "negative"),
        ("pitot_flow_band_gpm", {"flows_gpm": [1], "pitots_psi": [1], "pitot_accuracy_psi": 1, "tip_percent": -1}, "tip_percent", "negative"),
    ],
)
def test_refused(run, function, arguments, field, code):
    """What is no accuracy is refused by name."""
    with pytest.raises(CalcError) as refused:
        run("service.uncertainty", function, **arguments)
    assert (refused.value.field, refused.value.code) == (field, code)


def test_net_band(run):
    """By hand: 2.3 ft of water are 1 psi, so 3 psi and 1 and 2 of lift and loss err together by 2 x root(14 / 3)."""
    band = run("service.uncertainty", "net_band_from_draft_psi", discharge_accuracy_psi=3, lift_accuracy_ft=2.3, loss_accuracy_ft=4.6)
    assert band == pytest.approx(2 * (14 / 3) ** 0.5)


def test_pitot_band_of_two_tips(run):
    """One gauge reads both, so their errors add: by hand 400 x 2 / 100 + 300 x 2 / 50 = 20 gpm."""
    band = run("service.uncertainty", "pitot_flow_band_gpm", flows_gpm=[400, 300], pitots_psi=[50, 25], pitot_accuracy_psi=2, tip_percent=0)
    assert band == pytest.approx(20)


def test_pitot_band_of_small_readings(run):
    """A reading of no more than half its error leaves the whole flow in doubt; by hand, 1 % of 400 gpm is 4."""
    def band(pitot_psi, accuracy_psi, percent=0):
        return run("service.uncertainty", "pitot_flow_band_gpm", flows_gpm=[400], pitots_psi=[pitot_psi], pitot_accuracy_psi=accuracy_psi, tip_percent=percent)

    assert (band(1, 2), band(0.9, 2), band(0.5, 2), band(0, 2)) == (400, 400, 400, 400)
    assert band(1.25, 2) == pytest.approx(320)  # 400 x 2 / 2.5
    assert band(50, 0, percent=1) == pytest.approx(4)


@pytest.mark.parametrize("name", ["flows_gpm", "pitots_psi"])
def test_pitot_band_refused(run, name):
    """A flow or a reading below none is refused by the name of its list."""
    with pytest.raises(CalcError) as refused:
        run("service.uncertainty", "pitot_flow_band_gpm", **{"flows_gpm": [400], "pitots_psi": [50], "pitot_accuracy_psi": 1, "tip_percent": 1, name: [-1]})
    assert (refused.value.field, refused.value.code) == (name, "negative")
