"""So many steps of the walks of tests/phone/test_claim*.py, from one seed: python tests/bench/claims.py [steps, 100,000 where not said].

Prints what pytest prints, and at the end the steps, the seed and the time. STEPS of each walk are those of its file.
"""
import os
import pathlib
import random
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).parent.parent.parent
STEPS_OF_A_ROUND = 5 * 25 + 10 * 12  # one walk of Pressure, Heat, Speeds, a measured hose and a service test, and one of each water and foam page


def main(steps):
    walks = -(-steps // STEPS_OF_A_ROUND)
    seed = os.environ.get("SEED") or str(random.randrange(1_000_000))
    began = time.monotonic()
    files = sorted(map(str, (ROOT / "tests" / "phone").glob("test_claim*.py")))
    run = subprocess.run([sys.executable, "-m", "pytest", "-q", "-p", "no:xdist", *files], cwd=ROOT,
                         env={**os.environ, "EXHAUSTIVE": "1", "WALKS": str(walks), "SEED": seed})
    print(f"{walks * STEPS_OF_A_ROUND:,} steps in {walks} rounds, SEED={seed}, {time.monotonic() - began:.0f} s, exit {run.returncode}")
    return run.returncode


if __name__ == "__main__":
    raise SystemExit(main(int(sys.argv[1].replace(",", "")) if len(sys.argv) > 1 else 100_000))
