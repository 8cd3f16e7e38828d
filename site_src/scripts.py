"""Which modules a page's script pulls in, so that the page can ask for all of them at once."""
import functools
import pathlib
import re

STATIC = pathlib.Path(__file__).parent / "static"
IMPORT = re.compile(r'^(?:import|export)\b[^;]*?from "(\.[^"]+)"', re.MULTILINE)


@functools.cache
def modules(entry):
    """Paths below static/ of a script and every module it imports, each once, the script first.

    entry: path below static/, such as "js/pages/pressure.js"
    """
    found = []
    pending = [STATIC / entry]
    while pending:
        path = pending.pop()
        name = path.relative_to(STATIC).as_posix()
        if name not in found:
            found.append(name)
            pending.extend((path.parent / target).resolve() for target in IMPORT.findall(path.read_text(encoding="utf-8")))
    return found
