"""What a release is built with is held by digests: every package that the build asks for, and all that those ask for in turn."""
import importlib.metadata
import re
import tomllib

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

import build

LOCK = (build.ROOT / ".release.lock").read_text(encoding="utf-8")
PROJECT = tomllib.loads((build.ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
LINES = [line for line in LOCK.replace("\\\n", "").splitlines() if not line.startswith("#")]
# by name: version and digests of each package, as pip reads them
LOCKED = {
    canonicalize_name(re.match(r"[\w.-]+", line)[0]): (re.search(r"==([^\s;]+)", line)[1], re.findall(r"--hash=sha256:([0-9a-f]{64})\b", line)) for line in LINES
}


def asked_for(requirements):
    """All that some requirements ask for, with what those ask for in turn, on this machine."""
    waiting, seen = [Requirement(each) for each in requirements], {}
    while waiting:
        asked = waiting.pop()
        name = canonicalize_name(asked.name)
        if asked.marker and not asked.marker.evaluate({"extra": ""}):
            continue
        if name not in seen:
            waiting += [Requirement(each) for each in importlib.metadata.requires(name) or []]
        seen.setdefault(name, []).append(asked.specifier)
    return seen


@pytest.mark.parametrize(("name", "specifiers"), sorted(asked_for(PROJECT["dependencies"]).items()))
def test_locked(name, specifiers):
    """It is locked to one version, within what is asked of it, with its digests."""
    version, digests = LOCKED[name]
    assert all(specifier.contains(version) for specifier in specifiers), version
    assert digests


def test_every_line_has_its_digests():
    """No package has a line of two, or one without a digest, which pip would refuse."""
    assert len(LINES) == len(LOCKED) >= 10
    assert all(digests for _, digests in LOCKED.values())
