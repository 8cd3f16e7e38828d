"""No text is read or written by the machine's own encoding: every call of the project names one."""
import ast
import re
import subprocess

import pytest

import build

FILES = subprocess.run(["git", "ls-files", "-co", "--exclude-standard", "*.py"], cwd=build.ROOT, capture_output=True, encoding="utf-8").stdout.split("\n")
METHODS = {"read_text": 0, "write_text": 1}  # how many arguments come before the encoding


def careless(source):
    """Lines of a source that read or write text without an encoding."""
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        given = {word.arg: word.value for word in node.keywords}
        if None in given or "encoding" in given:
            continue
        if name in METHODS and len(node.args) <= METHODS[name]:
            yield node.lineno
        if name == "open" and is_text(node, given):
            yield node.lineno
        if any(getattr(given.get(word), "value", None) is True for word in ("text", "universal_newlines")):
            yield node.lineno


def is_text(node, given):
    """Whether an open() is of text: a function's with no b in its mode, a path's with a mode that says so (what else has an open() is no file)."""
    is_function = isinstance(node.func, ast.Name)
    place = 1 if is_function else 0
    mode = given.get("mode") or (node.args[place] if len(node.args) > place else None)
    value = getattr(mode, "value", "" if mode else "r" if is_function else "")
    return re.fullmatch("[rwaxt+]+", str(value)) is not None


@pytest.mark.parametrize("name", [name for name in FILES if name and (build.ROOT / name).exists()])
def test_text_names_its_encoding(name):
    """On a machine that reads files as something else an accent in a rig's name would come out wrong."""
    assert list(careless((build.ROOT / name).read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    ("source", "is_careless"),
    [
        ("p.read_text()", True), ('p.read_text(encoding="utf-8")', False), ('p.read_text("utf-8")', False), ("p.write_text(x)", True),
        ('p.write_text(x, encoding="utf-8")', False), ("open(p)", True), ('open(p, "rb")', False), ('open(p, "w")', True), ('p.open("r")', True),
        ('p.open("rb")', False), ("run(a, text=True)", True), ('run(a, encoding="utf-8")', False), ("p.read_text(**given)", False),
        ('phone.open("rigs/")', False), ("phone.open()", False), ("number(text=text)", False),
    ],
)
def test_a_careless_call_is_seen(source, is_careless):
    assert bool(list(careless(source))) == is_careless
