"""The shape of a test's file, place by place: what may stand there, how much of it, and where a fault is told to lie."""
import copy
import json

import pytest

from calc.base.errors import CalcError
from site_src.content import former, standards
from tests import service_records

US = service_records.US
WHOLE = json.loads(json.dumps(service_records.a_failed_record()))  # with a pause, a reason, a stray, a reading taken back and an event
AT_MS = service_records.BEGUN_MS
WHOLE.update(  # with what a signature, a photo, a later version and a run that was let go on leave behind
    overrides=[{"name": "A. Tester", "reason": "gauge on its way", "wall": AT_MS, "open": [{"test": "vacuum", "check": "lift", "value": "11"}]}], override={"name": "A. Tester"},
    signed=[{"role": "tester", "name": "A. Tester", "wall": AT_MS, "digest": "a1", "strokes": "0,0"}],
    versions=[{"digest": "a1", "wall": AT_MS, "what": "gauge", "why": "typed wrong", "by": "A. Tester", "signed": ["tester"], "status": "fail"}],
    photographed={"photo-1": "b2"}, photos=[{"id": "photo-1", "part": "vacuum", "at_ms": AT_MS, "picture": "data:image/jpeg;base64,/9j/4AAQ"}],
)
WHOLE["equipment"][0]["due"] = "2027-03-02"
WHOLE["tests"]["capacity"]["attempts"][0]["sets"][0]["as_before"] = ["pitot_psi"]
WHOLE["rig"].update(gauges="12", last={"capacity": {"engine_rpm": 1600, "net_psi": 150}})
WHOLE["tests"]["capacity"]["draft"] = {"tip": {"tip_in": "2@US", "count": 1}, "values": {"pitot_psi": ["60@US"]}, "touched": True}
WHOLE["tests"]["fifty"]["not_done"] = ""
RUN = ("tests", "capacity", "attempts", 0)

