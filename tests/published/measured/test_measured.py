"""Whole layouts measured, or reckoned for the hose of their day, around 1900: the tool's answer for present-day hose is below each, and near it."""
import pathlib
import tomllib

import pytest

from tests.published import test_examples

ROWS = tomllib.loads((pathlib.Path(__file__).parent / "layouts.toml").read_text(encoding="utf-8"))["measured"]


@pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])
def test_old_hose_took_more(run, row):
    """What the pump showed was more than the handbook's coefficients ask: old hose was rougher, and fittings took their part."""
    asked_psi = test_examples.whole(run, row["segments"], **row["end"])["discharge_psi"]
    assert row["least_share"] * row["measured_psi"] < asked_psi < row["measured_psi"]


@pytest.mark.parametrize("row", [row for row in ROWS if "flow_gpm" in row], ids=[row["id"] for row in ROWS if "flow_gpm" in row])
def test_the_flow_was_the_tips(run, row):
    """The flow that was measured is the formula's to a hundredth: what differs is the hose."""
    flow_gpm = run("hydraulics.nozzle", "smooth_bore_flow_gpm", **row["end"])
    assert flow_gpm == pytest.approx(row["flow_gpm"], rel=0.01)
