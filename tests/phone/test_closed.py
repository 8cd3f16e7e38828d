"""A phone that has the site when it closes: it shows that, and no figure, with a signal and without; its entries can be saved."""
import datetime
import json
import shutil

import build
import pytest
from playwright.sync_api import expect

from site_src.report import pages as report
from tests import service_records
from tests.phone.handset import Handset, Host
from tests.phone.rounds import T
from tests.phone.store import in_database, put, put_test
from tests.phone.test_rig import ENGINE, taken
from tests.phone.test_update import OUTCOME
from tests.unit.bay.logs import defect

OTHER = "files https://elsewhere.example/"  # of another site of the same origin


@pytest.fixture
def host(built, tmp_path):
    serving = Host(shutil.copytree(built, tmp_path / "dist"))
    yield serving
    serving.stop()


def closed(page):
    expect(page.get_by_role("heading", name="This site is closed")).to_be_visible()
    return page


def test_a_site_that_closes(browser, host, built, tmp_path):
    """It waits for its turn as a version does; then its files go, of this site alone, and every address leads to the closed page.

    What its page saves another install of the site reads: the rig, its test with its photo, its log; and so does the report.
    """
    handset, record = Handset(browser, host, worker=True), service_records.a_record()
    page = handset.install()
    page.evaluate("(name) => caches.open(name)", OTHER)
    put_test(handset, record)
    photo = {"id": "p1", "test": record["id"], "part": "capacity", "at_ms": record["begun_ms"], "picture": "data:image/jpeg;base64,AAAA"}
    put(handset, "keepRecord", "photos", photo)
    of_rig = {"rig_id": ENGINE["id"], "rig_name": ENGINE["name"]}
    put(handset, "keepRecord", "rigs", ENGINE)
    put(handset, "keepRecords", "bay", [{**defect("d1"), **of_rig}, {**defect("d2"), "rig_id": "another"}])
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
    file = tmp_path / "entries.json"
    saving.value.save_as(file)
    assert json.loads(file.read_text(encoding="utf-8"))["tests"] == {record["id"]: record}
    expect(page.get_by_role("status")).to_have_text("Saved: 5 entries.")
    handset.close()
    told = report.write(tmp_path, datetime.date(2026, 11, 25))
    assert (told["tests"], told["logs"], told["bad"]) == (1, 2, 0)
    other = Host(built)
    second = Handset(browser, other)
    page = second.open("rig/")
    page.locator("input[type=file]").set_input_files(file)
    taken(page, ENGINE["name"])
    page.goto(f"{other.origin}test/years/")
    page.locator("input[type=file]").set_input_files(file)
    expect(page.get_by_role("article")).to_have_count(1)
    assert in_database(page, "photos") == [photo]
    page.goto(f"{other.origin}checks/log/")
    page.locator("input[type=file]").set_input_files(file)
    expect(page.get_by_role("status").get_by_text(T["log"]["taken"].format(file="entries.json", taken=1, same=0))).to_be_visible()
    assert [row["id"] for row in in_database(page, "bay")] == ["d1"] and in_database(page, "tests")[0]["id"] == record["id"]
    second.close()
    other.stop()
