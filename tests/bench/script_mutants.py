"""Break the scripts' pure parts on purpose, one small change at a time, and see whether a test of tests/scripts notices.

    python tests/bench/script_mutants.py [MODULE ...]     all of them, or only these, such as: pressure/layout.js worker/unpacking.js

Stryker says what to break and runs, for each mutant, the tests that import its module; npm fetches it (64 MB, once, into the folder of
temporary files; node 20 or later). Prints each module's mutants and the share that was noticed, and what survived.
"""
import argparse
import collections
import json
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests import scripts

STRYKER = "@stryker-mutator/core@9.6.1"
IMPORT = re.compile(r'from "\.\./\.\./(site_src/[^"]+\.js)"')
BOUND_TO_A_PAGE = {"site_src/static/js/shared/site.js"}  # pageData is most of it
GOAL = 85
NOTICED = {"Killed", "Timeout"}


def subjects():
    """{tests: modules}: modules by the files of tests that import them."""
    tests_of = collections.defaultdict(list)
    for path in scripts.TESTS:
        for module in IMPORT.findall(path.read_text(encoding="utf-8")):
            tests_of[module].append(path)
    groups = collections.defaultdict(list)
    for module in sorted(tests_of.keys() - BOUND_TO_A_PAGE):
        groups[tuple(tests_of[module])].append(module)
    return groups


def stryker():
    """Stryker's own script, fetched where it is not yet there."""
    home = pathlib.Path(tempfile.gettempdir()) / "stryker"
    script = home / "node_modules/@stryker-mutator/core/bin/stryker.js"
    if not script.exists():
        home.mkdir(exist_ok=True)
        subprocess.run(["npm", "install", "--silent", "--prefix", home, STRYKER], check=True)
    return script


def broken(tests, modules, tree):
    """Every mutant of some modules, as (module, line, what it became, how it ended)."""
    commands = [scripts.command(path, "--bail")[0] for path in tests]
    told = commands[0][:-1] + [command[-1] for command in commands]
    settings = {
        "testRunner": "command", "commandRunner": {"command": shlex.join(told)}, "mutate": modules, "reporters": ["json"],
        "jsonReporter": {"fileName": "mutants.json"}, "concurrency": 2, "checkers": [], "allowEmpty": True, "tempDirName": "sandbox",
    }
    (tree / "stryker.json").write_text(json.dumps(settings), encoding="utf-8")
    subprocess.run(["node", stryker(), "run", "stryker.json"], cwd=tree, env=scripts.command(tests[0])[1], check=True, stdout=sys.stderr)
    files = json.loads((tree / "mutants.json").read_text(encoding="utf-8"))["files"]
    return [
        (module, mutant["location"]["start"]["line"], mutant.get("replacement", ""), mutant["status"])
        for module in modules if module in files for mutant in files[module]["mutants"] if mutant["status"] != "Ignored"
    ]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("modules", nargs="*")
    wanted = parser.parse_args().modules
    shares = []
    with tempfile.TemporaryDirectory() as folder:
        tree = pathlib.Path(folder)
        for part in ("site_src/static/js", "site_src/static/vendor", "site_src/worker", "site_src/data/service", "tests/scripts"):
            shutil.copytree(ROOT / part, tree / part)
        for tests, modules in subjects().items():
            chosen = [module for module in modules if not wanted or module.endswith(tuple(wanted))]
            mutants = broken(tests, chosen, tree) if chosen else []
            for module in chosen:
                of = [mutant for mutant in mutants if mutant[0] == module]
                survived = [mutant for mutant in of if mutant[3] not in NOTICED]
                shares.append((len(of), len(of) - len(survived)))
                print(f"{100 * shares[-1][1] / max(shares[-1][0], 1):5.1f} % of {len(of):3} noticed: {module}", flush=True)
                for _, line, became, ended in survived:
                    print(f"        {line}: {' '.join(became.split())[:90] or ended}")
    total, noticed = (sum(column) for column in zip(*shares))
    print(f"{100 * noticed / total:.1f} % of {total} mutants noticed in {len(shares)} modules; goal {GOAL} % in each")


if __name__ == "__main__":
    main()
