"""The most that a test from elsewhere may hold is judged within a second on the phone's interpreter, and what holds more is refused at once."""
import copy
import json
import pathlib

import pytest

from calc.base.errors import CalcError
from calc.service import file
from site_src.content import former, standards, units
from tests import service_records as records

SECOND = 1.0  # of the processor: what else this machine does does not count


def size(value):
    """How many values there are in it, at any depth: counted by going down, where calc keeps a list."""
    rows = list(value.values()) if isinstance(value, dict) else value if isinstance(value, list) else []
    return len(rows) + sum(map(size, rows))


def many_readings(room):
    """Readings in every run, each whole."""
    record = records.a_record()
    runs = [record["tests"][name]["attempts"][0]["sets"] for name in records.SPEEDS]
    while size(record) + 4 * (size(runs[0][0]) + 1) <= room:
        for sets in runs:
            sets.append({**copy.deepcopy(sets[0]), "at_s": len(sets)})
    return record


def many_attempts(room):
    """Attempts at one run, each with its clock and one reading."""
    record = records.a_record()
    attempts = record["tests"]["capacity"]["attempts"]
    attempts[0]["sets"] = attempts[0]["sets"][:1]
    while size(record) + size(attempts[0]) + 1 <= room:
        attempts.append(copy.deepcopy(attempts[0]))
    return record


def many_entries(room):
    """Entries of parts that no test has."""
    record = records.a_record()
    while size(record) + 104 <= room:
        record["tests"][f"part-{len(record['tests'])}"] = {"values": {f"entry_{place}_psi": f"{place}@US" for place in range(100)}}
    return record


def asked(record):
    return {"record": record, "standards": standards.every(), "former": former.every(), "units": units.fine("US")}


def seconds_of(process):
    fields = pathlib.Path(f"/proc/{process.pid}/stat").read_text(encoding="utf-8").split()
    return (int(fields[13]) + int(fields[14])) / 100


@pytest.mark.skipif(not pathlib.Path("/proc/self/stat").exists(), reason="the processor's time is read from Linux")
@pytest.mark.parametrize("made", [many_readings, many_attempts, many_entries], ids=lambda made: made.__name__)
def test_the_worst_is_judged_within_a_second(phone, made):
    record = made(file.MOST_VALUES)
    assert file.MOST_VALUES - 150 < size(record) <= file.MOST_VALUES
    request = json.dumps({"module": "service.file", "function": "judged", "arguments": asked(record)})
    phone.call(json.dumps({"module": "service.file", "function": "judged", "arguments": asked(records.a_record())}))  # modules are there
    before = seconds_of(phone.process)
    answer = json.loads(phone.call(request))
    assert answer["ok"]["record"]["id"] == record["id"]
    assert seconds_of(phone.process) - before < SECOND


@pytest.mark.parametrize("more", [0, 1])
def test_at_the_bound(run, more):
    """As many values as may be are taken; one more is too large, wherever it stands."""
    record = many_entries(file.MOST_VALUES)
    record["tests"]["last"] = {"values": {f"entry_{place}": "" for place in range(file.MOST_VALUES - size(record) - 2 + more)}}
    assert size(record) == file.MOST_VALUES + more
    if not more:
        assert run("service.file", "judged", **asked(record))["record"]["id"] == record["id"]
        return
    with pytest.raises(CalcError) as refusal:
        run("service.file", "judged", **asked(record))
    assert (refusal.value.field, refusal.value.code) == ("file", "too_large")
