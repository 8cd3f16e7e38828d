"""Photos of a service test: taken on a part, shown on its sheet, carried in its file; and a phone without room loses no reading."""
import base64
import json
import random
import struct

import pytest
from playwright.sync_api import expect

from site_src.report import signed
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


DRAWN = """() => {
  const canvas = Object.assign(document.createElement("canvas"), { width: 40, height: 20 });
  canvas.getContext("2d").fillRect(0, 0, 9, 9);
  return canvas.toDataURL("image/jpeg").split(",")[1];
}"""
SIZE = """async (picture) => {
  const bitmap = await createImageBitmap(new Blob([Uint8Array.from(atob(picture.split(",")[1]), (letter) => letter.charCodeAt(0))], { type: "image/jpeg" }));
  return [bitmap.width, bitmap.height];
}"""
# what a phone writes into a picture that was taken upright: its sensor lies on its side (Exif 2.3, tag 0x0112, value 6: turn it a quarter to the right)
UPRIGHT = b"Exif\0\0MM\0*" + struct.pack(">IHHHIHHI", 8, 1, 0x0112, 3, 1, 6, 0, 0)


def test_a_picture_stands_as_it_was_taken(take):
    """A phone held upright writes its picture lying, and that it is to be turned: it is kept upright."""
    handset = take()
    drawn = base64.b64decode(handset.open("404.html").evaluate(DRAWN))
    turned = drawn[:2] + struct.pack(">HH", 0xFFE1, len(UPRIGHT) + 2) + UPRIGHT + drawn[2:]
    page, _ = photographed(handset, {"name": "gauge.jpg", "mimeType": "image/jpeg", "buffer": turned})
    [photo] = in_database(page, "photos")
    assert page.evaluate(SIZE, photo["picture"]) == [20, 40]


PICTURE = "data:image/jpeg;base64,AAAA"
OTHER = "data:image/jpeg;base64,AAAB"


def photo_of(record, number, picture=PICTURE):
    return {"id": f"{record['id']}-p{number}", "test": record["id"], "part": PART, "at_ms": record["begun_ms"] + number, "picture": picture}


def bring(page, tmp_path, record, photos):
    """A test's file with these photos, taken in on this phone."""
    file = tmp_path / "one.json"
    file.write_text(json.dumps({**record, "photos": [{name: photo[name] for name in photo if name != "test"} for photo in photos]}), encoding="utf-8")
    page.locator("input[type=file]").set_input_files(file)


def test_a_signature_stands_for_its_photos(take, tmp_path):
    """Signed with their digests, which the report works out alike; a changed photo and one that is gone are named on the sheet, and no file brings in another."""
    handset, record = take(), records.a_record()
    photos = [photo_of(record, 1), photo_of(record, 2)]
    page = handset.open("test/")
    for photo in photos:
        do(page, "keepRecord", "photos", photo)
    do(page, "keepRecord", "tests", record)
    page.goto(f"{handset.host.origin}test/sheet/#{record['id']}")
    signing = page.locator(".signing").first
    signing.locator("summary").tap()
    signing.get_by_role("button", name=T["sign_off"]["sign"]).tap()
    expect(page.locator(".signs-off")).to_contain_text(T["sign_off"]["same"])
    kept = kept_test(page, record["id"])
    assert kept["photographed"] == {photo["id"]: signed.photo_digest(photo) for photo in photos}
    assert signed.broken({**kept, "photos": photos}) == []
    expect(page.get_by_text(T["photo"]["not_signed"])).to_have_count(0)
    do(page, "keepRecord", "photos", {**photos[0], "picture": OTHER})
    do(page, "dropRecord", "photos", photos[1]["id"])
    page.reload()
    expect(page.locator("figure", has_text=T["photo"]["not_signed"])).to_have_count(1)
    expect(page.get_by_text(T["photo"]["gone"].format(count=1))).to_be_visible()

    for_new = take().open("test/years/")
    bring(for_new, tmp_path, kept, [photos[0], {**photos[1], "picture": OTHER}])
    expect(for_new.get_by_role("status").filter(has_text=T["photo"]["strange"].split("{name}")[1].format(count=1))).to_be_visible()
    assert in_database(for_new, "photos") == [photos[0]]
    bring(for_new, tmp_path, kept, photos)
    expect(for_new.get_by_role("status").filter(has_text=T["years"]["here"].format(count=1))).to_be_visible()
    assert in_database(for_new, "photos") == photos


def test_the_file_of_all_years_has_its_photos(take):
    """The newest first, as many as one file may have bytes; those that stay are counted."""
    page = take().open("test/")
    largest = "data:image/jpeg;base64," + "A" * 266_600
    for year in range(3):
        record = records.a_record(year, begun_ms=records.BEGUN_MS - year * 365 * records.DAY_MS)
        do(page, "keepRecord", "tests", record)
        for number in range(8):
            do(page, "keepRecord", "photos", photo_of(record, number, largest))
    page.goto(page.url + "years/")
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name=T["years"]["file"]).tap()
    path = saved.value.path()
    assert 4_700_000 < path.stat().st_size <= 5_000_000  # by hand: three tests of 30 kB, and room for no further photo of 267 kB
    counts = [len(record.get("photos", [])) for record in json.loads(path.read_text(encoding="utf-8"))]
    assert counts[:2] == [8, 8] and sum(counts) in (17, 18)
    expect(page.get_by_text(T["photo"]["left_behind"].format(count=24 - sum(counts)))).to_be_visible()


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
