"""The two pieces calc travels in: each module in one of them, and the first whole by itself."""
import json
import subprocess
import sys

import pytest

from calc import phone
from site_src import compiled
from tests.conftest import ROOT

# Imports a module where nothing but the modules named can be.
ALONE = """
import importlib, sys
class Only:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] == "calc" and name not in named:
            raise ImportError("no module named " + name)
name, *named = sys.argv[1:]
sys.meta_path.insert(0, Only())
importlib.import_module(name)
"""


def names(is_first):
    listed = json.loads(compiled.packed(is_first).partition(b"\n")[0])
    return {"calc." + name.removesuffix(".mpy").removesuffix("__init__").replace("/", ".").strip(".") for name, _ in listed}


def test_each_module_is_in_one_piece():
    assert names(True) | names(False) == names(None) and not names(True) & names(False)
    assert len(compiled.packed(True)) < len(compiled.packed(None)) / 3  # or there is no gain in two


@pytest.mark.parametrize("module", [f"calc.{name.replace('/', '.')}" for name in compiled.ASKED_FIRST] + ["calc.supply.page"])
def test_the_first_piece_imports_nothing_of_the_rest(module):
    """What a phone asks first runs where the rest is not; a page of the water does not."""
    named = [name.rstrip(".") for name in names(True)]
    ran = subprocess.run([sys.executable, "-c", ALONE, module, *named], cwd=ROOT, capture_output=True, encoding="utf-8")
    assert (ran.returncode == 0) == (module != "calc.supply.page"), ran.stderr


def test_each_door_is_of_one_piece():
    """A door's module is in the first piece, or the interpreter says at once that it lacks it, before anything of it ran."""
    doors = {f"calc.{module}" for module, _ in phone.DOORS.values()}
    assert doors <= names(True) | names(False) and {"calc.layout.page", "calc.rig.beds_page"} <= doors & names(True)
