"""Each kind of record as a page of the bay writes it: taken whole, and refused by name for each field that is gone, of another kind, or not its own."""
import pytest

from calc.base.errors import CalcError
from tests.unit.bay.logs import record

# by kind: its own fields with what a page writes there; what may also be nothing, and what may be left out, stand apart
WHOLE = {
    "round": {"list": "weekly", "items": ["cab_air"]},
    "answer": {"round": "r1", "item": "cab_air", "answer": "not_here", "entry": "110@US", "amount": 110},
    "ended": {"round": "r1", "took_s": 840, "hurried": 2},
    "defect": {"origin": "check", "item": "gear_case", "what": "Low gear oil", "seen": "metal", "place": "under", "state": "off", "limit": "", "class": "report",
               "scope": "pump", "rule": "list"},
    "decision": {"defect": "d1", "class": "restricted", "scope": "pump", "limits": "no drafting"},
    "repair": {"defects": ["d1"], "done": "replaced", "parts": "seal", "hours": "2"},
    "release": {"defects": ["d1"], "repaired_by": "Moss", "opened": ["gear_case"], "proofs": ["leaks"], "limits": ""},
    "setting": {"item": "cab_air", "applies": True, "reason": "own gauge", "limit": None},
    "meters": {"miles": 12000, "engine_h": 900.5, "pump_h": 120},
    "done": {"due": "weekly"},
    "passed": {"card": "bay"},
    "photo": {"defect": "d1"},
    "withdrawn": {"reason": "wrong rig"},
    "erased": {"count": 12, "reason": "sold"},
}
MAY_BE_NOTHING = {("answer", "entry"), ("answer", "amount"), ("defect", "item"), ("setting", "limit"), ("meters", "miles"), ("meters", "engine_h"), ("meters", "pump_h")}
FIELDS = [(kind, name) for kind in WHOLE for name in WHOLE[kind]]
HEAD = ("id", "rig_id", "rig_name", "at_ms", "by", "kind", "replaces")


def whole(kind, **changes):
    return {**record(kind, "x1", **WHOLE[kind]), **changes}


def check(run, one):
    """What is refused of a record, as a file brings it: field and code, or None."""
    refused = run("bay.records", "taken", arriving=[one], standing=[])["refused"]
    return (refused[0]["field"], refused[0]["code"]) if refused else None


@pytest.mark.parametrize("kind", WHOLE)
def test_whole(run, kind):
    """Taken as it is; a field that is not its own is refused by its name, also where it would fit another kind."""
    assert check(run, whole(kind)) is None
    assert check(run, whole(kind, spell="x")) == ("spell", "unknown_field")
    assert check(run, whole(kind, clock="run")) == (None if kind == "answer" else ("clock", "unknown_field"))
    assert check(run, whole(kind, at="halt")) == (None if kind == "withdrawn" else ("at", "unknown_field"))


@pytest.mark.parametrize("name", HEAD)
def test_a_head_has_all(run, name):
    one = whole("done")
    del one[name]
    assert check(run, one) == (name, "missing")


@pytest.mark.parametrize(("kind", "name"), FIELDS)
def test_a_field(run, kind, name):
    """Gone it is missing; a list of lists is none of what a field holds; nothing is something only where a page writes that."""
    one = whole(kind)
    del one[name]
    assert check(run, one) == (name, "missing")
    assert check(run, whole(kind, **{name: [[]]}))[0] == name
    refused = check(run, whole(kind, **{name: None}))
    assert refused is None if (kind, name) in MAY_BE_NOTHING else refused[0] == name


@pytest.mark.parametrize(("kind", "name", "value"), [
    ("answer", "answer", "good"), ("answer", "answer", "not_good"), ("defect", "class", "note"), ("defect", "class", "out_of_service"),
    ("defect", "scope", "apparatus"), ("defect", "scope", "foam"), ("setting", "applies", False), ("withdrawn", "at", "halt"),
])
def test_choices(run, kind, name, value):
    """Each choice is taken, and nothing near it."""
    assert check(run, whole(kind, **{name: value})) is None
    assert check(run, whole(kind, **{name: f"{value}x"})) == (name, "unknown")


@pytest.mark.parametrize(("kind", "name"), [row for row in FIELDS if isinstance(WHOLE[row[0]][row[1]], str)])
def test_a_number_is_no_text(run, kind, name):
    assert check(run, whole(kind, **{name: 7}))[0] == name


@pytest.mark.parametrize(("kind", "name"), [row for row in FIELDS if isinstance(WHOLE[row[0]][row[1]], (int, float)) and row[1] != "applies"])
def test_a_text_is_no_number(run, kind, name):
    assert check(run, whole(kind, **{name: "7"})) == (name, "not_a_number")


def test_two_names_without_their_spaces(run):
    """The same name with other capitals and spaces is the same person; the refusal names who puts it back."""
    assert check(run, whole("release", repaired_by="Al  Moss", by=" al moss")) == ("by", "same_name")
    assert run("bay.records", "plain", name="  Al \t MOSS ") == "al moss"


def test_all_are_looked_at(run):
    """One that is refused, and one that is here already, end nothing; those here are counted."""
    standing = [whole("done", id="a"), whole("done", id="b")]
    answer = run("bay.records", "taken", arriving=[7, *standing, whole("done", id="c")], standing=standing)
    assert answer == {"add": [3], "change": [], "same": 2, "refused": [{"at": 0, "field": "record", "code": "not_a_record"}]}
    with pytest.raises(CalcError) as refusal:
        run("bay.records", "taken", arriving={}, standing=[])
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("arriving", "not_a_list", {"most": 400})


def test_spelled(run):
    """By hand: names in order, a whole float as the whole number it is, lists as they are."""
    assert run("bay.records", "spelled", value={"b": [1.0, 2.5, "x"], "a": None}) == "{'a':None,'b':[1,2.5,'x']}"


def test_what_is_withdrawn(run):
    """The word that takes it back stays, even where it was itself taken back; the order is that of ids."""
    log = [whole("withdrawn", id="w2", replaces=["w1"]), whole("done", id="d2"), whole("withdrawn", id="w1", replaces=["d1"]), whole("done", id="d1")]
    assert [one["id"] for one in run("bay.records", "in_force", records=log)] == ["d2", "w1", "w2"]
