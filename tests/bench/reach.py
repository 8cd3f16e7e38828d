"""Which tests run which lines of calc, and how long each takes: measured once for each test file, and kept."""
import hashlib
import os
import pathlib
import pickle
import time

import coverage

ROOT = pathlib.Path(__file__).resolve().parents[2]


def name_of(path):
    """The name of a module below calc, such as "hydraulics.hose"."""
    return ".".join(path.relative_to(ROOT / "calc").with_suffix("").parts)


class Reached:
    """What the measured tests reach."""

    def __init__(self, lines, seconds):
        self.lines = lines  # {(module, line): {test}}
        self.seconds = seconds  # {test: CPU seconds}

    def tests(self, mutant):
        """The tests that run the changed lines; for a value of the module, all that run anything of the module or of a user of it."""
        if not mutant["is_function"]:
            return self._of_users(mutant["module"])
        in_head = mutant["line"] == mutant["first"]  # a default: its line runs once, on import, and works in every call
        return not in_head and self._between(mutant, "line", "end") or self._between(mutant, "first", "last")

    def _between(self, mutant, first, last):
        lines = range(mutant[first], mutant[last] + 1)
        return set().union(*(self.lines.get((mutant["module"], line), set()) for line in lines))

    def _of_users(self, name):
        module = name.split(".")[-1]
        users = {name} | {name_of(path) for path in (ROOT / "calc").rglob("*.py") if module in path.read_text(encoding="utf-8")}
        return set().union(*(tests for (module, _), tests in self.lines.items() if module in users))


def by_line(items, run, folder, slowest):
    """What the tests reach but those that take longer than `slowest` seconds.

    The tests of each file not measured before are run, in a process of its own so that nothing they keep is left behind.
    """
    kept = folder / "reach.pickle"
    calc = _digest(sorted((ROOT / "calc").rglob("*.py")))
    told = pickle.loads(kept.read_bytes()) if kept.exists() else {}
    if told.get("calc") != calc:
        told = {"calc": calc, "files": {}}
    lines, seconds = {}, {}
    for path in sorted({item.path for item in items}):
        digest = _digest([path])
        if told["files"].get(str(path), {}).get("digest") != digest:
            tests = _elsewhere(lambda: _measured([item for item in items if item.path == path], run))
            told["files"][str(path)] = {"digest": digest, "tests": tests}
            kept.write_bytes(pickle.dumps(told))
        for test, (spent, touched) in told["files"][str(path)]["tests"].items():
            if spent > slowest:
                continue
            seconds[test] = spent
            for spot in touched:
                lines.setdefault(spot, set()).add(test)
    return Reached(lines, seconds)


def _digest(paths):
    return hashlib.sha256(b"".join(path.read_bytes() for path in paths)).hexdigest()


def _elsewhere(work):
    """What a piece of work gives, done in a fork."""
    reading, writing = os.pipe()
    if os.fork() == 0:
        with os.fdopen(writing, "wb") as pipe:
            pickle.dump(work(), pipe)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        found = pickle.load(pipe)
    os.wait()
    return found


def _measured(items, run):
    """CPU seconds and lines run, by test that passes."""
    measure = coverage.Coverage(data_file=None, source=["calc"], config_file=False)
    spent = {}
    measure.start()
    for item in items:
        measure.switch_context(item.nodeid)
        began = time.process_time()
        if run(item):
            spent[item.nodeid] = time.process_time() - began
        else:
            print(f"left out, for it fails with nothing broken: {item.nodeid}")
    measure.stop()
    touched = {test: [] for test in spent}
    data = measure.get_data()
    for path in data.measured_files():
        for line, tests in data.contexts_by_lineno(path).items():
            for test in tests:
                if test in touched:
                    touched[test].append((name_of(pathlib.Path(path)), line))
    return {test: (spent[test], touched[test]) for test in spent}
