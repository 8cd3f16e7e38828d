"""A rig's profile: what is sound, what is refused and where, and what it changes."""
import copy
import json
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.rig import fields as rig_fields
from site_src.content import catalogue, fleet, units

SHELF = catalogue.shelf()
US = units.shown_in("US")
SOUND = fleet.load()  # of our own invention; here only its form is checked


def problems(run, profile):
    return run("rig.check", "problems", profile=profile, shelf=SHELF, units=US)


def a_rig(**changes):
    """The first rig of the demonstration fleet, with changes."""
    return {**copy.deepcopy(SOUND["tollgate-engine-1"]), **changes}


@pytest.mark.parametrize("name", sorted(SOUND))
def test_sound(run, name):
    """A sound profile has no problems, on either Python."""
    assert problems(run, SOUND[name]) == []


def test_three_fields_are_enough(run):
    """A name, its units and nothing else is a profile; all the rest is told as missing."""
    bare = {"schema": 1, "id": "a", "name": "Bare", "units": "US"}
    assert problems(run, bare) == []
    assert run("rig.check", "missing", profile=bare) == [field[0] for field in rig_fields.FIELDS if field[0] not in ("name", "units")]


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"name": ""}, "name", "missing"),
        ({"name": "x" * 61}, "name", "not_text"),
        ({"units": "furlongs"}, "units", "unknown"),
        ({"drive": "steam"}, "drive", "unknown"),
        ({"pump_rated": "lots"}, "pump_rated", "not_a_number"),
        ({"pump_rated": "9@US"}, "pump_rated", "out_of_range"),
        ({"pump_rated": 1500}, "pump_rated", "not_text"),
        ({"tank": "-5@US"}, "tank", "out_of_range"),
        ({"idle": "1e3"}, "idle", "not_a_number"),
        ({"tank": "5@nowhere"}, "tank", "unknown_units"),
        ({"__proto__": "x"}, "__proto__", "unknown_field"),
        ({"beds": "all"}, "beds", "damaged"),
        ({"beds": ["one"]}, "beds.0", "damaged"),
        ({"beds": [{}] * 41}, "beds", "too_many"),
        ({"hoses": [{"hose": "garden", "coefficient": "5@US"}]}, "hoses.0.hose", "unknown"),
        ({"hoses": [{"hose": "attack-2", "coefficient": "0@US"}]}, "hoses.0.coefficient", "out_of_range"),
        ({"id": None}, "id", "missing"),
        ({"id": ""}, "id", "missing"),
        ({"id": "x" * 61}, "id", "missing"),
        ({"hoses": {}}, "hoses", "damaged"),
        ({"hoses": [7]}, "hoses.0", "damaged"),
        ({"hoses": [{"hose": "attack-2", "coefficient": "5@US", "colour": "red"}]}, "hoses.0.colour", "unknown_field"),
        ({"hoses": [{"hose": "attack-2"}, {"hose": "attack-2"}]}, "hoses.1.hose", "duplicate"),
        *[({"hoses": [{"hose": "attack-2", "origin": origin}]}, "hoses.0.coefficient", "missing") for origin in ("measured", "declared", "pooled", "typed")],
        ({"hoses": [{"hose": "garden", "coefficient": "5@US", "origin": "handbook"}]}, "hoses.0.hose", "unknown"),
        ({"hoses": [{"hose": ["attack-2"], "coefficient": "5@US", "origin": "handbook"}] * 2}, "hoses.0.hose", "not_text"),
        ({"checks": "all"}, "checks", "damaged"),
        ({"hoses": [{"hose": "supply-4", "coefficient": "24@US", "origin": "handbook"}]}, "hoses.0.coefficient", "of_another_size"),
        ({"hoses": [{"hose": "piped"}]}, "hoses.0.hose", "unknown"),
        ({"supply": [{"hose": "supply-5"}]}, "supply.0.length", "missing"),
        ({"supply": [{"hose": "supply-5", "length": "600"}] * 2}, "supply.1.hose", "duplicate"),
        ({"supply": {}}, "supply", "damaged"),
        ({"tank": "750" + " " * 28}, "tank", "too_long"),
    ],
)
def test_problems_name_their_place(run, changes, field, code):
    """Each fault is told with the place it stands at."""
    assert {"field": field, "code": code} in [
        {"field": told["field"], "code": told["code"]} for told in problems(run, a_rig(**changes))
    ]


