"""The same lays given to EPANET, through wntr: square-law hose as minor losses, nozzles as emitters."""
import itertools
import math
import random

import pytest

from calc import layout
from calc.water import PSI_PER_FT

wntr = pytest.importorskip("wntr")

TREES = 500
DEEPEST = 6
MOST_NOZZLES = 30
LEAST_PSI = 2  # a tip that trickles has no figures left in EPANET's single precision; a dry one draws air back in
METRES_PER_PSI = 0.3048 / PSI_PER_FT
CUBIC_METRES_PER_SECOND_PER_GPM = 0.003785411784 / 60
GRAVITY = 8 / (math.pi**2 * 0.02517) * 0.3048  # EPANET writes a minor loss as 0.02517 K Q^2 / d^4, in feet
BORE_M = 1.0  # any bore does: the loss is carried by the minor-loss coefficient


def random_lay(seed):
    """A tree of hose of our own invention, up to six deep, up to thirty nozzles, and a pump pressure that feeds it."""
    chance = random.Random(seed)
    left = [chance.randint(1, MOST_NOZZLES)]

    def line(depth):
        made = {
            "coefficient": chance.choice([0.08, 0.2, 0.8] if depth < 3 else [0.8, 2, 8, 15.5]),
            "length_ft": chance.randint(10, 400),
            "rise_ft": chance.randint(-15, 25),
            "parallel": chance.choice([1, 1, 1, 2]),
        }
        if depth < DEEPEST and left[0] > 1 and chance.random() < 0.6:
            branches = []
            for _ in range(chance.randint(2, 4)):
                if left[0] > 0:
                    branches.append(line(depth + 1))
            made["end"] = {"lines": branches}
        else:
            left[0] -= 1
            made["end"] = {"kind": "fog", "rated_gpm": chance.randint(30, 350), "rated_psi": chance.choice([50, 75, 100])}
        return made

    lines = [line(1)]
    while left[0] > 0 and len(lines) < 4:
        lines.append(line(1))
    return {"lines": lines}, chance.randint(100, 300)


def epanet_network(lay, pump_psi):
    """The lay as EPANET takes it, and the names of its nozzles."""
    network = wntr.network.WaterNetworkModel()
    network.options.hydraulic.accuracy = 1e-9
    network.options.hydraulic.trials = 500
    network.options.hydraulic.emitter_exponent = 0.5
    network.options.time.duration = 0
    network.add_reservoir("pump", base_head=pump_psi * METRES_PER_PSI)
    nozzles = []

    def add(line, name, feeder, height_m):
        outlet_m = height_m + line["rise_ft"] * 0.3048
        loss_per_gpm2 = line["coefficient"] / 1e4 * line["length_ft"] / 100 / line["parallel"] ** 2
        head_per_flow2 = loss_per_gpm2 * METRES_PER_PSI / CUBIC_METRES_PER_SECOND_PER_GPM**2
        minor = head_per_flow2 * math.pi**2 * GRAVITY * BORE_M**4 / 8
        network.add_junction(name, base_demand=0, elevation=outlet_m)
        network.add_pipe(f"p{name}", feeder, name, length=0.001, diameter=BORE_M, roughness=1000, minor_loss=minor)
        end = line["end"]
        if "lines" in end:
            for place, branch in enumerate(end["lines"], 1):
                add(branch, f"{name}.{place}", name, outlet_m)
        else:
            node = network.get_node(name)
            head_m = end["rated_psi"] * METRES_PER_PSI
            node.emitter_coefficient = end["rated_gpm"] * CUBIC_METRES_PER_SECOND_PER_GPM / math.sqrt(head_m)
            nozzles.append(name)

    for place, line in enumerate(lay["lines"], 1):
        add(line, str(place), "pump", 0.0)
    return network, nozzles


def test_flows_agree_with_epanet(tmp_path):
    """On five hundred random trees every nozzle's flow is EPANET's to a tenth of a per cent."""
    compared, trees, worst, most_nozzles = 0, 0, 0, 0
    for seed in itertools.count():
        if trees == TREES:
            break
        lay, pump_psi = random_lay(seed)
        nozzles = [told for told in layout.flows(lay, pump_psi)["lines"] if told["nozzle"]]
        ours = {told["id"]: told["flow_gpm"] for told in nozzles}
        if min(told["outlet_psi"] for told in nozzles) < LEAST_PSI:
            continue
        trees += 1
        most_nozzles = max(most_nozzles, len(nozzles))
        network, names = epanet_network(lay, pump_psi)
        result = wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(tmp_path / "lay"))
        inflows = result.node["demand"].iloc[0]
        for name in names:
            theirs = inflows[name] / CUBIC_METRES_PER_SECOND_PER_GPM
            worst = max(worst, abs(ours[name] / theirs - 1))
            compared += 1
    print(f"{trees} trees, {compared} nozzles compared, up to {most_nozzles} in one, worst deviation {worst:.1e}")
    assert worst < 1e-3
