"""The fleet's report on logs of rigs: status, open defects by age, days out, checks done of due, readings, who sent nothing; hostile logs named."""
import html
import json
import random
import re

import pytest

from site_src.content import data
from site_src.report import pages as report
from tests.site.test_report import HARM, ON, WHOLE, Reader, put, spoiled
from tests.unit.bay.logs import DAY_MS, decision, defect, long_log, record, release

L, BAY, STATUS = data.words("report"), data.words("bay"), data.words("site")["rig_status"]
END_MS = 1795651199000  # November 25, 2026, 23:59:59 UTC, the day of ON, by hand: 20,783 days of 86,400 s less one


def ago(days):
    return END_MS - days * DAY_MS


def a_log(*records, rig="r1", name="Engine 1", **more):
    return {"format": "bay-log", "schema": 1, "rig_id": rig, "rig_name": name, "records": [{**made, "rig_id": rig, "rig_name": name} for made in records], **more}


def weekly(days, id):
    return [record("round", f"r{id}", at_ms=ago(days), list="weekly", items=["prime_hold"]), record("ended", f"e{id}", at_ms=ago(days), round=f"r{id}", took_s=60, hurried=0)]


def vacuum(days, amount, id):
    return record("answer", id, at_ms=ago(days), round="rx", item="prime_hold", answer="good", entry=None, amount=amount)


def reported(folder):
    """The first page in words, the pages of the logs in words by the name of their rig, and what was counted."""
    counts = report.write(folder, ON)
    return words_of(counts["page"]), [words_of(path) for path in sorted(counts["page"].parent.glob("log-*.html"))], counts


def words_of(path):
    """What a page says, a space between its cells and none before a mark."""
    text = html.unescape(re.sub(r"<style>.*</style>|<[^>]+>", " ", path.read_text(encoding="utf-8")))
    return re.sub(r" ([:,.;])", r"\1", " ".join(text.split()))


def of_rig(folder):
    text, [page], counts = reported(folder)
    assert counts["bad"] == 0
    return text, page


def test_a_rig_out_of_service(tmp_path):
    """The sentence of its status, its defects oldest first with their days, and the days it was out, by hand."""
    put(tmp_path, log=a_log(
        defect("d1", at_ms=ago(4)), defect("d2", "report", what="Tread low", seen="left", at_ms=ago(50)), defect("d3", at_ms=ago(30), what="Leak"),
        release("b3", ["d3"], ["d3"], at_ms=ago(28)), record("repair", "p1", at_ms=ago(1), defects=["d1"], done="filled", parts="", hours="1"),
    ))
    text, page = of_rig(tmp_path)
    assert f"{STATUS['pump_out']} {STATUS['is_waiting']} Low gear oil: metal, 2026-11-21." in text and STATUS["pump_out"] in page
    assert page.index("50 Tread low: left") < page.index("4 Low gear oil: metal") and "Leak" not in page
    assert f"{L['log']['out'].format(days=365)}: 6." in page  # 4 since the tag of d1, 2 of d3
    assert L["log"]["repaired"].format(by="Hart") in page


def test_checks_done_of_due(tmp_path):
    """Of the last 90 days twelve weeks have come due; five of them saw the check, one of them twice; a list never done is 0."""
    put(tmp_path, log=a_log(*[made for place, days in enumerate((0, 1, 8, 15, 22, 29, 100)) for made in weekly(days, place)]))
    _, page = of_rig(tmp_path)
    assert f"{BAY['list']['weekly']}: {L['log']['share'].format(done=5, due=12)}" in page
    assert f"{BAY['list']['monthly']}: {L['log']['share'].format(done=0, due=3)}" in page  # 90 days: three months of 30


def test_readings_that_go_toward_their_limit(tmp_path):
    """Three in a row closer to the limit are there with their figures; a reading that was taken back is not."""
    replaced = vacuum(3, 1, "v9")
    put(tmp_path, log=a_log(vacuum(40, 6, "v1"), vacuum(30, 7, "v2"), vacuum(20, 8, "v3"), replaced, {**vacuum(2, 9, "v4"), "replaces": ["v9"]}))
    _, page = of_rig(tmp_path)
    assert "6, 7, 8, 9" in page and BAY["trend"]["toward"] in page


