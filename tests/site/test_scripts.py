"""The phone's scripts as text: no fault that a linter finds. `.oxlintrc.json` says which rules it holds them to."""
import pathlib
import shutil
import subprocess
import sysconfig

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]
LINTER = pathlib.Path(sysconfig.get_path("scripts")) / "oxlint"


def faults(folder, *paths):
    """What the linter finds in files or folders, with the rules that lie there: one line each."""
    linted = subprocess.run([LINTER, "-c", ".oxlintrc.json", "-f", "unix", *paths], cwd=folder, capture_output=True, encoding="utf-8")
    assert linted.returncode in (0, 1), linted.stdout + linted.stderr
    return [line for line in linted.stdout.splitlines() if "[Error/" in line]


@pytest.fixture
def folder(tmp_path):
    """A folder of scripts of its own under the project's rules."""
    shutil.copy(ROOT / ".oxlintrc.json", tmp_path)
    return tmp_path


@pytest.mark.parametrize(
    ("script", "rule"),
    [
        ('import { one } from "./parts.js";\nexport const view = () => html(one);', "no-undef"),
        ('import { one, two } from "./parts.js";\nexport const view = () => one(two);', "named"),
        ('import { one } from "./parts.js";\nexport const view = () => 1;', "no-unused-vars"),
        ('import { back } from "./ring.js";\nexport const there = () => back;', "no-cycle"),
        ("export const same = (a) => a == 1;", "eqeqeq"),
        ("export const twice = { a: 1, a: 2 };", "no-dupe-keys"),
        ("export const ids = (rows) => rows.map((row) => { row.id; });", "array-callback-return"),
    ],
)
def test_a_fault_is_seen(folder, script, rule):
    """A name that is nowhere, an import of what is not exported, a circle of imports: each is named."""
    (folder / "parts.js").write_text("export const one = (x) => x;\n", encoding="utf-8")
    (folder / "ring.js").write_text('import { there } from "./page.js";\nexport const back = () => there;\n', encoding="utf-8")
    (folder / "page.js").write_text(script, encoding="utf-8")
    assert any(f"({rule})" in fault for fault in faults(folder, "."))


def test_the_worker_has_no_page(folder):
    """The service worker's files may not use what only a page has."""
    shutil.copytree(ROOT / "site_src/worker", folder / "site_src/worker")
    with (folder / "site_src/worker/worker.js").open("a", encoding="utf-8") as worker:
        worker.write("document.title;\n")
    assert any("'document' is not defined" in fault for fault in faults(folder, "site_src/worker"))


def test_no_script_has_a_fault():
    """Each script of the phone, and each that a test runs, passes."""
    assert faults(ROOT, "site_src", "tests") == []