STACK = {"name": "Gun", "device": "master", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "80@US"}}
TIPS = [f"1.{count}@US" for count in range(1, 8)]


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        # the bounds of calc.rig.fields, the handbook's C 0.2 of 4 in hose, and rows counted from 1
        ({"pump_rated": "9@US"}, [{"field": "pump_rated", "code": "out_of_range", "least": 50, "most": 6000}]),
        ({"hoses": [{"hose": "supply-4", "coefficient": "24@US", "origin": "handbook"}]}, [{"field": "hoses.0.coefficient", "code": "of_another_size", "handbook": 0.2}]),
        ({"hoses": [{"hose": "supply-4", "coefficient": "24@US", "origin": "declared"}]}, []),
        ({"hoses": [{"hose": name} for name in ("supply-4", "attack-2", "attack-2")]}, [{"field": "hoses.2.hose", "code": "duplicate", "row": 2}]),
        ({"hoses": [{"hose": ""}] * 2}, [{"field": f"hoses.{row}.hose", "code": "missing"} for row in (0, 1)]),
        ({"beds": [{**STACK, "end": {**STACK["end"], "flow": "1" * 31}}]}, [{"field": "beds.0.end.flow", "code": "too_long", "most": 30}]),
        ({"beds": [{**STACK, "tips": TIPS[:6]}]}, []),
        ({"beds": [{**STACK, "tips": TIPS}]}, [{"field": "beds.0.tips", "code": "too_many", "most": 6}]),
        ({"beds": [{**STACK, "tips": ["6.5@US"]}]}, [{"field": "beds.0.tips", "code": "out_of_range", "least": 0.1, "most": 6}]),
    ],
)
def test_a_problem_says_what_would_do(run, changes, told):
    """With a fault come the bound it broke, the figure it is not, or the row that has it already."""
    assert problems(run, a_rig(**changes)) == told


def test_a_choice_that_says_too_little_is_missing(run):
    """A rear pump of an older profile may be on a shaft or a power take-off: it is let in, and asked."""
    profile = a_rig(drive="rear")
    assert problems(run, profile) == [] and "drive" in run("rig.check", "missing", profile=profile)


@pytest.mark.parametrize(
    ("name", "value", "place", "code"),
    [
        ("length", "", "length", "missing"),
        ("length", "far", "length", "not_a_number"),
        ("hose", "garden", "hose", "unknown"),
        ("crew", "9", "crew", "unknown"),
        ("end", {"kind": "hose"}, "end.kind", "unknown"),
        ("end", None, "end.kind", "unknown"),
        ("end", {"kind": "fog", "flow": "150@US"}, "end.pressure", "missing"),
        ("end", {"kind": "fog", "flow": "lots", "pressure": "100@US"}, "end.flow", "not_a_number"),
        ("colour", "red", "colour", "unknown_field"),
        ("tips", ["1.5@US"], "tips", "unknown_field"),  # of a hand line
        ("device", "cannon", "device", "unknown"),
        ("end", {"kind": "fog", "flow": "150@US", "pressure": "100@US", "tip": "x" * 31}, "end.tip", "too_long"),
        ("end", {"kind": "fog", "flow": "150@US", "pressure": "100@US", "tip": "5@nowhere"}, "end.tip", "unknown_units"),
        ("end", {"kind": "fog", "flow": "150@US", "pressure": "100@US", "tip": 5}, "end.tip", "not_text"),
        ("end", {"kind": "fog", "flow": "1" * 31, "pressure": "100@US"}, "end.flow", "too_long"),
        ("end", {"kind": "fog", "flow": "150@US", "pressure": "100@US", "colour": "5"}, "end.colour", "unknown_field"),
    ],
)
def test_problems_of_a_bed(run, name, value, place, code):
    """A bed's faults are told with the number of the bed."""
    profile = a_rig()
    profile["beds"][2][name] = value
    assert [(each["field"], each["code"]) for each in problems(run, profile)] == [("beds.2." + place, code)]


