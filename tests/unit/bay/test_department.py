"""A department's own list: what it adds, leaves out, renames and limits, and which of its rows are refused with their place."""
import pytest

from calc.rig.check_fields import MOST_CHECKS, PLAIN_UNITS, QUANTITIES
from site_src.content import checks as published
from site_src.content import units
from site_src.routes.checks import STEPS

US, SI = units.shown_in("US"), units.shown_in("SI")


def row(id, limit=None, unit=None, lists=("weekly",)):
    return {"id": id, "lists": list(lists), "place": "engine", "state": "off", "fits": {}, "equipment": None, "limit": limit, "unit": unit}


BELTS = row("belts")
VACUUM = row("vacuum", {"kind": "min", "value": 22, "to": None, "quantity": "vacuum"})
DRIPS = row("drips", {"kind": "range", "value": 8, "to": 120, "quantity": None}, "drops")
DUE = [{"id": "weekly", "months": None, "days": 7, "hours": None, "miles": None, "by": ["weekly"], "equipment": None},
       {"id": "gear_oil", "months": 12, "days": None, "hours": 200, "miles": None, "by": [], "equipment": None}]
LISTS = ["weekly", "monthly"]
OWN = {"item": "saw_bar", "act": "add", "name": "Saw bar and chain", "look": "Turn it by hand.", "good": "Tight and sharp", "lists": ["weekly"], "place": "round", "state": "off"}
LIMIT = {"item": "vacuum", "act": "change", "unit": "vacuum", "least": "24@US", "reason": "Order 7"}
OUT = {"item": "belts", "act": "leave_out", "reason": "Shop does it"}


def applied(run, *checks, units=US, rows=(BELTS, VACUUM, DRIPS)):
    return run("bay.department", "applied", rows=list(rows), due=DUE, lists=LISTS, checks=list(checks), units=units)


def of(answer, id):
    return [item for item in answer["rows"] if item["id"] == id][0]


def faults(run, *checks):
    return [(fault["field"], fault["code"]) for fault in applied(run, *checks)["faults"]]


def test_nothing_changed(run):
    """Without rows the published lists stand as they are."""
    answer = applied(run)
    assert answer == {"rows": [BELTS, VACUUM, DRIPS], "due": DUE, "lists": LISTS, "text": {}, "left_out": [], "faults": []}


def test_an_own_item(run):
    """It stands on its list where it is walked to, with its own words; the department's rule, unless it says otherwise a report and no more."""
    answer = applied(run, OWN)
    item = of(answer, "saw_bar")
    assert answer["text"]["saw_bar"] == {"title": "Saw bar and chain", "look": "Turn it by hand.", "good": "Tight and sharp"}
    assert (item["class"], item["scope"], item["who"], item["source"], item["basis"], item["limit"]) == ("report", "apparatus", "operator", [], "department", None)
    walked = run("bay.rounds", "items", rows=answer["rows"], name="weekly", profile=None, settings={}, after=[])
    assert walked["items"] == ["saw_bar", "belts", "vacuum", "drips"]


def test_an_item_left_out(run):
    """It is asked no more, and the reason is said with whose it is."""
    answer = applied(run, OUT)
    assert answer["left_out"] == [{"id": "belts", "reason": "Shop does it", "whose": "department"}]
    walked = run("bay.rounds", "items", rows=answer["rows"], name="weekly", profile=None, settings={}, after=[])
    assert walked["left_out"] == [{"id": "belts", "code": "department"}] and "belts" not in walked["items"]


def test_whose_limit(run):
    """Set on the phone, then the rig's own, then the department's, then the published one: the first of them holds and is named."""
    own = {"value": 20, "to": None, "whose": "plate"}
    rigs = {**LIMIT, "whose": "rig", "least": "25@US", "reason": "Pump manual"}

    def at(limit, text, setting=None):
        answer = run("bay.limits", "judged", limit=limit, text=text, own=setting, earlier=[], units=US)
        return answer["is_good"], answer["whose"]

    department = of(applied(run, LIMIT), "vacuum")["limit"]
    both = of(applied(run, rigs, LIMIT), "vacuum")["limit"]
    assert both == of(applied(run, LIMIT, rigs), "vacuum")["limit"]
    assert at(VACUUM["limit"], "22@US") == (True, "list")
    assert at(department, "23.9@US") == (False, "department") and at(department, "24@US") == (True, "department")
    assert at(both, "24@US") == (False, "profile") and at(both, "25@US") == (True, "profile")
    assert at(both, "20@US", own) == (True, "rig")
    assert department["reason"] == "Order 7" and run("bay.limits", "shown", limit=both, own=None, units=US)["whose"] == "profile"


