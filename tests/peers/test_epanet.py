"""The same layouts given to EPANET: at least five hundred random trees and as many networks with loops, on both Pythons."""
import itertools

import pytest

from tests import kept
from tests.peers.random_layouts import DEEPEST, MOST_LOOPS, MOST_NOZZLES, random_layout, random_network

TREES = {"cpython": 500, "micropython": 150}  # the phone's interpreter takes five times as long
LIMIT = 1e-3
LEAST_PSI = 2  # a tip that trickles hangs on the last figures; a dry one draws air back in EPANET


def comparison(run, folder, trees, made=random_layout):
    """How far our flows are from EPANET's, over every nozzle that is not shut off: counts and the worst deviation."""
    from tests.peers import epanet

    found = {"trees": 0, "points": 0, "shut": 0, "deepest": 0, "most_nozzles": 0, "limit": LIMIT, "worst": 0.0}
    for seed in itertools.count():
        if found["trees"] == trees:
            return found
        layout, pump_psi = made(seed)
        report = run("layout.pressure", "flows", layout=layout, discharge_psi=pump_psi)
        nozzles = [told for told in report["lines"] if told["nozzle"]]
        flowing = [told for told in nozzles if not told["shut"]]
        if not flowing or min(told["outlet_psi"] for told in flowing) < LEAST_PSI:
            continue
        theirs_gpm = epanet.flows_gpm(layout, pump_psi, folder)
        assert [told["id"] for told in flowing] == list(theirs_gpm)
        if made is random_network:
            loops = [told for told in report["lines"] if told["into"] and not told["shut"]]
            if not loops:
                continue
            found["most_loops"] = max(found.get("most_loops", 0), len(loops))
            found["beside"] = found.get("beside", 0) + sum(told["into"].rpartition(".")[0] == told["id"].rpartition(".")[0] for told in loops)
            found["back"] = found.get("back", 0) + sum(told["flow_gpm"] < -0.1 for told in report["lines"])
        found["trees"] += 1
        found["points"] += len(flowing)
        found["shut"] += len(nozzles) - len(flowing)
        found["deepest"] = max(found["deepest"], *(told["id"].count(".") + 1 for told in flowing))
        found["most_nozzles"] = max(found["most_nozzles"], len(flowing))
        found["worst"] = max(found["worst"], *(abs(told["nozzle"]["flow_gpm"] / theirs_gpm[told["id"]] - 1) for told in flowing))


def test_flows_agree_with_epanet(run, python, tmp_path):
    """On hundreds of random trees every nozzle's flow is EPANET's to a tenth of a per cent, as the site says."""
    pytest.importorskip("wntr")
    found = comparison(run, tmp_path, TREES[python])
    print(found)
    assert found["worst"] < LIMIT
    assert (found["trees"], found["deepest"], found["most_nozzles"]) == (TREES[python], DEEPEST, MOST_NOZZLES)
    assert kept.is_fresh("epanet", python, found)


def test_flows_in_loops_agree_with_epanet(run, python, tmp_path):
    """The same where lines come in at the end of others, beside unlike hose or from another joint, and water may run either way in them."""
    pytest.importorskip("wntr")
    found = comparison(run, tmp_path, TREES[python], random_network)
    print(found)
    assert found["worst"] < LIMIT
    assert (found["trees"], found["deepest"], found["most_nozzles"], found["most_loops"]) == (TREES[python], DEEPEST, MOST_NOZZLES, MOST_LOOPS)
    assert found["beside"] > TREES[python] / 2 and found["back"] > TREES[python] / 20
    assert kept.is_fresh("loops", python, found)
