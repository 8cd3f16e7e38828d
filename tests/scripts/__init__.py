"""The scripts' pure parts by themselves: each *.test.js runs under bun, with no page and no browser."""
import os
import pathlib
import shutil
import subprocess
import sys
import sysconfig

import build

HERE = pathlib.Path(__file__).parent
TESTS = sorted(HERE.glob("*.test.js"))


def bun():
    """The bundler's own runner of tests."""
    return shutil.which("bun", path=sysconfig.get_path("scripts"))


def command(path, *options):
    """What runs a file of tests, in a tree of scripts that stands as this one does; and the environment it takes."""
    return [bun(), "test", "--preload", "./tests/scripts/page.js", *options, f"./tests/scripts/{path.name}"], {**os.environ, "PYTHON": sys.executable, "ROOT": str(build.ROOT)}


def run(path, root=build.ROOT):
    """Run a file of tests: the finished process, with all it said."""
    told, environment = command(path)
    return subprocess.run(told, cwd=root, env=environment, capture_output=True, encoding="utf-8")
