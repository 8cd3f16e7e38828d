"""What each field of a rig's profile takes: its bounds on both sides, its choices, its words."""
import pytest

from calc.base.errors import CalcError
from calc.hydraulics import friction_rule
from calc.rig import fields as rig_fields
from site_src.content import data
from tests.unit.rig.test_profile import SHELF, US, a_rig, problems

WORDS = data.words("rig")
KINDS = {"text", "choice", "number", "quantity", "shelf", "crew"}  # as the Rig page and the profile's schema know them
# What a fire pump, its hose and its nozzles can have, in US units: common practice.
BOUNDS = [
    ("pump_rated", "@US", 50, 6000), ("pump_ratio", "", 0.2, 10), ("tank", "@US", 1, 20000), ("tank_rate", "@US", 10, 5000), ("relief_set", "@US", 20, 300), ("idle", "", 300, 1500),
    ("governed", "", 1000, 4000), ("speed_capacity", "", 300, 4000), ("speed_seventy", "", 300, 4000), ("speed_fifty", "", 300, 4000),
    ("axle_ratio", "", 1, 20), ("tyre_rev", "", 200, 1500), ("pump_gear_ratio", "", 0.3, 10), ("floor", "@US", 5, 40),
    ("wye_from", "@US", 0, 3000), ("wye_loss", "@US", 0, 100), ("panel_step", "@US", 0.1, 50), ("residual", "@US", 0, 150),
    ("hoses.0.coefficient", "@US", 0.001, 5000), ("hoses.0.test_pressure", "@US", 50, 2000), ("hoses.0.readings", "", 1, 20), ("beds.0.length", "@US", 1, 5000),
    ("beds.0.end.flow", "@US", 1, 5000), ("beds.0.end.pressure", "@US", 5, 1500),
    ("beds.1.end.tip", "@US", 0.1, 6), ("beds.1.end.pressure", "@US", 5, 1000), ("beds.0.loss", "@US", 0, 150), ("beds.0.loss_at", "@US", 50, 5000), ("beds.0.device_most", "@US", 50, 5000),
    ("supply.0.length", "@US", 1, 20000), ("supply.0.limit", "@US", 20, 1000),
]
CHOICES = {
    "units": ("US", "SI", "bar", "imperial"), "drive": ("midship", "pto", "front", "rear_shaft", "rear_pto"), "pressure_control": ("governor", "relief", "none"), "other_control": ("governor", "relief", "none"),
    "foam": ("none", "proportioner", "cafs"), "shift_control": ("air", "electric", "manual"),
    "transmission": ("automatic", "manual"), "pump_stages": ("1", "2"), "pump_light": ("before_drive", "after_drive"),
    "speedometer": ("driveline", "wheels"), "friction_rule": friction_rule.CODES, "standard": ("us", "canada", "europe"),
    "hoses.0.origin": ("handbook", "declared", "measured", "pooled", "typed"), "beds.0.device": ("master", "aerial"),
    "beds.0.cap": ("red", "orange", "yellow", "green", "blue", "purple", "brown", "white", "gray", "black"),
}


def with_value(place, value):
    """A sound rig with something else at one place, such as "beds.0.length"."""
    profile = target = a_rig(supply=[{"hose": "supply-4", "length": "600@US"}])
    *path, name = place.split(".")
    for part in path:
        target = target[int(part) if part.isdigit() else part]
    target[name] = value
    return profile


@pytest.mark.parametrize(("place", "mark", "least", "most"), BOUNDS, ids=[row[0] for row in BOUNDS])
def test_bounds(run, place, mark, least, most):
    """A figure at either bound is taken; just past it, it is told with both bounds."""
    for figure in (least, most):
        assert problems(run, with_value(place, f"{figure}{mark}")) == []
    for figure in (least - 0.0005, most + 0.5):
        assert problems(run, with_value(place, f"{figure}{mark}")) == [{"field": place, "code": "out_of_range", "least": least, "most": most}]
    assert problems(run, with_value(place, "some")) == [{"field": place, "code": "not_a_number"}]


@pytest.mark.parametrize("place", CHOICES)
def test_choices(run, place):
    """Each choice is taken and has its word; any other is told."""
    for option in CHOICES[place]:
        assert problems(run, with_value(place, option)) == []
        assert WORDS["option"][option]
    assert problems(run, with_value(place, "other")) == [{"field": place, "code": "unknown"}]


