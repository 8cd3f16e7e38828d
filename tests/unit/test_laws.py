"""The laws of calc: what every module and every public function there must keep."""
import ast
import importlib
import inspect
import math
import pathlib
import re

import pytest

import calc
from calc.errors import CalcError

FILES = sorted(pathlib.Path(calc.__file__).parent.glob("*.py"))
MODULES = {path.stem: importlib.import_module(f"calc.{path.stem}") for path in FILES if path.stem != "__init__"}
OUTSIDE = {"math", "json", "collections"}
# from the ground up; a module imports only from the floors below its own
FLOORS = (
    {"errors"},
    {"rounding", "water"},
    {"hose", "nozzle", "display", "tree", "air", "pump", "driveline", "heat"},
    {"outlet", "rule", "surge", "speed"},
    {"lines", "shelf"},
    {"layout", "entry", "sequence", "caution", "draft", "supply", "foam", "powertrain"},
    {"heights"},
    {"rig_fields"},
    {"lay", "course", "primer", "rig", "measure", "readout", "hydrant", "relay", "shuttle", "speeds", "warming", "practice", "fault", "collar",
     "interlock", "gauges", "halt", "away", "pace"},
    {"offering", "rerun"},
    {"reading", "shift", "hydrant_reading", "tank_reading", "draft_reading", "relay_reading", "joint_reading", "shuttle_reading",
     "foam_reading", "leak"},
    {"flowing", "at_pump", "bounds", "panel_card", "rig_figures"},
    {"uncertainty", "service_bounds", "service_runs", "service_signs", "service_years", "service_due"},
    {"service_entry"},
    {"service_plan", "service_judge", "service_quick", "service_curve"},
    {"service_verdict", "service_start"},
    {"service_test"},
    {"service_page"},
    {"service_history", "service_bay"},
    {"service_file"},
    {"phone"},
)
UNIT = re.compile(r"_(psi|gpm|ft|in|gal|lbf|f|ft_per_s|lb_per_ft3)$")
PURE = {"coefficient", "coefficients", "discharge_coefficient"}  # pure numbers, as their docstrings say
FUNCTIONS = {
    f"{name}.{function.__name__}": function
    for name, module in MODULES.items()
    for function in vars(module).values()
    if inspect.isfunction(function) and function.__module__ == module.__name__ and function.__name__[0] != "_"
}
FORMULAS = {name: function for name, function in FUNCTIONS.items() if name.split(".")[0] in ("hose", "nozzle", "water")}
# a value that every formula takes for an argument of this name
GOOD = {
    "coefficient": 15.5, "discharge_coefficient": 0.9, "flow_gpm": 150, "length_ft": 200, "loss_psi": 60,
    "bore_in": 2.5, "tip_in": 1, "nozzle_psi": 50, "rated_gpm": 150, "rated_psi": 100, "pitot_psi": 40,
    "rise_ft": 20, "pressure_psi": 100, "test_psi": 300, "water_f": 60, "coefficients": [2, 2],
}
NUMBERS = [
    (name, argument)
    for name, function in FORMULAS.items()
    for argument in inspect.signature(function).parameters
    if argument != "coefficients"
]


def imported(path):
    """Dotted names of all that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        if isinstance(node, ast.ImportFrom):
            yield from ([node.module] if node.module != "calc" else [f"calc.{alias.name}" for alias in node.names])


@pytest.mark.parametrize("name", FUNCTIONS)
def test_docstring(name):
    """A public function says what it is, names each argument, and tells what it raises and its source."""
    contract = inspect.getdoc(FUNCTIONS[name])
    assert contract, "no docstring"
    for argument in inspect.signature(FUNCTIONS[name]).parameters:
        assert re.search(rf"^[a-z_, ]*\b{argument}\b[a-z_, ]*: ", contract, re.MULTILINE), argument
    assert re.search(r"\bRaises (nothing|CalcError)\b", contract)
    assert re.search(r"\bSource: \S", contract)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_module(path):
    """A file of calc says what it is and stays within 300 lines."""
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 300


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_imports(path):
    """Calc imports nothing but itself, from floors below, and what both Pythons have."""
    below = set()
    for floor in FLOORS:
        if path.stem in floor:
            break
        below |= floor
    for name in imported(path):
        package, _, module = name.partition(".")
        assert name in OUTSIDE or (package == "calc" and module in below), name


def test_floors():
    """Every module of calc has one floor."""
    assert sorted(name for floor in FLOORS for name in floor) == sorted(MODULES)


@pytest.mark.parametrize("name", FORMULAS)
def test_units_in_names(name):
    """A formula and each of its arguments end in their unit, but for pure numbers."""
    answer = name.split(".")[1]
    assert UNIT.search(answer) or "coefficient" in answer
    for argument in inspect.signature(FORMULAS[name]).parameters:
        assert UNIT.search(argument) or argument in PURE


@pytest.mark.parametrize(("name", "argument"), NUMBERS)
def test_no_number(run, name, argument):
    """Every argument of every formula refuses what is no number, or none of this world, by its own name."""
    module, function = name.split(".")
    good = {each: GOOD[each] for each in inspect.signature(FORMULAS[name]).parameters}
    assert run(module, function, **good) > 0
    bad = [(value, "not_a_number") for value in ("150", "", True, False, None, [150], {})]
    bad += [(value, "too_large") for value in (1e8, -1e8, 1e300, 10**40, -(10**400))]
    for value, code in bad:
        with pytest.raises(CalcError) as refusal:
            run(module, function, **{**good, argument: value})
        assert (refusal.value.field, refusal.value.code) == (argument, code), value


@pytest.mark.parametrize(("name", "argument"), NUMBERS)
@pytest.mark.parametrize(
    ("value", "code"), [(math.nan, "not_a_number"), (math.inf, "too_large"), (-math.inf, "too_large")])
def test_not_finite(name, argument, value, code):
    """What is not finite is refused too; it cannot be written as JSON, so on the desk only."""
    good = {each: GOOD[each] for each in inspect.signature(FORMULAS[name]).parameters}
    with pytest.raises(CalcError) as refusal:
        FORMULAS[name](**{**good, argument: value})
    assert (refusal.value.field, refusal.value.code) == (argument, code)