@pytest.mark.parametrize(
    ("changes", "places"),
    [
        ({"device": "master", "hose": "", "length": ""}, []), ({"device": "aerial", "hose": ""}, ["beds.2.hose"]),
        ({"device": "master", "length": ""}, ["beds.2.length"]), ({"hose": "", "length": ""}, ["beds.2.hose", "beds.2.length"]),
        ({"device": "master", "tips": ["1.5@US", "0.9375@US"]}, []), ({"device": "master", "tips": ["1.5@US"] * 7}, ["beds.2.tips"]),
        ({"device": "master", "tips": ["wide"]}, ["beds.2.tips"]), ({"device": "master", "tips": [""]}, ["beds.2.tips"]),
        ({"device": "master", "tips": "1.5"}, ["beds.2.tips"]), ({"device": "master", "loss": "151"}, ["beds.2.loss"]),
    ],
)
def test_a_master_stream(run, changes, places):
    """A deck gun needs no hose; with a device a bed may have a loss of its own and more tips."""
    profile = a_rig()
    profile["beds"][2].update(changes)
    assert [problem["field"] for problem in problems(run, profile)] == places


def test_as_much_as_fits(run):
    """Sixty letters of a text and forty beds are a rig; of more beds it is told how many there may be."""
    profile = a_rig(name="x" * 60, tank="")
    profile["beds"] = profile["beds"][:1] * 40
    assert problems(run, profile) == []
    profile["beds"].append(profile["beds"][0])
    assert problems(run, profile) == [{"field": "beds", "code": "too_many", "most": 40}]


@pytest.mark.parametrize("profile", [None, [], "rig"])
def test_no_profile_at_all(run, profile):
    """What is no profile is refused whole."""
    with pytest.raises(CalcError) as refused:
        problems(run, profile)
    assert (refused.value.field, refused.value.code) == ("profile", "damaged")


@pytest.mark.parametrize("profile", [{}, {"schema": 2}, {"schema": "1"}, {"schema": True}])
def test_another_version(run, profile):
    """A profile of another version is refused whole, and told which one is known."""
    with pytest.raises(CalcError) as refused:
        problems(run, profile)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("schema", "unknown_version", {"known": 1})


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-10**20, 10**20) | st.floats(allow_nan=False, allow_infinity=False) | st.text(max_size=70),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4),
    max_leaves=12,
)


@settings(max_examples=300, deadline=None)
@given(content=JSON, seed=st.integers(0, 10**6))
def test_hostile_profiles_end_in_words(run, content, seed):
    """A profile with anything at all in the place of any of its parts is judged, and never breaks the judge."""
    chance = random.Random(seed)
    profile = a_rig()
    target = profile
    while True:
        keys = list(target) if isinstance(target, dict) else list(range(len(target)))
        key = chance.choice(keys)
        if isinstance(target[key], (dict, list)) and target[key] and chance.random() < 0.7:
            target = target[key]
        else:
            target[key] = content
            break
    try:
        told = problems(run, profile)
    except CalcError as refused:
        assert refused.field in ("profile", "schema")
    else:
        assert all(isinstance(each["field"], str) and isinstance(each["code"], str) for each in told)
        assert json.loads(json.dumps(told)) == told


def test_own_figures_stand_in_place_of_the_handbook(run):
    """A rig's coefficient, test pressure and wye loss are used; the rest of the shelf is as it was."""
    profile = a_rig(wye_from="300@US", wye_loss="15@US",
                    hoses=[{"hose": "attack-1.75", "coefficient": "11.4@US", "origin": "measured", "test_pressure": "400@US"}])
    shelf = run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)["shelf"]
    own = shelf["hoses"]["attack-1.75"]
    assert (own["coefficient"], own["origin"], own["test_psi"]) == (11.4, "measured", 400)
    assert shelf["appliances"]["wye"] == [[0, 0], [300, 15]]
    assert shelf["hoses"]["attack-2.5"] == SHELF["hoses"]["attack-2.5"]
    answer = run("layout.answer", "answer", layout=run("rig.profile", "layout_of", bed=profile["beds"][2]), shelf=shelf, units=US)
    assert answer["pressure_psi"] == pytest.approx(164.125, rel=1e-9)  # by hand: 100 + 11.4 x 1.5^2 x 2.5


