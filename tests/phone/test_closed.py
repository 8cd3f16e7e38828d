"""A phone that has the site when it closes: it shows that, and no figure, with a signal and without; its entries can be saved."""
import json
import shutil

import build
import pytest
from playwright.sync_api import expect

from tests import service_records
from tests.phone.handset import Handset, Host
from tests.phone.store import put_test
from tests.phone.test_update import OUTCOME

OTHER = "files https://elsewhere.example/"  # of another site of the same origin


@pytest.fixture
def host(built, tmp_path):
    serving = Host(shutil.copytree(built, tmp_path / "dist"))
    yield serving
    serving.stop()


def closed(page):
    expect(page.get_by_role("heading", name="This site is closed")).to_be_visible()
    return page


def test_a_site_that_closes(browser, host):
    """It waits for its turn as a version does; then its files go, of this site alone, and every address leads to the closed page."""
    handset, record = Handset(browser, host, worker=True), service_records.a_record()
    page = handset.install()
    page.evaluate("(name) => caches.open(name)", OTHER)
    put_test(handset, record)
    build.close(host.dist)
    assert page.evaluate(OUTCOME) == "installed"
    page.close()
    for _ in range(20):  # until the old worker let go
        page = handset.open("pressure/")
        if page.get_by_role("heading", name="This site is closed").count():
            break
        page.close()
    assert set(closed(page).evaluate("caches.keys()")) == {f"closed {host.origin}", OTHER}
    assert page.evaluate("scrollX + document.documentElement.scrollWidth") <= 360
    handset.lose_signal()
    page = closed(handset.open("fr/test/"))
    with page.expect_download() as saving:
        page.get_by_role("button", name="Save my entries as a file").click()
    assert json.loads(saving.value.path().read_text(encoding="utf-8"))["tests"] == {record["id"]: record}
    expect(page.get_by_role("status")).to_have_text("Saved: 1 entries.")
    handset.close()
