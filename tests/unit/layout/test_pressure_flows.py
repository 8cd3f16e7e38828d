"""What really flows in a layout: limits by hand, and laws that hold for any tree."""
import copy

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.hydraulics import network
from calc.hydraulics.branch import Branch, Outlet
from tests.unit.layout.trees import TREES, flowing, fog, line, nozzle_flows


@pytest.mark.parametrize(
    ("psi", "gpm"),
    [
        (169.75, 150),        # its rated pressure: 69.75 friction and 100 at the nozzle
        (169.75 / 4, 75),     # all losses are squares: half the flow at a quarter of the pressure
        (169.75 * 4, 300),
        (0, 0),
    ],
)
def test_one_line(run, psi, gpm):
    """One level line flows with the square root of the pump's pressure."""
    report = flowing(run, [line(fog())], psi)
    assert report["flow_gpm"] == pytest.approx(gpm, rel=1e-9, abs=1e-6)
    assert report["lines"][0]["nozzle"]["nozzle_psi"] == pytest.approx(100 * (gpm / 150) ** 2, rel=1e-9, abs=1e-6)


def test_a_nozzle_above_the_water_passes_nothing(run):
    """Sixty feet up take 26 psi: at 20 psi nothing flows, at 26.04 + 1.6975 a tenth of the rated flow does."""
    assert flowing(run, [line(fog(), rise_ft=60)], 20)["flow_gpm"] == 0
    assert flowing(run, [line(fog(), rise_ft=60)], 26.04 + 1.6975)["flow_gpm"] == pytest.approx(15, rel=1e-6)


def test_a_nozzle_that_a_lower_one_leaves_dry(run):
    """With the lower nozzle shut, 60 psi reach 120 ft up (52.08 psi); with it open the wye has 42.5 psi, and none goes up.

    By hand: two lengths of 200 ft and the nozzle take (31 + 31 + 100 / 2.25) Q², so that Q is 75.08 gpm.
    """
    wye = {"lines": [line(fog(), id="1.0"), line(fog(), id="1.1", rise_ft=120)]}
    assert nozzle_flows(run, [line(wye)], 60) == {"1.0": pytest.approx(75.08, abs=0.01), "1.1": 0}
    wye["lines"][0]["shut"] = True
    assert nozzle_flows(run, [line(wye)], 60)["1.1"] > 0


@pytest.mark.parametrize(
    ("psi", "gpm", "nozzle_psi"),
    [
        (100 + 15.5 * 1 * 2, 100, 100),            # 100 gpm in its range: 31 psi of friction, 100 held
        (100 + 15.5 * 2.25 * 2, 150, 100),
        ((100 + 15.5 * 4 * 2) * 4, 400, 400),      # past 200 gpm it is an orifice: 124 of friction, 100 at the nozzle
        ((100 + 15.5 * 0.36 * 2) / 4, 30, 25),     # under 60 gpm likewise
    ],
)
def test_an_automatic_nozzle_holds_its_pressure(run, psi, gpm, nozzle_psi):
    """In its range an automatic nozzle holds its pressure; beyond, it is an orifice. By hand."""
    end = {"kind": "automatic", "min_gpm": 60, "max_gpm": 200, "rated_psi": 100}
    (told,) = flowing(run, [line(end)], psi)["lines"]
    assert (told["flow_gpm"], told["nozzle"]["nozzle_psi"]) == (pytest.approx(gpm, rel=1e-9), pytest.approx(nozzle_psi, rel=1e-9))