WRONG = {  # by kind of thing: what is none, or too much of it
    "name": ("", 3, None, "x" * 201),
    "text": (3, ["x"], "x" * 2001),
    "number": ("3", True, False, 1e15, [1]),
    "time": (-1, "today", 7_300_000_000_001, True),
    "count": (0, 5, True, "2"),
    "few": ("5", 2, "00"),
    "typed": (3, ["1"] * 10, ["1", 2], "x" * 201, {"a": "1"}),
    "any": ([0] * 501, "x" * 2001, 1e15, {"x" * 201: 1}, {str(count): 0 for count in range(501)}),
    "dozen": ("13", "-1", 2, "00"),
    "picture": ("", 3, "data:text/html;base64,PGI+", "https://example.org/a.jpg", "data:image/jpeg;base64," + "x" * 266_700),
    "list": ({}, "x", None, [{}] * 501),
    "names": ([], "x", 3, {str(count): "x" for count in range(501)}, {"x" * 201: "x"}),
}
PLACES = [
    *((("id",), "name"), (("rig_id",), "name"), (("rig_name",), "name"), (("revision",), "number"), (("notes",), "text")),
    *((("begun_ms",), "time"), (("finished_ms",), "time"), (("anything",), "any"), (("result",), "any")),
    *((("rig",), "names"), (("rig", "meters"), "few"), (("rig", "pump_stages"), "few")),
    *((("rig", when, "capacity", "engine_rpm"), "number") for when in ("new", "last")),
    *((("rig", when, "capacity", "net_psi"), "number") for when in ("new", "last")),
    *((("rig", "drive"), "text"), (("conditions",), "names"), (("conditions", "tips_in"), "list"), (("conditions", "lift_ft"), "text"), (("accuracy",), "names")),
    *((("equipment",), "list"), (("equipment", 0, "what"), "text"), (("equipment", 0, "serial"), "text"), (("equipment", 0, "calibrated"), "text")),
    *((("people",), "names"), (("people", "tester"), "text"), (("people", "witness"), "text")),
    *((("rig", "gauges"), "dozen"), (("equipment", 0, "due"), "text"), (("overrides",), "list"), (("overrides", 0, "open"), "list"), (("override",), "names"), (("override", "name"), "text")),
    *((("overrides", 0, name), kind) for name, kind in (("name", "text"), ("reason", "text"), ("wall", "time"))),
    *((("overrides", 0, "open", 0, name), kind) for name, kind in (("test", "name"), ("check", "name"), ("value", "text"))),
    *((("signed",), "list"), *((("signed", 0, name), kind) for name, kind in (("role", "name"), ("name", "name"), ("wall", "time"), ("digest", "name"), ("strokes", "text")))),
    *((("versions",), "list"), (("versions", 0, "signed"), "list"), (("versions", 0, "signed", 0), "text"), (("photographed",), "names"), (("photographed", "photo-1"), "name"), (("photos",), "list")),
    *((("versions", 0, name), kind) for name, kind in (("digest", "name"), ("wall", "time"), ("what", "text"), ("why", "text"), ("by", "text"), ("status", "name"))),
    *((("photos", 0, name), kind) for name, kind in (("id", "name"), ("part", "name"), ("at_ms", "time"), ("picture", "picture"))),
    *((("standard",), "names"), (("standard", "id"), "name"), (("standard", "kind"), "name")),
    *((("events",), "list"), (("events", 0, "kind"), "name"), (("events", 0, "s"), "number"), (("events", 0, "wall"), "time"), (("events", 0, "counted_s"), "number")),
    *((("tests",), "names"), (("tests", "vacuum"), "names"), (("tests", "vacuum", "values"), "names"), (("tests", "vacuum", "values", "vacuum_after_inhg"), "typed")),
    *((("tests", "vacuum", "clock_s"), "number"), (("tests", "vacuum", "clock", "counted_s"), "number"), (("tests", "fifty", "not_done"), "text")),
    *((("tests", "capacity", "draft", "values", "pitot_psi"), "typed"), (("tests", "capacity", "draft", "tip", "count"), "count"), (("tests", "capacity", "draft", "touched"), "any")),
    *((RUN[:-1], "list"), ((*RUN, "tip", "tip_in"), "text"), ((*RUN, "tip", "count"), "count"), ((*RUN, "clock_s"), "number"), ((*RUN, "stopped"), "text")),
    *(((*RUN, "clock", "counted_s"), "number"), ((*RUN, "clock", "events"), "list"), ((*RUN, "clock", "more"), "any"), ((*RUN, "clock", "events", 1, "more"), "any"), ((*RUN, "clock", "since"), "number")),
    *(((*RUN, "more"), "any"), ((*RUN, "sets", 0, "more"), "any"), ((*RUN, "sets", 0, "as_before"), "list"), ((*RUN, "sets", 0, "as_before", 0), "name")),
    *(((*RUN, "clock", "events", 1, "kind"), "name"), ((*RUN, "clock", "events", 1, "at_s"), "number"), ((*RUN, "clock", "events", 1, "wall"), "time"), ((*RUN, "clock", "events", 1, "reason"), "text")),
    *(((*RUN, "sets"), "list"), ((*RUN, "sets", 0, "at_s"), "number"), ((*RUN, "sets", 0, "at_ms"), "time"), ((*RUN, "sets", 0, "values"), "names")),
    *(((*RUN, "sets", 0, "values", "discharge_psi"), "typed"), ((*RUN, "sets", 0, "tip", "count"), "count"), ((*RUN, "taken_back"), "list"), ((*RUN, "taken_back", 0, "back_ms"), "time")),
]
MAY_BE_LEFT_OUT = [
    ("finished_ms",), ("result",), ("rig", "meters"), ("rig", "pump_stages"), ("rig", "new"), ("rig", "last"), ("rig", "new", "capacity", "net_psi"),
    ("rig", "last", "capacity", "net_psi"),
    ("tests", "vacuum", "values"), ("tests", "vacuum", "clock"), ("tests", "vacuum", "clock_s"), ("tests", "fifty", "not_done"), ("tests", "capacity", "draft"),
    (*RUN, "tip"), (*RUN, "stopped"), (*RUN, "taken_back"), (*RUN, "sets", 0, "tip"), (*RUN, "taken_back", 0, "back_ms"),
    (*RUN, "clock", "since"), (*RUN, "clock", "events", 1, "reason"), ("events", 0, "counted_s"), ("conditions", "tips_in"),
    ("rig", "gauges"), ("equipment", 0, "due"), ("overrides",), ("override",), ("signed",), ("versions",), ("versions", 0, "status"),
    ("photographed",), ("photos",),
]
NEEDED = [place for place, _ in PLACES if isinstance(place[-1], str) and place not in MAY_BE_LEFT_OUT and place not in (
    RUN[:-1], ("anything",), ("overrides", 0, "open", 0, "value"), ("override", "name"), ("photographed", "photo-1"), ("rig", "drive"), ("conditions", "lift_ft"), ("tests", "vacuum"), ("tests", "vacuum", "values", "vacuum_after_inhg"),
    ("tests", "capacity", "draft", "values", "pitot_psi"), ("tests", "capacity", "draft", "touched"), (*RUN, "clock", "more"), (*RUN, "clock", "events", 1, "more"), (*RUN, "more"), (*RUN, "sets", 0, "more"), (*RUN, "sets", 0, "as_before"), (*RUN, "sets", 0, "values", "discharge_psi"))]


def named(place):
    return ".".join(part for part in place if isinstance(part, str))


