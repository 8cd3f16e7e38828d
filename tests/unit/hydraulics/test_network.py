"""The parts of a tree of hose: an outlet's pressure, the flow that it takes back, and its work, by the laws that tie them."""
import math

import pytest

from calc.base.errors import CalcError
from calc.hydraulics import branch, network

AUTOMATIC = branch.Outlet(70, 200, 100)  # holds 100 psi from 70 to 200 gpm
FIXED = branch.Outlet(150, 150, 75)


@pytest.mark.parametrize(
    ("outlet", "flow_gpm", "psi"),
    [
        # by hand: below and above its range an orifice, in it the pressure that it holds
        (AUTOMATIC, 35, 25), (AUTOMATIC, 70, 100), (AUTOMATIC, 120, 100), (AUTOMATIC, 200, 100), (AUTOMATIC, 400, 400),
        (FIXED, 75, 18.75), (FIXED, 150, 75), (FIXED, 300, 300), (FIXED, 0, 0),
        (branch.Outlet(0.5, 2, 50), 0.8, 50),  # however small
    ],
)
def test_pressure(outlet, flow_gpm, psi):
    """An orifice goes with the square of its flow, and an automatic nozzle holds."""
    assert outlet.pressure_psi(flow_gpm) == pytest.approx(psi, rel=1e-12)


@pytest.mark.parametrize("flow_gpm", [35, 120, 400])
def test_law_of_a_flow_the_wrong_way(flow_gpm):
    """On the way to a balance a flow may be negative: its law is the mirror of the one forward."""
    held_psi, loss = AUTOMATIC.law(flow_gpm)
    assert AUTOMATIC.law(-flow_gpm) == (-held_psi, loss)


@pytest.mark.parametrize("outlet", [AUTOMATIC, FIXED])
@pytest.mark.parametrize("loss", [1e-5, 2e-5, 1e-3, 0.02])
@pytest.mark.parametrize("psi", [3, 60, 99, 100.5, 101, 105, 120, 160, 300])
def test_flow_at_a_pressure(outlet, loss, psi):
    """The flow through hose and outlet takes just the pressure there is."""
    flow_gpm = outlet.flow_gpm(psi, loss)
    assert loss * flow_gpm * flow_gpm + outlet.pressure_psi(flow_gpm) == pytest.approx(psi, rel=1e-9)


def test_flow_without_loss():
    """With no hose before it an automatic nozzle at its pressure passes something of its range."""
    assert AUTOMATIC.flow_gpm(100, 0) == 70


@pytest.mark.parametrize("outlet", [AUTOMATIC, FIXED])
def test_content_is_the_sum_of_pressure_by_flow(outlet):
    """Work up to a flow: nothing at none, and each gpm more adds its pressure, across the ends of the range too."""
    assert outlet.content(0) == 0
    total, step_gpm = 0, 0.25
    for count in range(1600):
        middle_gpm = (count + 0.5) * step_gpm
        total += outlet.pressure_psi(middle_gpm) * step_gpm
        assert outlet.content((count + 1) * step_gpm) == pytest.approx(total, rel=1e-3, abs=1e-2), middle_gpm


def a_wye():
    """A supply and two unlike nozzles, one of them automatic and uphill."""
    return [branch.Branch(None, 5, 2e-5, None, False), branch.Branch(0, 0, 3e-3, FIXED, False), branch.Branch(0, 20, 2e-3, AUTOMATIC, False)]


def test_a_search_that_is_not_done_is_refused(monkeypatch):
    """Out of steps, no flow is told."""
    monkeypatch.setattr(network, "MOST_STEPS", 1)
    with pytest.raises(CalcError) as refused:
        network.solve(a_wye(), 170)
    assert (refused.value.field, refused.value.code) == ("lines", "no_balance")


def test_more_loops_than_it_takes_are_refused():
    """Each loop is one row more of the equations in every step: twelve at the most, a hose that is shut closes none."""
    def hoses(count, shut):
        joint, nozzle = branch.Branch(None, 0, 1e-4, None, False), branch.Branch(0, 0, 0, FIXED, False)
        return [joint, nozzle] + [branch.Branch(None, 0, 1e-4, None, place < shut, into=0) for place in range(count)]

    with pytest.raises(CalcError) as refused:
        network.solve(hoses(13, 0), 100)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("lines", "too_many_loops", {"most": 12})
    branches = hoses(13, 1)
    network.solve(branches, 100)
    # by hand: thirteen hoses at 1e-4 are one at 1e-4 / 169, the nozzle 75 / 150^2 = 1 / 300: 100 = Q^2 (1 / 300 + 1e-4 / 169)
    assert branches[1].flow_gpm == pytest.approx(math.sqrt(100 / (1 / 300 + 1e-4 / 169)), rel=1e-6)


def test_newton_is_quick(monkeypatch):
    """Each of Newton's steps about doubles the figures that are right: a wye is in balance within eight."""
    monkeypatch.setattr(network, "MOST_STEPS", 8)
    for psi in (60, 100, 170, 250, 400):
        branches = a_wye()
        network.solve(branches, psi)
        assert branches[0].flow_gpm == pytest.approx(branches[1].flow_gpm + branches[2].flow_gpm, rel=1e-12)
