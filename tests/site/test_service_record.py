"""The record of a service test for others: its published schema, and what its signatures stand for."""
import copy
import datetime
import json
import subprocess

import jsonschema_rs
import pytest

from site_src.content import service_schema
from site_src.report import pages as report, signed
from tests import service_records as records

SIGNATURE = {"role": "tester", "name": "A. Tester", "wall": records.BEGUN_MS, "strokes": "M1 1l0 0"}


PHOTO = {"id": "p1", "part": "capacity", "at_ms": records.BEGUN_MS, "picture": "data:image/jpeg;base64,AAAA"}


def with_signature(record):
    record = {**record, "photographed": {PHOTO["id"]: signed.photo_digest(PHOTO)}, "photos": [dict(PHOTO)]}
    return {**record, "signed": [{**SIGNATURE, "digest": signed.digest(record)}]}


@pytest.mark.parametrize("record", [records.a_record(), records.a_failed_record(), records.an_unfinished_record(), with_signature(records.a_record())],
                         ids=["pass", "fail", "open", "signed"])
def test_whole_records_fit_the_schema(record):
    schema = service_schema.schema()
    jsonschema_rs.meta.validate(schema)
    jsonschema_rs.validate(schema, record)


@pytest.mark.parametrize(
    "spoil",
    [lambda record: record.pop("rig"), lambda record: record.update(id=""), lambda record: record["rig"].update(meters="7"), lambda record: record["rig"].update(gauges="13"),
     lambda record: record["people"].update(other="x"), lambda record: record.update(begun_ms=-1), lambda record: record["equipment"].append({"what": "gauge"}),
     lambda record: record.update(notes="x" * 2001), lambda record: record["tests"]["capacity"]["attempts"][0].pop("clock"), lambda record: record.update(signed=[{"name": "x"}])],
)
def test_what_is_no_record_does_not(spoil):
    """What calc.service.file refuses for its shape the schema refuses too."""
    record = copy.deepcopy(records.a_record())
    spoil(record)
    assert not jsonschema_rs.is_valid(service_schema.schema(), record)


def test_a_digest_by_hand():
    """The names in order, no spaces, UTF-8; of the standard what it is called: the sum of that text by another tool."""
    record = {"schema": 1, "id": "é", "notes": "a\"b", "tests": {"b": 1.5, "a": [True, None]}, "standard": {"kind": "annual", "id": "us", "edition": "x", "tests": []}, "revision": 7}
    text = '{"id":"é","notes":"a\\"b","schema":1,"standard":{"edition":"x","id":"us","kind":"annual"},"tests":{"a":[true,null],"b":1.5}}'
    told = subprocess.run(["sha256sum"], input=text.encode(), capture_output=True, check=True).stdout.decode().split()[0]
    assert signed.digest(record) == told


def test_a_digest_of_a_photo_by_hand():
    """The same of its part, time and picture, in a list."""
    text = f'["capacity",{records.BEGUN_MS},"data:image/jpeg;base64,AAAA"]'
    assert signed.photo_digest(PHOTO) == subprocess.run(["sha256sum"], input=text.encode(), capture_output=True, check=True).stdout.decode().split()[0]


@pytest.mark.parametrize(
    ("change", "is_broken"),
    [(lambda record: None, False), (lambda record: record.update(revision=99), False), (lambda record: record.update(notes="all good"), True),
     (lambda record: record["tests"]["capacity"]["attempts"][0]["sets"][0]["values"].update(engine_rpm="1599@US"), True),
     (lambda record: record["people"].update(tester="B. Other"), True),
     (lambda record: record.pop("photos"), False),  # a file need not have room for them
     (lambda record: record["photos"][0].update(picture="data:image/jpeg;base64,AAAB"), True), (lambda record: record["photos"][0].update(part="vacuum"), True),
     (lambda record: record["photos"].append({**PHOTO, "id": "p2"}), True), (lambda record: record["photographed"].update(p1="0" * 64), True)],
)
def test_the_report_checks_what_was_signed(tmp_path, change, is_broken):
    """A test that says something else than was signed is named with who signed it."""
    record = with_signature(copy.deepcopy(records.a_record()))
    change(record)
    path = tmp_path / "one.json"
    path.write_text(json.dumps(record), encoding="utf-8")
    told = report.told([path], tmp_path, datetime.date(2026, 11, 25), "US")
    assert [each["broken"] for each in told["broken"]] == ([["A. Tester"]] if is_broken else [])