def test_what_a_profile_does_not_say_stays_the_handbooks(run):
    """Without a wye loss, a test pressure or a rule of its own, a rig has the shelf's; a figure that nobody signed is not the handbook's."""
    profile = {"schema": 1, "id": "a", "name": "Bare", "units": "US", "hoses": [{"hose": "attack-1.75", "coefficient": "11.4@US"}]}
    shelf = run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)["shelf"]
    assert shelf["appliances"] == SHELF["appliances"]
    own, handbook = shelf["hoses"]["attack-1.75"], SHELF["hoses"]["attack-1.75"]
    assert (own["coefficient"], own["origin"], own["test_psi"]) == (11.4, "typed", handbook["test_psi"])
    assert "rule" not in shelf
    assert run("rig.profile", "at_hand", profile={**profile, "friction_rule": "square"}, shelf=SHELF, units=US)["shelf"]["rule"] == "square"
    del profile["hoses"]
    assert run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)["shelf"] == SHELF


@pytest.mark.parametrize(("changes", "steps"), [
    ({"wye_from": ""}, [[0, 15]]), ({"wye_from": "0@US"}, [[0, 15]]), ({"wye_from": "0.5@US"}, [[0, 0], [0.5, 15]])])
def test_wye_loss_from_a_flow_on(run, changes, steps):
    """A wye loss counts from the flow that the profile names, or always."""
    shelf = run("rig.profile", "at_hand", profile=a_rig(wye_loss="15@US", **changes), shelf=SHELF, units=US)["shelf"]
    assert shelf["appliances"]["wye"] == steps


def test_the_lay_of_a_bed(run):
    """A bed lies level, held by its own people, by two where it does not say."""
    bed = a_rig()["beds"][0]
    line = {"id": "A", "hose": bed["hose"], "length": bed["length"], "height": "0", "end": bed["end"]}
    assert run("rig.profile", "layout_of", bed={**bed, "crew": "3"}) == {"crew": "3", "lines": [line]}
    assert run("rig.profile", "layout_of", bed={**bed, "crew": ""}) == {"crew": "2", "lines": [line]}
    gun = {"name": "Deck gun", "device": "master", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "80@US"}}
    piped = {"id": "A", "hose": "piped", "length": "0", "height": "0", "device": "master", "loss": "", "end": gun["end"]}
    assert run("rig.profile", "layout_of", bed=gun) == {"crew": "2", "lines": [piped]}
    assert run("rig.profile", "layout_of", bed={**gun, "loss": "40@US"})["lines"][0]["loss"] == "40@US"


def test_each_tip_of_a_gun(run):
    """A gun stands once for each of its tips; other beds once."""
    gun = {"name": "Gun", "device": "master", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "80@US"}, "tips": ["1.75@US", "1.5@US"]}
    fog = {**gun, "end": {"kind": "fog", "flow": "500@US", "pressure": "100@US"}}
    beds = run("rig.profile", "beds_of", profile={"beds": [fog, gun]})
    assert [bed["end"].get("tip") for bed in beds] == [None, "1.5@US", "1.75@US"]


def test_a_foreign_field_in_a_nozzle_is_told(run):
    """What no nozzle has is told at its place."""
    profile = a_rig()
    profile["beds"][0]["end"]["colour"] = "red"
    assert {"field": "beds.0.end.colour", "code": "unknown_field"} in problems(run, profile)


def test_a_bed_brings_the_flow_of_its_loss(run):
    """The builder's figure goes with the flow it was measured at."""
    bed = {"name": "Gun", "device": "aerial", "loss": "60@US", "loss_at": "1000@US", "end": {"kind": "smooth", "tip": "2@US", "pressure": "80@US"}}
    line = run("rig.profile", "layout_of", bed=bed)["lines"][0]
    assert (line["loss"], line["loss_at"]) == ("60@US", "1000@US")


def test_a_bed_brings_its_device_s_own_limit(run):
    """What the maker says it is made for goes with it; where nobody says, nothing does."""
    bed = {"name": "Gun", "device": "master", "end": {"kind": "smooth", "tip": "2@US", "pressure": "80@US"}}
    assert run("rig.profile", "layout_of", bed={**bed, "device_most": "800@US"})["lines"][0]["device_most"] == "800@US"
    assert "device_most" not in run("rig.profile", "layout_of", bed=bed)["lines"][0]
