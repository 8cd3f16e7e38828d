"""The laws of calc: what every module and every public function there must keep."""
import ast
import importlib
import inspect
import math
import pathlib
import re
import textwrap

import pytest

import calc
from calc.base.errors import CalcError

ROOT = pathlib.Path(calc.__file__).parent
FILES = sorted(ROOT.rglob("*.py"))
# from the ground up; a package imports only from itself and from those above it here
ROOMS = ("base", "hydraulics", "pump", "shift", "supply", "diagnosis", "service", "layout", "rig", "teaching", "bay", "phone")


def dotted(path):
    """The name of a module below calc, such as "hydraulics.hose"."""
    return ".".join(path.relative_to(ROOT).with_suffix("").parts)


MODULES = {dotted(path): importlib.import_module(f"calc.{dotted(path)}") for path in FILES if path.stem != "__init__"}
OUTSIDE = {"math", "json", "collections"}
UNIT = re.compile(r"_(psi|gpm|ft|in|gal|lbf|f|ft_per_s|lb_per_ft3)$")
# a function that gives a quantity by its name, and all of these rooms and modules, the trade's formulas and figures, have a source
QUANTITY = re.compile(r"_(psi|gpm|ft|in|gal|lbf|hp|rpm|mph|inhg|f|s|minutes|percent|ft_per_s|lb_per_ft3|f_per_min)$|coefficient")
TRADE = ("hydraulics", "pump", "supply.fireflow", "supply.foam", "supply.hoselay", "supply.hydrant", "supply.relay", "supply.shuttle", "supply.sources", "service.uncertainty")
SAYS_NOTHING = {"told", "found", "each", "given", "kept", "worked"}  # the noun of the thing says more
PURE = {"coefficient", "coefficients", "discharge_coefficient"}  # pure numbers, as their docstrings say
FUNCTIONS = {
    f"{name}.{function.__name__}": function
    for name, module in MODULES.items()
    for function in vars(module).values()
    if inspect.isfunction(function) and function.__module__ == module.__name__ and function.__name__[0] != "_"
}
FORMULAS = {name: function for name, function in FUNCTIONS.items() if name.rpartition(".")[0] in ("hydraulics.hose", "hydraulics.nozzle", "hydraulics.water")}
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
            is_room = node.module.startswith("calc") and node.module.count(".") < 2
            yield from ([f"{node.module}.{alias.name}" for alias in node.names] if is_room else [node.module])


@pytest.mark.parametrize("name", FUNCTIONS)
def test_docstring(name):
    """A public function says what it is, names each argument and none that it lacks, and says what it raises, not nothing where it does."""
    contract = inspect.getdoc(FUNCTIONS[name])
    assert contract, "no docstring"
    arguments, head = list(inspect.signature(FUNCTIONS[name]).parameters), contract.partition("\n\nReturns")[0]
    for argument in arguments:
        assert re.search(rf"^[a-z_, ]*\b{argument}\b[a-z_, ]*: ", contract, re.MULTILINE), argument
    named = [argument for line in re.findall(r"^([a-z_]+(?:, [a-z_]+)*): ", head, re.MULTILINE) for argument in line.split(", ")]
    assert set(named) <= set(arguments)
    assert re.search(r"\bRaises CalcError\b" if raises_itself(FUNCTIONS[name]) else r"\bRaises (nothing|CalcError)\b", contract)


