"""Cells of the CSV files: nothing that a spreadsheet would run, wherever it begins a cell of its own; numbers stay numbers."""
import json
import subprocess

import pytest

from tests.conftest import ROOT, node

SCRIPT = "import { cell } from %s; process.stdout.write(JSON.stringify(cell(JSON.parse(process.argv[1]))));"


@pytest.mark.parametrize(
    ("text", "written"),
    [  # by hand: quoted where RFC 4180 asks for it; a mark before whatever starts a formula
        ("plain", "plain"), ("a=b", "a=b"), ("-5", "-5"), ("-5,2", '"-5,2"'), ("=1+1", '"\'=1+1"'), (" +1", '"\' +1"'), ("\t=1", '"\'\t=1"'), ("\uff1d1", '"\'\uff1d1"'),
        ("\uff20A1", '"\'\uff20A1"'), ("a;=1+1", '"a;\'=1+1"'), ("x\n=2", '"x\n\'=2"'), ("x\t@y", '"x\t\'@y"'), ('say "a"', '"say ""a"""'), (None, ""),
    ],
)
def test_a_cell_is_only_text(text, written):
    source = SCRIPT % json.dumps((ROOT / "site_src" / "static" / "js" / "shared" / "cell.js").as_uri())
    run = subprocess.run([node(), "--input-type=module", "-e", source, "--", json.dumps(text)], capture_output=True, encoding="utf-8", check=True)
    assert json.loads(run.stdout) == written