def test_who_sent_nothing(tmp_path):
    """A rig whose newest record is 31 days old stands out, one of 30 does not; so does one with tests and no log, and one dated ahead only."""
    put(tmp_path, old=a_log(defect("d1", "note", at_ms=ago(31) - 1), rig="r1", name="Old Engine"), new=a_log(defect("d2", "note", at_ms=ago(30)), rig="r2", name="New Engine"),
        ahead=a_log(defect("d3", at_ms=ago(-9)), rig="r3", name="Ahead Engine"), tested=WHOLE)
    text, pages, _ = reported(tmp_path)
    silent = text.split(f"{L['log']['silent']} ", 1)[1].split(L["log"]["title"], 1)[0]
    assert f"Old Engine: {L['log']['silent_days'].format(days=31)}" in silent
    assert f"Ahead Engine: {L['log']['silent_ahead']}" in silent and "New Engine" not in silent
    assert f"{L['log']['without']}: {WHOLE['rig_name']}" in silent
    assert any(L["log"]["ahead"].format(count=1) in page for page in pages)


def test_two_phones_and_the_same_file_twice(tmp_path):
    """Halves of a log in two files, one of them twice and in a folder of its own, are one rig with one status."""
    made = [defect("d1", at_ms=ago(9)), decision("e1", "d1", "restricted", ["d1"], limits="Tank water only", at_ms=ago(8)), defect("d2", "note", at_ms=ago(7))]
    (tmp_path / "other").mkdir()
    put(tmp_path, one=a_log(*made[:2]), two=a_log(*made[1:]))
    put(tmp_path / "other", again=a_log(*made[:2]))
    text, page = of_rig(tmp_path)
    assert f"{STATUS['restricted']} Tank water only." in text and "9 Low gear oil" in page


@pytest.mark.parametrize(("change", "reason"), [
    ({"schema": 2}, "newer"), ({"schema": None}, "newer"), ({"rig_id": 7}, "not_a_log"), ({"rig_id": ""}, "not_a_log"), ({"records": {}}, "not_a_log"),
    ({"records": [{}] * 50_001}, "too_many"),
])
def test_a_file_that_is_no_log(tmp_path, change, reason):
    """Named with the reason; the others are reported on."""
    put(tmp_path, good=a_log(defect("d1")), bad={**a_log(defect("d2")), **change})
    text, _, counts = reported(tmp_path)
    assert (counts["logs"], counts["bad"]) == (1, 1) and f"bad.json {L['log_file'][reason]}" in text


def test_refused_records_by_place(tmp_path):
    """Each by its place in the file, its field and the reason; five are named and the rest counted; what is sound counts."""
    log = a_log(defect("d1", at_ms=ago(1)), *[{**defect(f"x{count}"), "class": "broken"} for count in range(7)])
    log["records"] += [4, {**log["records"][0], "id": "d9", "rig_id": "r9"}]
    put(tmp_path, log=log)
    text, [page], counts = reported(tmp_path)
    refused = text.split(L["log"]["refused_told"], 1)[1]
    assert f"log.json: {L['log']['at'].format(at=2)}, class, {BAY['log_reason']['unknown']}" in refused and L["log"]["more"].format(count=4) in refused
    assert "1 Low gear oil" in page and (counts["logs"], counts["bad"]) == (1, 0)


def test_a_large_file_is_read_where_it_is_a_log(tmp_path):
    """A log with photos is larger than test results can be; anything else of that size is not read, nor is a log over 16 MB."""
    photos = [record("photo", f"p{count}", at_ms=ago(1), defect="d1", picture="data:image/jpeg;base64," + "A" * 290_000) for count in range(20)]
    put(tmp_path, log=a_log(defect("d1", at_ms=ago(1)), *photos), tests=json.dumps([{"text": "A" * 6_000_000}]), huge=a_log(defect("d1"), padding="A" * 16_000_000))
    text, _, counts = reported(tmp_path)
    assert (counts["logs"], counts["bad"]) == (1, 2) and L["log"]["refused"] not in text


