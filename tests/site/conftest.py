"""The built site, once for all tests of it."""
import pytest

import build


@pytest.fixture(scope="session")
def built(tmp_path_factory):
    """A folder that holds the whole built site; not to be changed."""
    dist = tmp_path_factory.mktemp("built") / "dist"
    build.build(dist=dist)
    return dist
