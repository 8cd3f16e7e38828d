"""What scripts make of plain data, module by module: every test of tests/scripts/*.test.js."""
import re

import pytest

from tests import scripts


@pytest.mark.parametrize("path", scripts.TESTS, ids=lambda path: path.name)
def test_alone(path):
    """Every test of the file passes, and there are some."""
    done = scripts.run(path)
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    assert int(re.search(r"^ (\d+) pass$", said, re.MULTILINE)[1]) > 0
    assert "(todo)" not in said and "(skip)" not in said
