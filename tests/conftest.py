"""The two Pythons every calculation test runs on."""
import json
import pathlib
import subprocess
import tempfile

import pytest

from calc.base.errors import CalcError
from site_src import compiled
from tests import bridge, contracts
from tests.sampling import pytest_collection_modifyitems, pytest_configure, pytest_terminal_summary  # noqa: F401  hooks of pytest

ROOT = pathlib.Path(__file__).resolve().parent.parent


def _unpacked(answer):
    told = json.loads(answer)
    if "bug" in told:
        raise AssertionError(told["bug"])
    if "refused" in told:
        refused = told["refused"]
        raise CalcError(refused["field"], refused["code"], **refused["facts"])
    return told["ok"]


class Phone:
    """The phone's interpreter, with calc as the phone has it, in a node process that reads and writes JSON lines."""

    def __init__(self):
        self.packed = tempfile.NamedTemporaryFile()
        self.packed.write(compiled.packed())
        self.packed.flush()
        self.process = subprocess.Popen(
            [node(), ROOT / "tests" / "micropython.mjs", self.packed.name],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8",
        )

    def call(self, request):
        self.process.stdin.write(request + "\n")
        self.process.stdin.flush()
        return self.process.stdout.readline()

    def close(self):
        self.process.stdin.close()
        self.process.wait()
        self.packed.close()


def node():
    """The node that Playwright carries."""
    import playwright

    return pathlib.Path(playwright.__file__).parent / "driver" / "node"


@pytest.fixture(scope="session")
def phone():
    process = Phone()
    yield process
    process.close()


def runner(call):
    """run(module, function, **arguments) by way of a bridge that takes JSON and gives JSON.

    What is answered is held to the contracts of its door; run.unheld is the same for what no page would ever send.
    """
    def unheld(module, function, **arguments):
        return _unpacked(call(json.dumps({"module": module, "function": function, "arguments": arguments})))

    def run(module, function, **arguments):
        answer = unheld(module, function, **arguments)
        drifts = contracts.drifts_of_call(module, function, arguments, answer)
        assert not drifts, "\n".join(drifts)
        return answer

    run.unheld = unheld
    return run


@pytest.fixture(scope="session", params=["cpython", "micropython"])
def run(request):
    """Call a function of calc on one of the two Pythons, through JSON: run(module, function, **arguments)."""
    return runner(bridge.call if request.param == "cpython" else request.getfixturevalue("phone").call)


@pytest.fixture
def python(request):
    """The name of the Python that run calls."""
    return request.node.callspec.params["run"]
