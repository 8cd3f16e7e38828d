"""The same layouts given to EPANET: at least five hundred random trees, on both Pythons."""
import itertools

import pytest

from tests import kept
from tests.peers.random_layouts import DEEPEST, MOST_NOZZLES, random_layout

TREES = {"cpython": 500, "micropython": 150}  # the phone's interpreter takes five times as long
LIMIT = 1e-3
LEAST_PSI = 2  # a tip that trickles hangs on the last figures; a dry one draws air back in EPANET


def comparison(run, folder, trees):
    """How far our flows are from EPANET's, over every nozzle that is not shut off: counts and the worst deviation."""
    from tests.peers import epanet

    found = {"trees": 0, "points": 0, "shut": 0, "deepest": 0, "most_nozzles": 0, "limit": LIMIT, "worst": 0.0}
    for seed in itertools.count():
        if found["trees"] == trees:
            return found
        layout, pump_psi = random_layout(seed)
        report = run("layout.pressure", "flows", layout=layout, discharge_psi=pump_psi)
        nozzles = [told for told in report["lines"] if told["nozzle"]]
        flowing = [told for told in nozzles if not told["shut"]]
        if not flowing or min(told["outlet_psi"] for told in flowing) < LEAST_PSI:
            continue
        theirs_gpm = epanet.flows_gpm(layout, pump_psi, folder)
        assert [told["id"] for told in flowing] == list(theirs_gpm)
        found["trees"] += 1
        found["points"] += len(flowing)
        found["shut"] += len(nozzles) - len(flowing)
        found["deepest"] = max(found["deepest"], *(told["id"].count(".") + 1 for told in flowing))
        found["most_nozzles"] = max(found["most_nozzles"], len(flowing))
        found["worst"] = max(found["worst"], *(abs(told["flow_gpm"] / theirs_gpm[told["id"]] - 1) for told in flowing))


def test_flows_agree_with_epanet(run, python, tmp_path):
    """On hundreds of random trees every nozzle's flow is EPANET's to a tenth of a per cent, as the site says."""
    pytest.importorskip("wntr")
    found = comparison(run, tmp_path, TREES[python])
    print(found)
    assert found["worst"] < LIMIT
    assert (found["trees"], found["deepest"], found["most_nozzles"]) == (TREES[python], DEEPEST, MOST_NOZZLES)
    assert kept.is_fresh("epanet", python, found)
