"""Writes what the site's Evidence page shows, from the checks that the tests make, and the examples that a phone works out by itself.

    python -m tests.evidence          writes site_src/data/evidence.json and examples.json; the same tests fail where they are stale
"""
import json
import pathlib
import tempfile

from tests import bridge, conftest, kept
from tests.peers import test_air_and_water, test_epanet
from tests.peers.random_layouts import random_network
from tests.published import test_examples
from tests.published.measured import test_measured


def found_by(python, run):
    """Every part of the evidence on one of the two Pythons."""
    with tempfile.TemporaryDirectory() as folder:
        layouts, loops = [test_epanet.comparison(run, pathlib.Path(folder), test_epanet.TREES[python], *made) for made in ((), (random_network,))]
    peers = {quantity: test_air_and_water.comparison(run, quantity) for quantity in test_air_and_water.PEERS}
    return {"published": test_examples.by_source(run), "measured": test_measured.bounds(run), "epanet": layouts, "loops": loops, **peers}


def main():
    phone = conftest.Phone()
    found = {python: found_by(python, conftest.runner(call)) for python, call in (("cpython", bridge.call), ("micropython", phone.call))}
    phone.close()
    parts = {part: {python: told[part] for python, told in found.items()} for part in found["cpython"]}
    kept.FILE.write_text(json.dumps(parts, indent=1) + "\n", encoding="utf-8")
    kept.EXAMPLES.write_text("[\n" + ",\n".join(map(json.dumps, test_examples.on_the_phone())) + "\n]\n", encoding="utf-8")
    print(f"Wrote {kept.FILE} and {kept.EXAMPLES}")


if __name__ == "__main__":
    main()