def put(place, thing):
    """The record with something else at a place; ... takes what is there away."""
    record = copy.deepcopy(WHOLE)
    inner = record
    for part in place[:-1]:
        inner = inner[part]
    if thing is ...:
        inner.pop(place[-1], None)
    else:
        inner[place[-1]] = thing
    return record


def judged(run, record):
    return run("service.file", "judged", record=record, standards=standards.every(), former=former.every(), units=US)


def test_the_whole_is_let_in(run):
    assert judged(run, WHOLE)["verdict"]["status"] == "fail"


@pytest.mark.parametrize(("place", "kind"), PLACES, ids=lambda each: named(each) if isinstance(each, tuple) else each)
def test_what_may_not_stand_there(run, place, kind):
    """Each wrong thing is refused, and told to lie there."""
    for thing in WRONG[kind]:
        if thing is None and place in MAY_BE_LEFT_OUT:
            continue
        with pytest.raises(CalcError) as refused:
            judged(run, put(place, thing))
        told = refused.value
        assert (told.field, told.code) == ("file", "damaged")
        assert told.facts["at"].startswith(named(place)) or kind in ("list", "names")


@pytest.mark.parametrize("place", NEEDED, ids=named)
def test_what_must_stand_there(run, place):
    with pytest.raises(CalcError) as refused:
        judged(run, put(place, ...))
    is_head = place in (("standard",), ("tests",))  # without these it is no test at all
    assert (refused.value.code, refused.value.facts.get("at")) == ("not_a_test", None) if is_head else ("damaged", named(place))


@pytest.mark.parametrize("place", MAY_BE_LEFT_OUT, ids=named)
@pytest.mark.parametrize("nothing", [None, ...])
def test_what_may_be_left_out(run, place, nothing):
    """It is let in without it, or with nothing there."""
    assert judged(run, put(place, nothing))["record"]["id"] == WHOLE["id"]


@pytest.mark.parametrize(("place", "thing"), [
    (("id",), "x" * 200), (("notes",), "x" * 2000), (("anything",), [0] * 500), (("anything",), {"x" * 200: "y" * 2000}), (("anything",), [True, False, None, -1e14]),
    (("begun_ms",), 0), (("begun_ms",), 7_300_000_000_000), (("begun_ms",), None), (("tests", "capacity", "draft", "values", "pitot_psi"), ["1@US"] * 9),
    (("tests", "capacity", "draft", "values", "pitot_psi"), None), *(((*RUN, "tip", "count"), count) for count in (1, 2, 3, 4)), (("anything",), {str(count): 0 for count in range(500)}),
    *((("rig", "meters"), text) for text in ("", "0", "1", "2", "3", "4")), *((("rig", "gauges"), text) for text in ("", "0", "2", "12")), (("rig", "pump_stages"), "2"), (("overrides", 0, "open", 0, "value"), None), ((*RUN, "sets", 0, "as_before"), ...),
    (("photos", 0, "picture"), "data:image/jpeg;base64," + "x" * (266_700 - 23)), (("events",), [{"kind": "away", "s": 0, "wall": None}] * 500),
])
def test_the_most_that_may_stand_there(run, place, thing):
    assert judged(run, put(place, thing))["record"]["id"]


@pytest.mark.parametrize("around", [lambda inner: [inner], lambda inner: {"x": inner}], ids=["lists", "names"])
@pytest.mark.parametrize(("depth", "fits"), [(12, True), (13, False)])
def test_how_deep_plain_data_may_go(run, depth, fits, around):
    """A dozen within each other are read, one more is not."""
    thing = 1
    for _ in range(depth):
        thing = around(thing)
    if fits:
        assert judged(run, put(("anything",), thing))["record"]["anything"] == thing
    else:
        with pytest.raises(CalcError) as refused:
            judged(run, put(("anything",), thing))
        assert refused.value.facts["at"] == "anything"


def values_in(data):
    """How many values there are in plain data, lists and names with what they hold, by another way than the file's."""
    inner = data.values() if isinstance(data, dict) else data if isinstance(data, list) else ()
    return len(inner) + sum(values_in(each) for each in inner)


@pytest.mark.parametrize(("more", "fits"), [(0, True), (1, False)])
def test_how_many_values_a_test_may_have(run, more, fits):
    """4,000 are judged, one more is not."""
    spare = 4000 - values_in(WHOLE) - 1
    rows, rest = divmod(spare, 401)
    record = put(("anything",), [[0] * 400 for _ in range(rows)] + [0] * (rest + more))
    if fits:
        assert judged(run, record)["record"]["id"] == WHOLE["id"]
    else:
        with pytest.raises(CalcError) as refused:
            judged(run, record)
        assert (refused.value.field, refused.value.code, refused.value.facts) == ("file", "too_large", {"most": 4000})