def test_every_field_has_its_word_and_a_test(run):
    """Each field is named on the page, is of a kind that the page knows, and stands in a table above where it has bounds or choices."""
    listed = {"": rig_fields.FIELDS, "hoses.0.": rig_fields.HOSE_FIELDS, "beds.0.": rig_fields.BED_FIELDS, "beds.0.end.": rig_fields.END_FIELDS["fog"],
              "beds.1.end.": rig_fields.END_FIELDS["smooth"], "supply.0.": rig_fields.SUPPLY_FIELDS}
    fields = {place + field[0]: field for place, rows in listed.items() for field in rows}
    for field in fields.values():
        assert WORDS["field"][field[0]] and field[1] in KINDS
    assert {place for place, field in fields.items() if field[1] in ("number", "quantity")} == {row[0] for row in BOUNDS}
    assert {place for place, field in fields.items() if field[1] == "choice"} == set(CHOICES)
    assert run("rig.check", "missing", profile={}) == [place for place in fields if "." not in place]


@pytest.mark.parametrize("place", ["pump_gear", "speed_in_pump", "override_place", "override_way", "override_tool",
                                   "stop_controls", "owner", "dated", "unit_number", "year_built", "pump_serial", "name", "beds.0.name"])
def test_texts(run, place):
    """A person's own words are taken as they are, up to sixty letters."""
    assert problems(run, with_value(place, "by the left step, 2 turns")) == []
    assert problems(run, with_value(place, "x" * 61)) == [{"field": place, "code": "not_text"}]


def test_a_field_of_older_profiles(run):
    """What older profiles hold and nothing asks for now does no harm: it is let in, and left out of what is used (common practice)."""
    older = with_value("intakes", "two 6 in, one 2 1/2 in")
    assert problems(run, older) == []
    assert "intakes" not in run("rig.profile", "at_hand", profile=older, shelf=SHELF, units=US)["rig"]
    assert "intakes" not in run("rig.check", "missing", profile={})
    assert problems(run, with_value("intakes", "x" * 61)) == [{"field": "intakes", "code": "not_text"}]


@pytest.mark.parametrize(
    ("value", "is_one"),
    [("a", True), ("saw_bar_2", True), ("z" * 60, True), ("z" * 61, False), ("", False), ("2a", False), ("_a", False), ("A", False), ("aB", False), ("a-b", False), ("\u00e9", False), (5, False), (None, False)],
)
def test_what_can_be_an_id(run, value, is_one):
    """Small letters of ASCII, digits and _, a letter first: nothing that a page would have to escape."""
    assert run("rig.fields", "is_code", value=value) == is_one


@pytest.mark.parametrize(
    ("value", "code"),
    [([], None), (["weekly"], None), ([f"own_{count}" for count in range(20)], None), ([f"own_{count}" for count in range(21)], "not_codes"),
     ("weekly", "not_codes"), ({"weekly": 1}, "not_codes"), (["weekly", 5], "not_codes"), (["weekly", "Weekly"], "not_codes"), (["weekly", "weekly"], "duplicate")],
)
def test_a_list_of_ids(run, value, code):
    """Twenty at most, each different."""
    if code is None:
        run("rig.fields", "check_codes", name="lists", value=value)
        return
    with pytest.raises(CalcError) as refusal:
        run("rig.fields", "check_codes", name="lists", value=value)
    assert (refusal.value.field, refusal.value.code) == ("lists", code)


@pytest.mark.parametrize(
    ("field", "value", "code", "facts"),
    [(("look", "note"), "x" * 201, "long_note", {"most": 200}), (("look", "note"), 5, "not_text", {}), (("item", "code"), "Saw bar", "not_code", {}), (("lists", "codes"), "weekly", "not_codes", {})],
)
def test_refused_by_its_own_name(run, field, value, code, facts):
    with pytest.raises(CalcError) as refusal:
        run("rig.fields", "check_field", value=value, field=field, context=[SHELF, US])
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == (field[0], code, facts)


@pytest.mark.parametrize(("place", "text", "is_taken"), [("pump_ratio", "2.345", True), ("axle_ratio", "4.875", True), ("governed", "2.100", False), ("governed", "2,100", True)])
def test_how_a_plain_number_is_read(run, place, text, is_taken):
    """A ratio has three decimals and no thousands; a speed that can be read two ways is asked."""
    told = problems(run, with_value(place, text))
    assert [each["code"] for each in told] == ([] if is_taken else ["thousands_or_decimals"])


@pytest.mark.parametrize(("coefficient", "is_one"), [(15.5, True), (15.6, True), (15.4, True), (15.7, False), (15.3, False)])
def test_a_figure_within_a_hundredth_is_the_handbooks(run, coefficient, is_one):
    """By hand: a hundredth of 15.5 is 0.155."""
    assert run("rig.fields", "is_handbooks", coefficient=coefficient, figures={"coefficient": 15.5}) == is_one


def test_checks_are_a_list_of_a_profile(run):
    """A rig's department's checks stand among what of it can be used; a row with a fault does not."""
    checks = [{"item": "belts", "act": "leave_out", "reason": "Shop does it"}, {"item": "pump", "act": "leave_out"}]
    own = run("rig.profile", "at_hand", profile=a_rig(checks=checks), shelf=SHELF, units=US)["rig"]
    assert own["checks"] == checks[:1]