@pytest.mark.parametrize("text", HARM)
def test_nothing_of_a_log_becomes_more_than_text(tmp_path, text):
    """Markup in every text of a log leaves only text: no tag, no address and no style that the report does not write itself."""
    sound = a_log(*long_log(60), defect("d1", at_ms=ago(1)), record("repair", "p1", at_ms=ago(1), defects=["d1"], done="x", parts="", hours=""))
    put(tmp_path, log={**sound, "rig_name": text, "records": [{**made, "by": text, "rig_name": text, **({"what": text, "seen": text} if made["kind"] == "defect" else {})} for made in sound["records"]]})
    counts = report.write(tmp_path, ON)
    for path in counts["page"].parent.glob("*.html"):
        page = Reader(path)
        assert {tag for tag, _ in page.tags} <= {"html", "head", "meta", "title", "style", "body", "main", "p", "h1", "h2", "ul", "li", "b", "bdi", "a", "span", "div", "table", "thead", "tbody", "tr", "th", "td"}
        assert all(attributes["href"].endswith(".html") and ":" not in attributes["href"] for tag, attributes in page.tags if tag == "a")


@pytest.mark.parametrize("seed", range(6))
def test_a_spoiled_log_is_no_end(tmp_path, seed):
    """Values of a log changed to others at random: the report is made, and each record counts or is named."""
    dice = random.Random(seed)
    sound = a_log(*long_log(200), *[vacuum(count, 20 + count % 5, f"v{count}") for count in range(9)], record("setting", "s1", item="prime_hold", applies=True, reason="", limit={"value": 20, "to": None, "whose": "plate"}))
    files = {f"log{count}": {**sound, "records": [spoiled(made, dice) if dice.random() < 0.5 else made for made in sound["records"]]} for count in range(3)}
    put(tmp_path, **files)
    _, _, counts = reported(tmp_path)
    assert counts["logs"] == 1


def test_the_entries_of_a_site_that_closed(tmp_path):
    """One file of all a phone had counts as its tests and the log of each rig; what is no record of ours there is named or left out, never an end."""
    kept = {"format": "entries", "schema": 1, "rigs": {"r1": {"name": "Engine 1"}}, "tests": {WHOLE["id"]: WHOLE}, "log": 7,
            "bay": {"d1": {**defect("d1", at_ms=ago(4)), "rig_id": "r1", "rig_name": "Engine 1"}, "d2": {**defect("d2", at_ms=ago(9), seen="left"), "rig_id": "r2", "rig_name": "Engine 2"}}}
    put(tmp_path, entries=kept)
    text, pages, counts = reported(tmp_path)
    assert (counts["tests"], counts["rigs"], counts["logs"], counts["bad"]) == (1, 1, 2, 0) and WHOLE["rig_name"] in text
    assert sorted(page.count("4 Low gear oil: metal") + 2 * page.count("9 Low gear oil: left") for page in pages) == [1, 2]
    put(tmp_path, entries={**kept, "tests": {"a": 5}, "bay": {"a": None, "b": 5, "c": {"rig_id": {}}, "d1": kept["bay"]["d1"]}}, none={**kept, "tests": [], "bay": "x"})
    text, pages, counts = reported(tmp_path)
    assert (counts["tests"], counts["logs"], counts["bad"]) == (0, 1, 2) and "entries.json" in text


def test_entries_larger_than_a_log(tmp_path, monkeypatch):
    """Pictures make such a file larger than a log by itself; over its own bound it is named too large, as anything else is over its."""
    kept = {"format": "entries", "schema": 1, "bay": {"d1": {**defect("d1", at_ms=ago(4)), "rig_id": "r1", "rig_name": "Engine 1"}}, "notes": "A" * 17_000_000}
    put(tmp_path, entries=kept)
    assert reported(tmp_path)[2]["logs"] == 1
    monkeypatch.setattr(report.entries, "LARGEST_BYTES", 17_000_000)
    assert reported(tmp_path)[2]["bad"] == 1