def raises_itself(function):
    """Whether a function's own lines raise a CalcError that they do not catch."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(function)))
    return any(isinstance(node, ast.Raise) for node in ast.walk(tree)) and not any(isinstance(node, ast.Try) for node in ast.walk(tree))


def has_source(name):
    """Whether a public function must give its source: see TRADE and QUANTITY. One that only checks its input has none."""
    module, _, function = name.rpartition(".")
    is_trade = any(module == place or module.startswith(place + ".") for place in TRADE)
    return not function.startswith("check_") and (is_trade or QUANTITY.search(function) is not None)


@pytest.mark.parametrize("name", FUNCTIONS)
def test_source(name):
    """A formula, figure or rule of the trade gives its source; nothing else says that its source is common practice."""
    contract = " ".join(inspect.getdoc(FUNCTIONS[name]).split())
    if has_source(name):
        assert re.search(r"\bSource: \S", contract)
    else:
        assert not contract.endswith("Source: common practice.")


@pytest.mark.parametrize(("name", "expected"), [
    ("hydraulics.friction_rule.sizes_in", True),  # of a trade room
    ("supply.sources.tank_minutes", True),
    ("service.runs.due_s", True),  # gives seconds
    ("supply.sources.check_flow_test", False),  # refuses, and gives nothing
    ("rig.checks.rows", False),
    ("supply.foam_answer.answer", False),  # a page's answer: its workings name their sources
])
def test_where_a_source_is_due(name, expected):
    """By its room, its module or the unit in its name."""
    assert has_source(name) is expected


@pytest.mark.parametrize("path", FILES, ids=dotted)
def test_module(path):
    """A file of calc says what it is and stays within 250 lines."""
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 250


@pytest.mark.parametrize("path", FILES, ids=dotted)
def test_names(path):
    """What calc names it names by what it is."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = {getattr(node, "id", None), getattr(node, "arg", None), getattr(node, "name", None)} - {None}
        assert not {name.strip("_") for name in names if isinstance(name, str)} & SAYS_NOTHING, node.lineno


@pytest.mark.parametrize("path", FILES, ids=dotted)
def test_no_sort_by_a_key(path):
    """What is ordered by a key is ordered by base.order: the phone's own sort asks the key at each comparison, 60 s for 900 open defects."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in ("sorted", "sort"):
            assert not node.keywords, node.lineno


@pytest.mark.parametrize("path", FILES, ids=dotted)
def test_references(path):
    """Where a file of calc sends its reader, there is something: a module, or a name in one."""
    for place in set(re.findall(r"\bcalc((?:\.[a-z_]+)+)", path.read_text(encoding="utf-8"))):
        module, _, name = place[1:].rpartition(".")
        assert place[1:] in MODULES or place[1:] in ROOMS or hasattr(MODULES.get(module), name), place


@pytest.mark.parametrize("path", sorted((ROOT.parent / "site_src" / "data").rglob("*.toml")), ids=lambda path: path.name)
def test_data_references(path):
    """The module of calc that a file of data names as its reader is there."""
    for place in re.findall(r"\bcalc/([a-z_/]+)\.py", path.read_text(encoding="utf-8")):
        assert place.replace("/", ".") in MODULES, place


@pytest.mark.parametrize("path", FILES, ids=dotted)
def test_imports(path):
    """Calc imports nothing but itself, from its own package and those above it, and what both Pythons have."""
    allowed = ROOMS[:ROOMS.index(dotted(path).split(".")[0]) + 1] if path.stem != "__init__" else ()
    for name in imported(path):
        package, _, module = name.partition(".")
        assert name in OUTSIDE or (package == "calc" and module in MODULES and module.split(".")[0] in allowed), name


def test_no_circle():
    """Within a package, too, no import leads back to where it came from."""
    below = {dotted(path): {name[5:] for name in imported(path) if name.startswith("calc.")} for path in FILES}
    while below:
        free = [name for name, needed in below.items() if not needed & set(below)]
        assert free, sorted(below)
        for name in free:
            del below[name]


def test_rooms():
    """Every package of calc has its place in the order."""
    assert {name.split(".")[0] for name in MODULES} == set(ROOMS)


@pytest.mark.parametrize("name", FORMULAS)
def test_units_in_names(name):
    """A formula and each of its arguments end in their unit, but for pure numbers."""
    answer = name.rpartition(".")[2]
    assert UNIT.search(answer) or "coefficient" in answer
    for argument in inspect.signature(FORMULAS[name]).parameters:
        assert UNIT.search(argument) or argument in PURE


@pytest.mark.parametrize(("name", "argument"), NUMBERS)
def test_no_number(run, name, argument):
    """Every argument of every formula refuses what is no number, or none of this world, by its own name."""
    module, _, function = name.rpartition(".")
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


@pytest.mark.parametrize("path", sorted((ROOT.parent / "tests").rglob("test_*.py")), ids=lambda path: path.stem)
def test_each_test_has_a_name_of_its_own(path):
    """A later test of the same name in a file would take the place of the first, which then never runs."""
    names = [node.name for node in ast.parse(path.read_text(encoding="utf-8")).body if isinstance(node, ast.FunctionDef) and node.name.startswith("test")]
    assert sorted(set(names)) == sorted(names)
