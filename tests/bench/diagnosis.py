"""Diagnosis by simulation: each cause, opening, rig and role, answered exactly and with noise (see tests/unit/diagnosis/simulation.py).

    python tests/bench/diagnosis.py              prints the figures
    python tests/bench/diagnosis.py --keep       and adds them to history.jsonl
    python tests/bench/diagnosis.py --share 0.1  of a tenth of the cases, drawn by the seed
"""
import argparse
import datetime
import json
import os
import pathlib
import random
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from tests.unit.diagnosis import simulation

HISTORY = pathlib.Path(__file__).with_name("history.jsonl")
GOALS = {
    "exact": {"top-1, %": 97, "top-3, %": 99, "looks, p90": 7},
    "noisy": {"top-3, %": 80, "wrong verdicts, %": 2},
}


def measured(name, cases, noise, seed):
    """The figures of one way to answer, by name."""
    figures = simulation.figures([simulation.run(*case, noise, seed) for case in cases])
    for key, amount in figures.items():
        goal = 0 if key in simulation.NEVER else GOALS[name].get(key)
        print(f"{name} {key}: {amount}" + ("" if goal is None else f" (goal {goal})"))
    return {f"diagnosis {name} {key}": amount for key, amount in figures.items()}


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--keep", action="store_true")
    asked.add_argument("--share", type=float, default=1)
    asked.add_argument("--seed", default="2026")
    asked = asked.parse_args()
    cases = list(simulation.cases())
    random.Random(asked.seed).shuffle(cases)
    cases = cases[:round(asked.share * len(cases))]
    print(f"{len(cases)} cases, seed {asked.seed}")
    figures = {"diagnosis cases": len(cases)}
    for name, noise in (("exact", simulation.EXACT), ("noisy", simulation.NOISY)):
        figures.update(measured(name, cases, noise, asked.seed))
    if asked.keep:
        line = {"at": datetime.date.today().isoformat(), "load": round(os.getloadavg()[0], 1), "cores": os.cpu_count(), **figures}
        with HISTORY.open("a", encoding="utf-8") as file:
            file.write(json.dumps(line) + "\n")


if __name__ == "__main__":
    main()
