"""What each field of a rig's profile takes: its bounds on both sides, its choices, its words."""
import pytest

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
