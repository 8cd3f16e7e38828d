"""Whole layouts measured, or reckoned for the hose of their day, around 1900: the tool's answer for present-day hose is below each, and near it."""
import pathlib
import tomllib

import pytest

from tests import kept
from tests.published import test_examples

ROWS = tomllib.loads((pathlib.Path(__file__).parent / "layouts.toml").read_text(encoding="utf-8"))["measured"]


def bounds(run):
    """How many there are, and the least share of what was measured that the tool asks."""
    return {"layouts": len(ROWS), "least": min(asked_psi(run, row) / row["measured_psi"] for row in ROWS)}


def asked_psi(run, row):
    return test_examples.whole(run, row["segments"], **row["end"])["discharge_psi"]


def test_the_site_says_so(run, python):
    """The site's Evidence page counts them; where not, run `python -m tests.evidence`."""
    assert kept.is_fresh("measured", python, bounds(run))


@pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])
def test_old_hose_took_more(run, row):
    """What the pump showed was more than the handbook's coefficients ask: old hose was rougher, and fittings took their part."""
    assert row["least_share"] * row["measured_psi"] < asked_psi(run, row) < row["measured_psi"]


@pytest.mark.parametrize("row", [row for row in ROWS if "flow_gpm" in row], ids=[row["id"] for row in ROWS if "flow_gpm" in row])
def test_the_flow_was_the_tips(run, row):
    """The flow that was measured is the formula's to a hundredth: what differs is the hose."""
    flow_gpm = run("hydraulics.nozzle", "smooth_bore_flow_gpm", **row["end"])
    assert flow_gpm == pytest.approx(row["flow_gpm"], rel=0.01)