def test_a_limit_in_its_own_system(run):
    """A limit is held in calc's unit whatever it was typed in: 81.27 kPa is 24 inHg (by hand: 24 x 3.38639)."""
    assert of(applied(run, {**LIMIT, "least": "81.27@SI"}, units=SI), "vacuum")["limit"]["value"] == pytest.approx(24, rel=1e-4)


def test_names_and_intervals(run):
    """An item renamed; an interval of an item is a row of the due board; of a list or a test it takes the place of the published one."""
    answer = applied(run, {"item": "belts", "act": "change", "name": "Drive belts", "months": "6"}, {"item": "gear_oil", "act": "change", "hours": "100"},
                     {"item": "weekly", "act": "change", "days": "14"})
    assert answer["text"] == {"belts": {"title": "Drive belts"}}
    assert {due["id"]: (due["months"], due["days"], due["hours"]) for due in answer["due"]} == {
        "weekly": (None, 14, None), "gear_oil": (None, None, 100), "belts": (6, None, None)}
    assert applied(run, {"item": "weekly", "act": "leave_out", "reason": "Each shift"})["lists"] == ["monthly"]


def test_where_an_item_is_asked(run):
    """A department may ask a published item on other lists."""
    assert of(applied(run, {"item": "drips", "act": "change", "lists": ["monthly"]}), "drips")["lists"] == ["monthly"]


@pytest.mark.parametrize(("checks", "field", "code"), [
    ([OWN, OWN], "checks.1.item", "duplicate"),
    ([LIMIT, LIMIT], "checks.1.item", "duplicate"),
    ([{**OWN, "item": "belts"}], "checks.0.item", "published"),
    ([{**OWN, "item": "weekly"}], "checks.0.item", "published"),
    ([{**OUT, "item": "fanbelt"}], "checks.0.item", "no_such_item"),
    ([{**OWN, "lists": ["sometimes"]}], "checks.0.lists", "no_such_list"),
    ([{**LIMIT, "unit": "pressure"}], "checks.0.unit", "other_unit"),
    ([{**LIMIT, "unit": "drops", "least": "24"}], "checks.0.unit", "other_unit"),
    ([{"item": "vacuum", "act": "change", "unit": "vacuum", "most": "24@US"}], "checks.0.unit", "other_kind"),
    ([{"item": "gear_oil", "act": "change", "name": "Oil"}], "checks.0.name", "item_only"),
    ([{**OUT, "reason": ""}], "checks.0.reason", "missing"),
    ([{**OUT, "name": "Belts"}], "checks.0.name", "left_out_has_none"),
    ([{"item": "belts", "act": "change", "place": "pump", "name": "x"}], "checks.0.place", "added_only"),
    ([{"item": "belts", "act": "change"}], "checks.0.act", "changes_nothing"),
    ([{**OWN, "item": "Saw bar"}], "checks.0.item", "not_code"),
    ([{**OWN, "lists": "weekly"}], "checks.0.lists", "not_codes"),
    ([{**OWN, "lists": ["weekly", "weekly"]}], "checks.0.lists", "duplicate"),
    ([{**OWN, "look": "x" * 201}], "checks.0.look", "long_note"),
    ([{**OWN, "odd": "1"}], "checks.0.odd", "unknown_field"),
    ([{**OWN, "good": ""}], "checks.0.good", "missing"),
    ([{**LIMIT, "least": "much"}], "checks.0.least", "not_a_number"),
    ([{**LIMIT, "unit": ""}], "checks.0.unit", "missing"),
    ([{**LIMIT, "least": ""}], "checks.0.least", "missing"),
    ([{**LIMIT, "aim": "24"}], "checks.0.aim", "aim_alone"),
    ([{"item": "drips", "act": "change", "unit": "drops", "least": "9", "most": "8"}], "checks.0.most", "out_of_order"),
    ([{"item": "belts", "act": "change", "months": "121"}], "checks.0.months", "out_of_range"),
    ([{"item": "belts", "act": "change", "days": "1.5"}], "checks.0.days", "not_whole"),
    ([{**OWN, "act": "mend"}], "checks.0.act", "unknown"),
    (["belts"], "checks.0", "damaged"),
    ([{**OWN, "item": f"own_{count}"} for count in range(MOST_CHECKS + 1)], "checks", "too_many"),
    ([OUT] * 10000, "checks", "too_many"),
])
def test_a_row_that_cannot_be_used(run, checks, field, code):
    """It is refused with its place and its reason, and changes nothing; a sound row beside it still does."""
    answer = applied(run, *checks)
    assert (field, code) in [(fault["field"], fault["code"]) for fault in answer["faults"]]
    sound = applied(run, *checks[:1], {"item": "drips", "act": "change", "name": "Packing"}) if len(checks) == 1 else None
    assert sound is None or sound["text"] == {"drips": {"title": "Packing"}}


