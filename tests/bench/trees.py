"""How fast a tree of hose is worked out, on both Pythons, beside EPANET run through wntr on the same trees.

    python tests/bench/trees.py          prints the figures, writes a plot of growth to a temporary folder
"""
import json
import math
import pathlib
import statistics
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

import wntr

from calc.layout import pressure
from tests.conftest import Phone
from tests.peers import epanet
from tests.peers.random_layouts import random_layout

FRAME_MS = 1000 / 60
SIZES = (1, 2, 4, 6, 10, 15, 20, 30, 45, 60)
PUMP_PSI = 250
TREES = 5
REPEATS = 3


def a_tree(nozzles, seed):
    """A tree of this many nozzles, wyes of two to four."""
    end = {"kind": "fog", "rated_gpm": 40 + seed % 7 * 10, "rated_psi": 75}
    if nozzles == 1:
        return {"coefficient": 15.5, "length_ft": 50 + seed % 5 * 50, "rise_ft": seed % 9 * 3 - 6, "end": end}
    branches = min(nozzles, 2 + seed % 3)
    shares = [nozzles // branches + (place < nozzles % branches) for place in range(branches)]
    lines = [a_tree(share, seed * 3 + place) for place, share in enumerate(shares)]
    return {"coefficient": 0.08, "length_ft": 20 + seed % 4 * 25, "rise_ft": seed % 5 - 2, "end": {"lines": lines}}


def median_ms(ask):
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        ask()
        times.append((time.perf_counter() - start) * 1000)
    return statistics.median(times)


def both_ways(layout, phone):
    """Milliseconds of discharge_pressure and flows, on the desk and on the phone's interpreter."""
    def on_phone(function, **more):
        request = json.dumps({"module": "layout.pressure", "function": function, "arguments": {"layout": layout, **more}})
        answer = phone.call(request)
        assert '"ok"' in answer, answer[:200]

    return [
        median_ms(lambda: pressure.discharge_pressure(layout)),
        median_ms(lambda: pressure.flows(layout, PUMP_PSI)),
        median_ms(lambda: on_phone("discharge_pressure")),
        median_ms(lambda: on_phone("flows", discharge_psi=PUMP_PSI)),
    ]


def growth(phone):
    """A row of medians for each size."""
    rows = []
    print("nozzles   required    flows   required    flows   (ms; desk, then MicroPython in node with its JSON)")
    for nozzles in SIZES:
        each = [both_ways({"lines": [a_tree(nozzles, seed)]}, phone) for seed in range(1, TREES + 1)]
        row = [statistics.median(column) for column in zip(*each)]
        rows.append(row)
        print(f"{nozzles:7} " + " ".join(f"{ms:9.2f}" for ms in row), flush=True)
    return rows


def slope(rows, column):
    """Of the straight line through the logarithms of size and time, for four nozzles and more: 1 is linear growth."""
    pairs = [(math.log(size), math.log(row[column])) for size, row in zip(SIZES, rows) if size >= 4]
    middle_x, middle_y = (statistics.mean(axis) for axis in zip(*pairs))
    return sum((x - middle_x) * (y - middle_y) for x, y in pairs) / sum((x - middle_x) ** 2 for x, _ in pairs)


def plot(rows):
    """The growth of flows on both Pythons as an SVG file."""
    most_ms = max(row[3] for row in rows)
    drawn = []
    for column, colour in ((1, "#666"), (3, "#000")):
        points = " ".join(f"{40 + size / SIZES[-1] * 540:.1f},{370 - row[column] / most_ms * 340:.1f}" for size, row in zip(SIZES, rows))
        drawn.append(f'<polyline points="{points}" fill="none" stroke="{colour}" stroke-width="2"/>')
    path = pathlib.Path(tempfile.mkdtemp()) / "growth.svg"
    path.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" width="600" height="400"><rect width="600" height="400" fill="#fff"/>{"".join(drawn)}'
                    f'<text x="40" y="20">flows: ms to {most_ms:.0f} by nozzles to {SIZES[-1]}; black MicroPython, grey CPython</text></svg>', encoding="utf-8")
    print("plot:", path)


def against_epanet():
    """Times on the same random trees: ours, EPANET run through wntr's classes (built beforehand), and EPANET alone from its file."""
    ours_ms, theirs_ms, alone_ms = [], [], []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for seed in range(40):
            layout, pump_psi = random_layout(seed)
            alone_ms.append(median_ms(lambda: epanet.flows_gpm(layout, pump_psi, folder)))
            simulator = wntr.sim.EpanetSimulator(wntr.network.WaterNetworkModel(str(folder / "layout.inp")))
            theirs_ms.append(median_ms(lambda: simulator.run_sim(file_prefix=str(folder / "run"))))
            ours_ms.append(median_ms(lambda: pressure.flows(layout, pump_psi)))
    ours, theirs = statistics.median(ours_ms), statistics.median(theirs_ms)
    print(f"40 random trees: flows {ours:.2f} ms, EPANET through wntr {theirs:.1f} ms, {theirs / ours:.0f} times (goal 10); "
          f"EPANET alone, with its file, {statistics.median(alone_ms):.1f} ms")


def main():
    phone = Phone()
    rows = growth(phone)
    phone.close()
    for column, name in ((1, "CPython"), (3, "MicroPython")):
        print(f"flows grow as nozzles to the power {slope(rows, column):.2f} on {name} (1 is linear)")
    six = rows[SIZES.index(6)]
    print(f"6 nozzles on the phone's interpreter: required {six[2]:.1f} ms, flows {six[3]:.1f} ms (one frame is {FRAME_MS:.1f})")
    plot(rows)
    against_epanet()


if __name__ == "__main__":
    main()
