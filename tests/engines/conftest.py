"""Phones with other engines than Chromium; where one is not installed its tests are skipped, or with ENGINES=required fail."""
import os

import pytest

from tests.engines.engines import ENGINES, Missing
from tests.engines.phone import Phone
from tests.phone.handset import Host
from tests.site.conftest import built  # noqa: F401  the same built site


@pytest.fixture(scope="session", params=ENGINES)
def away(request, built, tmp_path_factory):  # noqa: F811
    """A phone of each engine that installed the site, and has then lost the host."""
    try:
        with ENGINES[request.param](tmp_path_factory.mktemp(request.param)) as driver:
            phone = Phone(driver, Host(built))
            phone.open("all/")
            phone.told_ready = phone.wait(lambda: phone.text("#readiness[data-state=yes]"), patience_s=120)
            phone.host.stop()
            yield phone
    except Missing as missing:
        told = f"{request.param} was NOT tested: it needs {missing}"
        if os.environ.get("ENGINES") == "required":
            pytest.fail(told)
        pytest.skip(told)
