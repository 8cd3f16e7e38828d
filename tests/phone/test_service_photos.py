"""Photos of a service test: taken on a part, shown on its sheet, carried in its file; and a phone without room loses no reading."""
import json
import random
import struct

import pytest
from playwright.sync_api import expect

from tests import service_records as records
from tests.phone.handset import kill
from tests.phone.proof import FULL, START_MS, T, begun, kept_test, store
from tests.phone.store import do, in_database

WIDE, HIGH = 1600, 1200
PART = "interlock"
NAME = T["photo"]["photo_of"].format(part=T["test_name"][PART])


@pytest.fixture(scope="module")
def noise():
    """A picture that packs worst, of 5.8 MB."""
    head = struct.pack("<2sIHHI", b"BM", 54 + WIDE * HIGH * 3, 0, 0, 54) + struct.pack("<IiiHHIIiiII", 40, WIDE, HIGH, 1, 24, 0, WIDE * HIGH * 3, 2835, 2835, 0, 0)
    return {"name": "gauge.bmp", "mimeType": "image/bmp", "buffer": head + random.Random(1).randbytes(WIDE * HIGH * 3)}


def photographed(handset, picture):
    record = store(handset, begun(records.a_record(), START_MS, ready=("checks_dry",)))
    page = handset.open(f"test/run/#{record['id']}/{PART}")
    page.locator("input[type=file]").set_input_files(picture)
    expect(page.get_by_role("img", name=NAME)).to_have_attribute("data-painted", photo_ids(page)[0])
    return page, record


def photo_ids(page):
    page.locator("canvas[data-photo]").first.wait_for()
    return [canvas.get_attribute("data-photo") for canvas in page.locator("canvas[data-photo]").all()]


def test_a_photo_goes_with_its_test(take, noise, tmp_path):
    """Scaled to 200 kB in a store of its own, on the sheet with its part, in the test's file, and taken in once on another phone; gone with its test."""
    page, record = photographed(take(), noise)
    [photo] = in_database(page, "photos")
    assert (photo["test"], photo["part"]) == (record["id"], PART)
    assert 10_000 < len(photo["picture"]) * 3 / 4 <= 200_100
    assert "photos" not in kept_test(page, record["id"])
    page.goto(page.url.split("test/run/")[0] + f"test/sheet/#{record['id']}")
    expect(page.get_by_role("img", name=NAME)).to_be_visible()
    with page.expect_download() as leaving:
        page.get_by_role("button", name=T["sheet"]["json"]).tap()
    leaving.value.save_as(tmp_path / "test.json")
    assert [each["id"] for each in json.loads((tmp_path / "test.json").read_text(encoding="utf-8"))["photos"]] == [photo["id"]]

    other = take().open("test/")
    for told in (T["years"]["taken_one"], T["years"]["here"].format(count=1)):
        other.locator("input[type=file]").set_input_files(tmp_path / "test.json")
        expect(other.get_by_role("status").filter(has_text=told)).to_be_visible()
    assert in_database(other, "photos") == [photo]
    assert "photos" not in kept_test(other, record["id"])
    other.get_by_role("button", name=T["test"]["remove"]).tap()
    other.get_by_role("button", name=T["test"]["remove_yes"]).tap()
    expect(other.get_by_text(T["test"]["none"])).to_be_visible()
    assert do(other, "keptRecords", "photos") == []


def test_a_full_phone_keeps_its_readings(handset, noise):
    """Without room for a photo that is said above the page, and what is answered before and after it is there when the page comes back."""
    record = store(handset, begun(records.a_record(), START_MS, ready=("checks_dry",)))
    page = handset.open(f"test/run/#{record['id']}/{PART}")
    checks = page.locator("fieldset.check")
    checks.nth(0).locator("label.chip").last.tap()
    page.evaluate(FULL)
    page.locator("input[type=file]").set_input_files(noise)
    expect(page.get_by_role("img", name=NAME)).to_be_visible()
    expect(page.locator("#unkept")).to_be_visible()
    checks.nth(1).locator("label.chip").last.tap()
    kill(page)
    page = handset.open(f"test/run/#{record['id']}/{PART}")
    for place in (0, 1):
        expect(page.locator("fieldset.check").nth(place).locator("input").last).to_be_checked()
    assert in_database(page, "photos") == []