@pytest.mark.parametrize("value", [None, 5, "x", {}, {"item": "x"}, [None], [[]], [5], [{}], [{"item": []}], [{"item": "belts", "act": []}], [{"item": "belts", "act": {}}]])
def test_wrong_types(run, value):
    """Whatever stands there, nothing changes and something is said."""
    answer = run("bay.department", "applied", rows=[BELTS], due=DUE, lists=LISTS, checks=value, units=US)
    assert answer["rows"] == [BELTS] and answer["due"] == DUE and answer["faults"]


@pytest.mark.parametrize("value", [5, True, [], ["weekly", 5], {}, {"a": 1}, "x" * 500, "\u0000"])
@pytest.mark.parametrize("base", [OWN, LIMIT, OUT, {"item": "belts", "act": "change", "name": "x"}])
def test_wrong_types_in_a_field(run, base, value):
    """In any field, of any type: no bug, a fault at that row or nothing that is wrong."""
    for name in ("item", "act", "whose", "name", "look", "good", "lists", "place", "state", "who", "class", "scope", "unit", "least", "most", "aim", "months", "days", "reason"):
        for field, _ in faults(run, {**base, name: value}):
            assert field.startswith("checks.0.")


def test_the_published_rows():
    """Each limit of the published list is in a unit that a department's row may name; no test of the due board has an item's name but where it is the same thing."""
    for item in published.rows():
        if item["limit"]:
            assert (item["limit"]["quantity"] in QUANTITIES) if item["limit"]["quantity"] else item["unit"] in PLAIN_UNITS
    assert set(PLAIN_UNITS) == set(STEPS)


def test_an_own_item_is_whole(run):
    """What its row says, and of what it does not say what an item has that is nobody's: of the operator, reported, of the whole rig."""
    [_, _, _, own] = applied(run, OWN)["rows"]
    assert own == {"id": "saw_bar", "lists": ["weekly"], "place": "round", "state": "off", "fits": {}, "equipment": None, "limit": None, "unit": None,
                   "who": "operator", "class": "report", "scope": "apparatus", "clock_s": None, "tool": None, "reads": [], "restricts": None, "system": None, "source": [],
                   "basis": "department"}
    asked = {"who": "technician", "class": "out_of_service", "scope": "pump", "whose": "rig"}
    own = of(applied(run, {**OWN, **asked}), "saw_bar")
    assert {name: own[name] for name in ("who", "class", "scope", "basis")} == {"who": "technician", "class": "out_of_service", "scope": "pump", "basis": "rig"}


def test_a_limit_keeps_what_its_instrument_can_show(run):
    """A limit of another stands in place of the item's; what is plausible hangs on the gauge, and a reason that nobody gave is empty."""
    vacuum = {**VACUUM, "limit": {**VACUUM["limit"], "plausible": [0, 30]}}
    changed = of(applied(run, {**LIMIT, "reason": "Order 7"}, rows=(BELTS, vacuum, DRIPS)), "vacuum")
    assert (changed["limit"]["plausible"], changed["limit"]["reason"], changed["unit"]) == ([0, 30], "Order 7", None)
    assert "plausible" not in of(applied(run, LIMIT), "vacuum")["limit"]
    drips = of(applied(run, {"item": "drips", "act": "change", "unit": "drops", "least": "10", "most": "90", "reason": "Order 8"}), "drips")
    assert (drips["unit"], drips["limit"]["value"], drips["limit"]["to"]) == ("drops", 10, 90)


def test_an_item_that_is_left_out_ends_nothing(run):
    """Rows after one that leaves an item out count too."""
    answer = applied(run, OUT, LIMIT)
    assert (of(answer, "belts")["left_out"], of(answer, "vacuum")["limit"]["value"]) == ("Shop does it", 24)


def test_faults_say_with_what(run):
    """Said twice: the number of the first row, as rows are counted; another unit or kind: that of the item."""
    told = {fault["field"]: fault for fault in applied(run, LIMIT, {**LIMIT, "whose": "department"})["faults"]}
    assert told["checks.1.item"]["row"] == 1
    [unit] = applied(run, {**LIMIT, "unit": "pressure"})["faults"]
    assert (unit["code"], unit["unit"]) == ("other_unit", "vacuum")
    [kind] = applied(run, {"item": "vacuum", "act": "change", "unit": "vacuum", "most": "24@US", "reason": "Order 7"})["faults"]
    assert (kind["code"], kind["kind"]) == ("other_kind", "min")


@pytest.mark.parametrize(("name", "value"), [("name", "Oil"), ("look", "Look."), ("good", "Good"), ("lists", ["weekly"])])
def test_words_and_lists_are_an_items(run, name, value):
    """What is due, and is no item, has neither words nor lists of its own."""
    assert (f"checks.0.{name}", "item_only") in faults(run, {"item": "gear_oil", "act": "change", "months": "6", name: value})
