"""Files let into a log: equal in any order, twice or partly, no picture lost, and each record judged once."""
import itertools
import json
import random

import pytest

from tests.unit.bay.arrivals import let_in
from tests.unit.bay.logs import defect, long_log, record

JPEG = "data:image/jpeg;base64,"


def photo(id, picture, by="Hart"):
    return record("photo", id, by=by, defect="d1", **({} if picture is None else {"picture": JPEG + picture}))


def by_id(answer):
    return sorted(answer["records"], key=lambda row: row["id"])


def test_any_order_twice_or_partly():
    """Three files of overlapping parts, in each order and twice: one log, that of all records; also where ids stand twice."""
    records = [*long_log(700), photo("p1", "AAAA"), photo("p2", "BBBB"), defect("d1", seen="metal"), defect("d1", seen="water"), photo("p1", "ZZZZ"), photo("p2", None), photo("p2", "CCCC", by="Lane")]
    random.Random(7).shuffle(records)
    parts = [records[:400], records[250:600], records[500:]]
    answers = let_in([{"standing": [], "files": [*order, order[0]]} for order in itertools.permutations(parts)])
    whole = by_id(answers[0])
    assert len(whole) == 703  # 700 and p1, p2, d1
    assert all(by_id(answer) == whole for answer in answers)
    assert [row["picture"] for row in whole if row["id"] == "p1"] == [JPEG + "ZZZZ"]


@pytest.mark.parametrize(("here", "arrives", "stays", "refused"), [
    ("AAAA", None, "AAAA", []),  # a file without its pictures takes none away
    (None, "AAAA", "AAAA", []),  # filled in from the other phone
    ("AAAA", "ZZZZ", "ZZZZ", []),  # two pictures, one record: the same one on every phone
    ("ZZZZ", "AAAA", "ZZZZ", []),
    ("AAAA", "not base64!", "AAAA", ["picture"]),
    ("AAAA", "A" * 300_001, "AAAA", ["picture"]),
])
def test_the_picture_of_a_photo(here, arrives, stays, refused):
    [answer] = let_in([{"standing": [photo("p1", here)], "files": [[photo("p1", arrives)]]}])
    assert [row["picture"] for row in answer["records"]] == [JPEG + stays]
    assert [row["field"] for row in answer["came"][0]["refused"]] == refused


def test_a_photo_without_its_picture():
    """Where no phone has the picture yet, its record is refused by name, and taken as soon as the picture comes with it."""
    [answer] = let_in([{"standing": [], "files": [[photo("p1", None)], [photo("p1", "AAAA")]]}])
    assert answer["came"][0]["refused"] == [{"at": 0, "field": "picture", "code": "missing"}]
    assert [row["picture"] for row in answer["records"]] == [JPEG + "AAAA"]


def test_refused_by_place():
    """Whatever is no record, of another rig, or too long is refused by its place in the file; those beside it are taken."""
    strange = [None, 4, "x", [], {}, {**defect("d1"), "rig_id": "r2"}, defect("d2", items=["x" * 2000] * 400), {**defect("d3"), "__proto__": 1}]
    file = [*long_log(330), *strange, defect("d9")]
    [answer] = let_in([{"standing": [], "files": [file]}])
    [came] = answer["came"]
    assert came["taken"] == 331
    assert [row["at"] - 330 for row in came["refused"]] == list(range(len(strange)))
    assert [row["code"] for row in came["refused"]] == ["not_a_record"] * 4 + ["missing", "unknown", "too_long", "unknown_field"]


def test_a_question_is_never_too_large():
    """Records at their longest cross in parts that calc takes."""
    file = [record("ended", f"e{place}", round="x" * 2000, took_s=1, hurried=0, replaces=["y" * 500] * 100) for place in range(40)]
    changed = [{**row, "by": "Lane"} for row in file]
    [answer] = let_in([{"standing": [], "files": [file, changed]}])
    assert [row["taken"] for row in answer["came"]] == [40, 40]


def test_ten_thousand_cross_once():
    """A record crosses to calc once; the same file again asks nothing, and a log half there only for the other half."""
    made = long_log(10_000)
    again, half = let_in([{"standing": [], "files": [made, made]}, {"standing": made[:5000], "files": [made]}])
    assert sum(again["asked"]) == sum(again["kept"]) == 10_000
    assert [row["same"] for row in again["came"]] == [0, 10_000]
    assert (sum(half["asked"]), half["came"][0]["same"]) == (5000, 5000)
    assert len(by_id(half)) == 10_000
    assert max(again["asked"]) <= 300


def test_a_file_has_a_bound():
    """Photos go newest first into files of a bound, each a log of its own; all of them, in any order, make the log again."""
    photos = [{**photo(f"p{count}", "A" * 1000), "at_ms": 1000 + count} for count in range(9)]
    records = [*long_log(5), *photos]
    [cut] = let_in([{"standing": records, "files": [], "most": 6000}])
    assert [part["photos"] for part in cut["parts"]][0] < 9
    assert sum(part["photos"] for part in cut["parts"]) == 9
    assert all(sum(len(json.dumps(row, separators=(",", ":"))) for row in part["records"]) <= 6000 for part in cut["parts"])
    assert [row["id"] for row in cut["parts"][0]["records"][:6]] == ["n00000", "n00001", "n00002", "n00003", "n00004", "p8"]
    [back] = let_in([{"standing": [], "files": [part["records"] for part in reversed(cut["parts"])]}])
    assert by_id(back) == sorted(records, key=lambda row: row["id"])


def test_small_logs_are_one_file():
    """A log without photos, and one with thirty at their largest, go as one file; a hundred do not."""
    logs = [[*long_log(1000), *[photo(f"p{count}", "A" * 260_000) for count in range(photos)]] for photos in (0, 30, 100)]
    assert [len(answer["parts"]) for answer in let_in([{"standing": log, "files": []} for log in logs])] == [1, 1, 3]