@settings(max_examples=60, deadline=None)
@given(lines=TREES, psi=st.integers(0, 300))
def test_water_balances(run, lines, psi):
    """At every joint what comes in goes out, and along every line pressures add up."""
    report = flowing(run, lines, psi)
    read = {told["id"]: told for told in report["lines"]}
    for told in report["lines"]:
        fed = [each for each in report["lines"] if each["feeder"] == told["id"]]
        if fed:
            assert sum(each["flow_gpm"] for each in fed) == pytest.approx(told["flow_gpm"], rel=1e-6, abs=1e-6)
        inlet_psi = psi if told["feeder"] is None else read[told["feeder"]]["outlet_psi"]
        lost_psi = told["friction_psi"] + told["elevation_psi"] + told["appliance_psi"] + told["gate_psi"]
        assert told["outlet_psi"] == pytest.approx(inlet_psi - lost_psi, abs=1e-6)
        if told["nozzle"] and told["flow_gpm"] > 0:
            assert told["nozzle"]["nozzle_psi"] == pytest.approx(told["outlet_psi"], abs=1e-6)
        assert told["flow_gpm"] >= 0


@settings(max_examples=60, deadline=None)
@given(lines=TREES, psi=st.integers(10, 250), more=st.integers(1, 60))
def test_more_pressure_never_means_less_flow(run, lines, psi, more):
    """Raising the pump lowers no nozzle's flow."""
    before, after = nozzle_flows(run, lines, psi), nozzle_flows(run, lines, psi + more)
    assert all(after[name] >= before[name] - 1e-6 for name in before)


@settings(max_examples=60, deadline=None)
@given(lines=TREES)
def test_gated_as_told_every_nozzle_has_its_rated_flow(run, lines):
    """The required pressure with the gates it names gives every nozzle its rating."""
    required = run("layout.pressure", "discharge_pressure", layout={"lines": lines})
    if required["discharge_psi"] < 0:
        return  # downhill enough to need no pump
    gates = {told["id"]: told["gate_psi"] for told in required["lines"]}

    def gated(given_lines, prefix=""):
        found = []
        for place, each in enumerate(given_lines, 1):
            name = prefix + str(place)
            end = each["end"]
            if "lines" in end:
                end = {"lines": gated(end["lines"], name + ".")}
            found.append({**each, "id": name, "gate_psi": max(gates[name], 0), "end": end})
        return found

    report = flowing(run, gated(lines), required["discharge_psi"])
    rated = {told["id"]: told["nozzle"]["flow_gpm"] for told in required["lines"] if told["nozzle"]}
    held = {told["id"]: told["nozzle"]["nozzle_psi"] for told in required["lines"] if told["nozzle"]}
    for told in report["lines"]:
        if told["nozzle"]:
            assert told["nozzle"]["nozzle_psi"] == pytest.approx(held[told["id"]], rel=1e-6)
            assert told["flow_gpm"] == pytest.approx(rated[told["id"]], rel=1e-6)


@settings(max_examples=40, deadline=None)
@given(lines=TREES, psi=st.integers(10, 250))
def test_two_hoses_side_by_side_are_one_of_a_quarter(run, lines, psi):
    """Two equal parallel hoses flow as one whose coefficient is a quarter."""
    doubled, quartered = copy.deepcopy(lines), copy.deepcopy(lines)
    doubled[0]["parallel"], quartered[0]["parallel"] = 2, 1
    quartered[0]["coefficient"] = doubled[0]["coefficient"] / 4
    assert nozzle_flows(run, doubled, psi) == pytest.approx(nozzle_flows(run, quartered, psi), rel=1e-7, abs=1e-6)


@pytest.mark.parametrize("psi", [-1, 1e9, "high", None, True])
def test_refused(run, psi):
    """A pump pressure that is none is refused by its name."""
    with pytest.raises(CalcError) as refused:
        flowing(run, [line(fog())], psi)
    assert refused.value.field == "discharge_psi"


def test_a_step_that_only_leads_up_comes_to_nothing():
    """From still water with no pressure any flow uphill costs work: the step is halved away, and the search ends."""
    branch = Branch(None, 10, 0.01, Outlet(100, 100, 50), False)
    network._descend([branch], [], [100], 0)
    assert 0 < branch.flow_gpm < 1e-9
