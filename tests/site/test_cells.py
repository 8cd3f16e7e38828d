"""Cells of the CSV files: nothing that a spreadsheet would run, wherever it begins a cell of its own; numbers stay numbers."""
import csv
import json
import subprocess

import pytest

from tests.conftest import ROOT, node

SCRIPT = "import { cell } from %s; process.stdout.write(JSON.stringify(cell(JSON.parse(process.argv[1]))));"


@pytest.mark.parametrize(
    ("text", "written"),
    [  # by hand: quoted where RFC 4180 asks for it; a mark before whatever starts a formula
        ("plain", "plain"), ("a=b", "a=b"), ("-5", "-5"), ("-5,2", '"-5,2"'), ("=1+1", '"\'=1+1"'), (" +1", '"\' +1"'), ("\t=1", '"\'\t\'=1"'), ("\uff1d1", '"\'\uff1d1"'),
        ("\uff20A1", '"\'\uff20A1"'), ("a;=1+1", '"a;\'=1+1"'), ("x\n=2", '"x\n\'=2"'), ("x\t@y", '"x\t\'@y"'), ("a\tb", '"a\tb"'), ('say "a"', '"say ""a"""'), (None, ""),
    ],
)
def test_a_cell_is_only_text(text, written):
    source = SCRIPT % json.dumps((ROOT / "site_src" / "static" / "js" / "shared" / "cell.js").as_uri())
    run = subprocess.run([node(), "--input-type=module", "-e", source, "--", json.dumps(text)], capture_output=True, encoding="utf-8", check=True)
    assert json.loads(run.stdout) == written


TRIGGERS = ("=1+1", "+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", " =1", "a;=1+1", "a\t@b", "a\n-c", 'a";=1', 'x,=1+1', '"=1"', "\uff1d1", "a;\"=1")
STARTS = "=+-@\t\r\uff1d\uff0b\uff0d\uff20"  # what a cell begins with that a spreadsheet may run (OWASP, CSV injection)


@pytest.mark.parametrize("written", [",", ";"])
@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_no_locale_makes_a_formula(written, mark):
    """A file parted by commas, or a French one by semicolons, as a spreadsheet of any country reads it: no cell of its own begins a formula."""
    source = "import { cell } from %s; process.stdout.write(JSON.parse(process.argv[1]).map((text) => [`Capacity`, text, 152].map((each) => cell(each, process.argv[2])).join(process.argv[2])).join('\\r\\n'));"
    source %= json.dumps((ROOT / "site_src" / "static" / "js" / "shared" / "cell.js").as_uri())
    run = subprocess.run([node(), "--input-type=module", "-e", source, "--", json.dumps(TRIGGERS), written], capture_output=True, check=True)
    rows = list(csv.reader(run.stdout.decode("utf-8").splitlines(keepends=True), delimiter=mark))
    cells = [each for row in rows for each in row]
    assert len(rows) >= len(TRIGGERS)
    assert [each for each in cells if each.lstrip(" ")[:1] and each.lstrip(" ")[:1] in STARTS] == []
