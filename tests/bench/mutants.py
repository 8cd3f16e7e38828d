"""Break calc on purpose, one small change at a time, and see whether a test notices.

    python tests/bench/mutants.py [MODULE ...]     all of calc, or only these modules, such as: hydraulics.hose shift.card
        --survivors     only what survived the last time
        --tests FILE ...  only these tests, where it is known which ones concern the modules
        --part 2/8      only every eighth mutant, from the second on: a long module a part at a time
        --slowest 2     leave out tests that took more CPU seconds than this (default 2)
        --keep FOLDER   where figures are kept from one run to the next (default: a temporary folder)

mutmut says what to break. It would start pytest anew for each of some ten thousand mutants; here pytest collects once, and
each mutant is a fork of that process in which one function has other code, and only tests that run the changed line are run,
those first that noticed the last changes. All is on CPython: MicroPython runs the same files.
A survivor that no test can notice is listed in mutants.toml with the reason.
"""
import argparse
import collections
import fnmatch
import gc
import json
import os
import pathlib
import signal
import sys
import tempfile
import time
import tomllib

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
os.environ["OPENBLAS_NUM_THREADS"] = "1"  # a fork has no use for threads of its parent

import hypothesis
import pytest

from tests.bench import broken, reach

TESTS = ["tests/unit", "tests/published", "tests/peers"]
EXCUSED = tomllib.loads((pathlib.Path(__file__).parent / "mutants.toml").read_text(encoding="utf-8"))["mutant"]
CPU_SECONDS = 3  # and three times what a test takes unharmed: then it counts as noticed, for it never ends


def options():
    parser = argparse.ArgumentParser()
    parser.add_argument("modules", nargs="*")
    parser.add_argument("--survivors", action="store_true")
    parser.add_argument("--tests", nargs="*", default=TESTS)
    parser.add_argument("--part", default="1/1")
    parser.add_argument("--slowest", type=float, default=2)
    parser.add_argument("--keep", type=pathlib.Path, default=pathlib.Path(tempfile.gettempdir()) / "mutants")
    return parser.parse_args()


def is_excused(mutant):
    """Whether mutants.toml says why nothing can notice this mutant."""
    return any(
        mutant["module"] == row["module"] and fnmatch.fnmatchcase(mutant["name"], row["name"]) for row in EXCUSED
    )


class Breaker:
    """A pytest plugin: in place of running the tests once, run them against every mutant."""

    def __init__(self, options):
        self.options = options
        self.failed = False
        self.killers = collections.defaultdict(list)

    @pytest.hookimpl(trylast=True)
    def pytest_configure(self, config):
        config.pluginmanager.unregister(name="terminalreporter")  # it would tell of every failure

    def pytest_collection_modifyitems(self, items):
        items[:] = [item for item in items if "micropython" not in item.nodeid and "phone" not in item.fixturenames]

    def pytest_runtest_logreport(self, report):
        self.failed = self.failed or report.failed

    def run(self, item, following=None):
        """Whether a test passes."""
        self.failed = False
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
        return not self.failed

    def pytest_runtestloop(self, session):
        self.items = {item.nodeid: item for item in session.items}
        reached = reach.by_line(session.items, self.run, self.options.keep, self.options.slowest)
        gc.freeze()  # so that a fork shares what is there already
        part, parts = [int(number) for number in self.options.part.split("/")]
        names = self.options.modules or sorted(reach.name_of(path) for path in (ROOT / "calc").rglob("[a-z]*.py"))
        for name in names:
            kept = self.options.keep / (name + (f".{part}of{parts}" if parts > 1 else "") + ".json")
            mutants = broken.mutants(name)[part - 1::parts]
            before = {told["name"] for told in json.loads(kept.read_text(encoding="utf-8"))["survived"]} if self.options.survivors else None
            began = time.monotonic()
            unbroken = {"module": name, "function": "nothing", "is_function": False, "apply": lambda: None}
            if self.notices(unbroken, self.tests(unbroken, reached), reached):
                pytest.exit(f"{self.killers['nothing'][:1]} fails with nothing broken: see to that first")
            survived = []
            for mutant in mutants:
                if before is not None and mutant["name"] not in before:
                    continue
                if not self.notices(mutant, self.tests(mutant, reached), reached):
                    survived.append({key: mutant[key] for key in ("module", "name", "line")})
            told = {"mutants": len(mutants), "survived": survived, "seconds": round(time.monotonic() - began)}
            kept.write_text(json.dumps(told, indent=1), encoding="utf-8")
            report(name, told)
        return True

    def tests(self, mutant, reached):
        """The tests that may notice: first those that noticed the last changes near by, then the quick before the slow."""
        names, near = reached.tests(mutant), self.killers[mutant["function"]]
        ordered = [name for name in near if name in names]
        ordered += sorted(names - set(near), key=lambda name: (reached.seconds[name], name))
        return [self.items[name] for name in ordered]

    def put_in_place(self, mutant):
        try:
            mutant["apply"]()
        except Exception:
            os._exit(0 if mutant["is_function"] else 1)  # a module that cannot be imported is noticed by everything

    def notices(self, mutant, tests, reached):
        reading, writing = os.pipe()
        child = os.fork()
        if child == 0:
            gc.disable()
            self.put_in_place(mutant)
            for test, following in zip(tests, tests[1:] + [None]):
                signal.setitimer(signal.ITIMER_VIRTUAL, CPU_SECONDS + 3 * reached.seconds[test.nodeid])  # which kills
                if not self.run(test, following):
                    os.write(writing, test.nodeid.encode())
                    os._exit(1)
            os._exit(0)
        os.close(writing)
        with os.fdopen(reading, "rb") as pipe:
            killer = pipe.read().decode()
        _, status = os.waitpid(child, 0)
        if killer:
            near = self.killers[mutant["function"]]
            if killer in near:
                near.remove(killer)
            near.insert(0, killer)
        return status != 0


def report(name, told):
    unknown = [mutant for mutant in told["survived"] if not is_excused(mutant)]
    share = 100 * (1 - len(told["survived"]) / max(told["mutants"], 1))
    print(f"{name}: {told['mutants']} mutants, {len(told['survived'])} survived ({share:.1f} % noticed), "
          f"{len(unknown)} of them without a reason, {told['seconds']} s", flush=True)
    for mutant in unknown:
        print(f"    {mutant['line']}: {mutant['name']}", flush=True)


if __name__ == "__main__":
    chosen = options()
    chosen.keep.mkdir(parents=True, exist_ok=True)
    os.chdir(ROOT)
    hypothesis.settings.register_profile(
        "mutants", derandomize=True, database=None, deadline=None,
        phases=[hypothesis.Phase.explicit, hypothesis.Phase.generate],  # the first failure will do
    )
    hypothesis.settings.load_profile("mutants")
    sys.exit(pytest.main(["-s", "--assert=plain", "--tb=native", *chosen.tests], plugins=[Breaker(chosen)]))
