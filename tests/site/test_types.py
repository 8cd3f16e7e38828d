"""The phone's scripts as TypeScript's compiler reads them: no name that an object lacks, no argument that a function does not take.

`types/` has what the compiler cannot find out: its settings, what vendored modules export, and what the pages hold.
"""
import os
import pathlib
import shutil
import subprocess

import pytest

from tests.site.compiler import Missing, compiler

ROOT = pathlib.Path(__file__).resolve().parents[2]
SOURCES = ROOT / "site_src"


@pytest.fixture(scope="module")
def tsc():
    """The compiler; where it cannot be had these tests are skipped, or with TYPES=required fail."""
    try:
        return compiler()
    except Missing as missing:
        reason = f"types were NOT checked: that needs {missing}"
        if os.environ.get("TYPES") == "required":
            pytest.fail(reason)
        pytest.skip(reason)


@pytest.fixture
def folder(tmp_path):
    """A copy of the scripts, with the types they are read by: vendored modules are there as declarations alone."""
    shutil.copytree(ROOT / "tests/site/types", tmp_path, dirs_exist_ok=True)
    shutil.copytree(SOURCES / "static/js", tmp_path / "js")
    shutil.copy(SOURCES / "sw.js", tmp_path)
    return tmp_path


def faults(tsc, folder, project="tsconfig.json"):
    """What the compiler finds, a line each."""
    read = subprocess.run([tsc, "-p", project, "--pretty", "false"], cwd=folder, capture_output=True, encoding="utf-8")
    assert read.returncode in (0, 1, 2) and not read.stderr, read.stdout + read.stderr
    assert bool(read.returncode) == bool(read.stdout), read.stdout
    return read.stdout.splitlines()


def test_no_script_has_a_fault(tsc, folder):
    """Each script of a page passes, and the service worker."""
    assert faults(tsc, folder) == []
    assert faults(tsc, folder, "worker.json") == []


@pytest.mark.parametrize(
    ("script", "fault"),
    [
        ('import { isUnfolded } from "./shared/fold.js";\n["a", "b"].filter(isUnfolded);', "No overload matches"),  # a place taken for `begins`
        ('import { figureView } from "./shared/figure.js";\nfigureView({ figure: "12" });', "'figure'"),
        ('import { fill } from "./shared/site.js";\nfill("a {name}", { name: "b" }, 3);', "arguments, but got 3"),
        ('import { generate } from "../vendor/lean-qr/index.mjs";\ngenerate("a link").width;', "'width' does not exist"),
        ("class Run {\n  ended = null;\n}\nnew Run().ended_at;", "'ended_at' does not exist"),
        ('document.querySelector("#page input").check = true;', "'check' does not exist"),
    ],
)
def test_a_fault_is_seen(tsc, folder, script, fault):
    """A name that an object lacks, an argument that is one too many or of another kind: each is named at its place."""
    (folder / "js/wrong.js").write_text(script, encoding="utf-8")
    assert any(line.startswith("js/wrong.js(") and fault in line for line in faults(tsc, folder))


def test_the_worker_is_no_page(tsc, folder):
    """The service worker is read with what a worker has, and no more."""
    with (folder / "sw.js").open("a", encoding="utf-8") as worker:
        worker.write("self.skip();\ndocument.title;\n")
    found = faults(tsc, folder, "worker.json")
    assert any("'skip' does not exist" in line for line in found) and any("'document'" in line for line in found)
