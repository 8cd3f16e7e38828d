"""The phone's scripts as TypeScript's compiler reads them: no name that an object lacks, no argument that a function does not take,
and of each door of calc what its contract says.

`types/` has what the compiler cannot find out: its settings, what vendored modules export, and what the pages hold.
"""
import os
import pathlib
import shutil
import subprocess

import pytest

from tests.site.compiler import VERSION, Missing, compiler, fetched
from tests.site.doors import declarations

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
    shutil.copytree(SOURCES / "worker", tmp_path / "worker")
    (tmp_path / "doors.d.ts").write_text(declarations(), encoding="utf-8")
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


WRONG = {  # by script, what is said of it
    'import { isUnfolded } from "./shared/fold.js";\n["a", "b"].filter(isUnfolded);': "No overload matches",  # a place taken for `begins`
    'import { figureView } from "./shared/figure.js";\nfigureView({ figure: "12" });': "'figure' does not exist",
    'import { fill } from "./shared/site.js";\nfill("a {name}", { name: "b" }, 3);': "arguments, but got 3",
    'import { generate } from "../vendor/lean-qr/index.mjs";\ngenerate("a link").width;': "'width' does not exist",
    "export class Run {\n  ended = null;\n}\nnew Run().ended_at;": "'ended_at' does not exist",
    'export const input = document.querySelector("#page input").check;': "'check' does not exist",
    **{f'import {{ calc }} from "./shared/engine.js";\nconst units = {{ shown: "US", systems: {{}} }};\n{question};': fault for question, fault in [
        ('calc.ask("pump_size.sizes", { rated: "1000@US", units })', "not assignable to parameter of type 'keyof Doors'"),
        ('calc.ask("pump_size.size", { rating: "1000@US", units })', "'rating' does not exist"),
        ('calc.ask("pump_size.size", { rated: "1000@US" })', "is missing in type"),
        ('calc.ask("pump_size.size", { rated: 1000 }, { units })', "'number' is not assignable to type 'string'"),
        ('calc.ask("pump_size.size", { rated: "1000@US", units }, { units })', "'units' does not exist"),
        ('calc.ask("pump_size.size", { rated: "1000@US" }, { units, rig: {} })', "to type 'never'"),
        ('calc.ask("pump_size.size", { rated: "1000@US" }, { units: "US" })', "'string' is not assignable to type"),
        ('(await calc.ask("pump_size.size", { rated: "1000@US" }, { units })).length_ft', "'length_ft' does not exist"),
    ]},
}


def test_a_fault_is_seen(tsc, folder):
    """A name that an object or an answer lacks, an argument that is missing, one too many or of another kind, a door that is none: each is
    named at its place, and nothing else is."""
    for number, script in enumerate(WRONG):
        (folder / f"js/wrong_{number}.js").write_text(script, encoding="utf-8")
    found = [line for line in faults(tsc, folder) if line.startswith("js/wrong_")]
    assert len(found) == len(WRONG)
    for number, (script, fault) in enumerate(WRONG.items()):
        [line] = [line for line in found if line.startswith(f"js/wrong_{number}.js({len(script.splitlines())},")]
        assert fault in line


def test_the_worker_is_no_page(tsc, folder):
    """The service worker is read with what a worker has, and no more."""
    with (folder / "worker/worker.js").open("a", encoding="utf-8") as worker:
        worker.write("self.skip();\ndocument.title;\n")
    found = faults(tsc, folder, "worker.json")
    assert any("'skip' does not exist" in line for line in found) and any("'document'" in line for line in found)


def test_another_compiler_is_not_run(tmp_path, monkeypatch):
    """What a registry has is run only where it is what the digest says; where none can be reached that is said."""
    monkeypatch.setenv("npm_config_registry", tmp_path.as_uri())
    with pytest.raises(Missing, match="cannot be reached"):
        fetched("linux-x64")
    packed = tmp_path / f"@typescript/typescript-linux-x64/-/typescript-linux-x64-{VERSION}.tgz"
    packed.parent.mkdir(parents=True)
    packed.write_bytes(b"another")
    with pytest.raises(AssertionError, match="is not what it was"):
        fetched("linux-x64")
