"""A hundred thousand layouts that nobody means: each gives an answer of plain finite numbers or a CalcError, never else.

    python tests/bench/hostile.py [COUNT [SEED]]          prints how many of each, and the slowest
"""
import collections
import json
import math
import pathlib
import random
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from calc.base.errors import CalcError
from calc.layout import pressure

NUMBERS = (0, -0.0, 1, -1, 1e-9, 1e-10, 1e-300, 5e-324, 1e7, -1e7, 1e8, 1e300, 10**400, True, False, None, "2", "", [], {}, [2])
NOT_JSON = (math.nan, math.inf, -math.inf)
ENDS = {
    "smooth": {"tip_in": 1, "nozzle_psi": 50},
    "fog": {"rated_gpm": 150, "rated_psi": 100},
    "selectable": {"settings_gpm": [95, 125], "set_gpm": 125, "rated_psi": 100},
    "automatic": {"min_gpm": 60, "max_gpm": 200, "rated_psi": 100},
    "open": {"pressure_psi": 20, "flow_gpm": 500},
}


def hostile(chance, is_json):
    """A layout drawn to hurt, and a pump pressure. Not is_json adds what JSON cannot carry: NaN, cycles."""
    wild = NUMBERS if is_json else NUMBERS + NOT_JSON
    madness = chance.choice((0, 0, 0.02, 0.1, 0.4))
    made = []

    def number(sane):
        return chance.choice(wild) if chance.random() < madness else sane

    def extreme():
        return chance.choice((1e-9, 1e-6, 1e-3, 1, 100, 1e4, 1e7)) if chance.random() < 0.2 else chance.uniform(0.05, 300)

    def end(depth):
        shape = chance.random()
        if depth and shape < 0.5:
            return {"lines": lines(depth - 1)}
        if shape < 0.5 + madness / 4:
            if made and not is_json:
                return {"lines": [chance.choice(made)]}  # a cycle, or a branch that joins again
            return chance.choice((None, [], {}, {"kind": ["fog"]}, {"kind": "hydrant"}, {"lines": []}, {"lines": "none"}))
        kind = chance.choice(list(ENDS))
        told = {"kind": kind}
        for name, sane in ENDS[kind].items():
            if chance.random() > madness / 4:
                told[name] = sane if name in ("settings_gpm", "set_gpm", "min_gpm", "max_gpm") else number(extreme())
        return told

    def lines(depth):
        found = []
        for _ in range(chance.choice((1, 1, 2, 3)) if chance.random() > madness / 8 else chance.choice((0, 1000))):
            line = {"coefficient": number(extreme()), "length_ft": number(chance.choice((0, 1, extreme())))}
            made.append(line)
            for name, value in (("rise_ft", chance.uniform(-100, 300)), ("parallel", chance.choice((1, 2, 12))), ("bore_in", extreme()),
                                ("appliance_psi", 25), ("gate_psi", 10), ("shut", chance.random() < 0.2)):
                if chance.random() < 0.3:
                    line[name] = number(value)
            if chance.random() < madness / 4:
                line["id"] = chance.choice(("A", "1", "", 7, None))
            line["end"] = end(depth)
            found.append(line)
            if len(made) > 60:
                return found
        return found

    layout = {"lines": lines(chance.choice((1, 2, 6)))}
    if chance.random() < 0.003:
        for _ in range(20 if is_json else chance.choice((400, 1000))):  # past recursion
            layout = {"lines": [{"coefficient": 2, "length_ft": 10, "end": layout}]}
    return layout, number(chance.choice((0, 1e-6, 150, 300, 1e7)))


def finite(told):
    """Whether every number of an answer is a plain finite one."""
    if isinstance(told, dict):
        told = list(told.values())
    if isinstance(told, (list, tuple)):
        return all(finite(each) for each in told)
    return not isinstance(told, float) or math.isfinite(told)


def outcome(ask):
    """"answer", or the field and code of the refusal; what is neither raises."""
    try:
        told = ask()
    except CalcError as error:
        return error.field + " " + error.code
    assert finite(told), told
    return "answer"


def main(count, seed):
    outcomes, slowest_s = collections.Counter(), 0
    for number in range(count):
        chance = random.Random(seed + number)
        layout, psi = hostile(chance, is_json=False)
        for ask in (lambda: pressure.discharge_pressure(layout), lambda: pressure.flows(layout, psi)):
            start = time.perf_counter()
            try:
                outcomes[outcome(ask)] += 1
            except Exception:
                print("seed", seed + number, json.dumps(layout, default=str, skipkeys=True)[:400])
                raise
            slowest_s = max(slowest_s, time.perf_counter() - start)
    print(f"{count} layouts, two questions each, slowest {slowest_s * 1000:.0f} ms")
    for told, times in outcomes.most_common():
        print(f"{times:9} {told}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100_000, int(sys.argv[2]) if len(sys.argv) > 2 else 0)
