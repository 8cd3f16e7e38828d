"""The relay and the shuttle."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

RELAY = {"coefficient": 0.08, "flow_gpm": 1000, "distance_ft": 3000, "rise_ft": 0, "most_psi": 185, "residual_psi": 20}
SHUTTLE = {"tank_gal": 2500, "road_minutes": 11.5, "fill_minutes": 5, "dump_minutes": 4}


@pytest.mark.parametrize(
    ("changes", "pumpers", "discharge_psi", "shut_psi"),
    [
        # by hand: 0.08 x 10^2 = 8 psi per 100 ft, so 240 over 3,000 ft, in legs of at most 185 - 20 = 165
        ({}, 3, 140, 140),                     # two legs: 20 + 120
        ({"distance_ft": 2000}, 2, 180, 180),  # one leg: 20 + 160
        ({"rise_ft": 100}, 3, 161.7, 140),     # 43.4 of height: 20 + 120 + 21.7; shut, the height is gone
        ({"flow_gpm": 500}, 2, 80, 80),        # 2 psi per 100 ft: 20 + 60
        ({"rise_ft": -800}, 2, -87.2, 260),    # 347.2 downhill beats 240: the slope carries, shut it stands at 260
        ({"most_psi": 260}, 2, 260, 260),      # 240 just fits
    ],
)
def test_plan(run, changes, pumpers, discharge_psi, shut_psi):
    """The fewest pumpers, each showing residual, friction and height of one leg."""
    plan = run("supply.relay", "plan", **{**RELAY, **changes})
    assert plan["pumpers"] == pumpers
    assert plan["discharge_psi"] == pytest.approx(discharge_psi, rel=1e-9)
    assert plan["shut_psi"] == pytest.approx(shut_psi, rel=1e-9)


@settings(deadline=None, max_examples=60)
@given(flow_gpm=st.floats(100, 2000), distance_ft=st.floats(100, 8000), rise_ft=st.floats(-200, 200))
def test_fewest(run, flow_gpm, distance_ft, rise_ft):
    """No pumper passes its limit, one pumper fewer would, and the level reach is relay_spacing_ft."""
    asked = {**RELAY, "flow_gpm": flow_gpm, "distance_ft": distance_ft, "rise_ft": rise_ft}
    try:
        plan = run("supply.relay", "plan", **asked)
    except CalcError as error:
        assert error.code == "too_many_pumpers"
        return
    legs = plan["pumpers"] - 1
    assert plan["discharge_psi"] <= 185 + 1e-6
    lost_psi = (plan["friction_psi"] + plan["elevation_psi"]) * legs
    assert legs == 1 or lost_psi / (legs - 1) > 165 - 1e-6
    level = run("supply.relay", "plan", **{**asked, "rise_ft": 0})
    reach_ft = run("supply.sources", "relay_spacing_ft", coefficient=0.08, flow_gpm=flow_gpm, discharge_psi=185, residual_psi=20, rise_ft=0)
    assert level["reach_ft"] == pytest.approx(reach_ft, rel=1e-9)


def test_fill(run):
    """A hose fills in the time its water takes to arrive."""
    # by hand: 5 in: 19.635 in2 x 36,000 in / 231 = 3,060 gal; at 1,000 gpm 3.06 min; two hoses take twice that
    one, two = (run("supply.relay", "fill_minutes", bore_in=5, length_ft=3000, hoses=hoses, flow_gpm=1000) for hoses in (1, 2))
    assert one == pytest.approx(3.06, abs=0.001)
    assert two == pytest.approx(2 * one, rel=1e-9)


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"most_psi": 20}, "most_psi", "not_above_residual"),
        ({"distance_ft": 200000}, "distance_ft", "too_many_pumpers"),
        ({"flow_gpm": 0}, "flow_gpm", "not_positive"),
        ({"distance_ft": 0}, "distance_ft", "not_positive"),
        ({"coefficient": 0}, "coefficient", "not_positive"),
        ({"residual_psi": -1}, "residual_psi", "negative"),
    ],
)
def test_refusal(run, changes, field, code):
    """What cannot be used is refused by field and code."""
    with pytest.raises(CalcError) as refusal:
        run("supply.relay", "plan", **{**RELAY, **changes})
    assert (refusal.value.field, refusal.value.code) == (field, code)


@pytest.mark.parametrize(
    ("distance_miles", "is_round_trip", "minutes"),
    [
        (3, False, 11.5),  # by hand: 2 x (0.65 + 1.7 x 3)
        (3, True, 6.4),    # there and back: 2 x (0.65 + 1.7 x 1.5)
        (0, False, 1.3),
    ],
)
def test_road(run, distance_miles, is_round_trip, minutes):
    """Each way takes its start, its stop and its miles."""
    told = run("supply.shuttle", "travel_minutes", distance_miles=distance_miles, is_round_trip=is_round_trip)
    assert told == pytest.approx(minutes, rel=1e-9)


@pytest.mark.parametrize(
    ("tankers", "flow_gpm", "held_by", "wait_minutes"),
    [
        # by hand: a round takes 11.5 + 5 + 4 = 20.5 min and brings 0.9 x 2500 = 2250 gal; the fill site passes one in 5 min
        (1, 109.756, "road", 0),    # 2250 / 20.5
        (3, 329.268, "road", 0),
        (4, 439.024, "road", 0),
        (5, 450, "fill", 4.5),      # five need 25 min at the fill site: 2250 / 5
        (9, 450, "fill", 24.5),
    ],
)
def test_shuttle(run, tankers, flow_gpm, held_by, wait_minutes):
    """Tankers add up until the slower site has one waiting, and then no more."""
    plan = run("supply.shuttle", "plan", tankers=tankers, **SHUTTLE)
    assert plan["flow_gpm"] == pytest.approx(flow_gpm, abs=0.001)
    assert (plan["held_by"], plan["useful"]) == (held_by, 5)  # 20.5 / 5 rounded up
    assert plan["wait_minutes"] == pytest.approx(wait_minutes, abs=1e-9)


def test_held_at_dump(run):
    """The site that takes longer is named."""
    plan = run("supply.shuttle", "plan", tankers=5, tank_gal=2500, road_minutes=5, fill_minutes=4, dump_minutes=6)
    assert (plan["held_by"], plan["cycle_minutes"]) == ("dump", 30)  # by hand: five at 6 min


@pytest.mark.parametrize(("wanted_gpm", "tankers"), [(109, 1), (300, 3), (440, 5), (450, 5), (451, None)])
def test_tankers_for(run, wanted_gpm, tankers):
    """As many as it takes, or none where the sites do not allow it; from the rows above."""
    assert run("supply.shuttle", "tankers_for", wanted_gpm=wanted_gpm, **SHUTTLE) == tankers


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"tankers": 1.5}, "tankers", "not_whole"), ({"tankers": 0}, "tankers", "out_of_range"),
        ({"tank_gal": 0}, "tank_gal", "not_positive"), ({"fill_minutes": 0}, "fill_minutes", "not_positive"),
        ({"road_minutes": -1}, "road_minutes", "negative"),
    ],
)
def test_shuttle_refusal(run, changes, field, code):
    """What cannot be used is refused by field and code."""
    with pytest.raises(CalcError) as refusal:
        run("supply.shuttle", "plan", **{"tankers": 2, **SHUTTLE, **changes})
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_a_tanker_never_enough(run):
    """By hand: 2,250 gal in 500 min and 10 min are 4.4 gpm each; thirty bring 132, and no site stands in their way."""
    asked = {"tank_gal": 2500, "road_minutes": 500, "fill_minutes": 5, "dump_minutes": 5}
    assert run("supply.shuttle", "tankers_for", wanted_gpm=1000, **asked) is None


def test_the_longest_relay(run):
    """By hand: 49 legs of 165 psi at 8 psi per 100 ft are 101,062.5 ft, fifty pumpers; a foot more is too many."""
    assert run("supply.relay", "plan", **{**RELAY, "distance_ft": 101062})["pumpers"] == 50
    with pytest.raises(CalcError) as refusal:
        run("supply.relay", "plan", **{**RELAY, "distance_ft": 101064})
    assert (refusal.value.code, refusal.value.facts) == ("too_many_pumpers", {"most": 50})


def test_a_leg_of_the_relay(run):
    """By hand: 240 psi of friction over two legs are 120 in each; where the slope carries no leg is too long."""
    assert run("supply.relay", "plan", **RELAY)["friction_psi"] == pytest.approx(120, rel=1e-9)
    assert run("supply.relay", "plan", **{**RELAY, "rise_ft": -800})["reach_ft"] is None
    with pytest.raises(CalcError) as refusal:
        run("supply.relay", "plan", **{**RELAY, "most_psi": 20})
    assert refusal.value.facts == {"residual_psi": 20}


def test_as_many_tankers_as_are_useful(run):
    """By hand: a round of 20 min past sites of 5 has room for just four; alike, the fill site is named; thirty are the most."""
    even = {"tank_gal": 2500, "road_minutes": 10, "fill_minutes": 5, "dump_minutes": 5}
    plan = run("supply.shuttle", "plan", tankers=5, **even)
    assert (plan["useful"], plan["held_by"], plan["wait_minutes"]) == (4, "fill", pytest.approx(5))
    slightly = run("supply.shuttle", "plan", tankers=5, tank_gal=2500, road_minutes=14.5, fill_minutes=5, dump_minutes=5)
    assert (slightly["held_by"], slightly["wait_minutes"]) == ("fill", pytest.approx(0.5))
    far = {**even, "road_minutes": 190}  # 2,250 gal in 200 min: 11.25 gpm each
    assert run("supply.shuttle", "tankers_for", wanted_gpm=337.5, **far) == 30
    assert run("supply.shuttle", "tankers_for", wanted_gpm=337.6, **far) is None


EVEN = {"tankers": 1, "tank_gal": 2500, "fill_minutes": 5, "dump_minutes": 4}


@pytest.mark.parametrize(
    ("arguments", "field", "code"),
    [
        ({"kinds": [EVEN], "road_minutes": -1}, "road_minutes", "negative"),
        ({"kinds": [EVEN, {**EVEN, "tankers": 31}], "road_minutes": 10}, "tankers", "out_of_range"),
        ({"kinds": [EVEN, {**EVEN, "tank_gal": 0}], "road_minutes": 10}, "tank_gal", "not_positive"),
        ({"kinds": [EVEN, {**EVEN, "fill_minutes": 0}], "road_minutes": 10}, "fill_minutes", "not_positive"),
        ({"kinds": [EVEN, {**EVEN, "dump_minutes": 0}], "road_minutes": 10}, "dump_minutes", "not_positive"),
    ],
)
def test_unlike_tankers_that_cannot_be(run, arguments, field, code):
    """Whichever kind it is of, an input is refused by its own name."""
    with pytest.raises(CalcError) as refusal:
        run("supply.shuttle", "mixed", **arguments)
    assert (refusal.value.field, refusal.value.code) == (field, code)


@pytest.mark.parametrize(
    ("counts", "times", "flow_gpm", "wait_minutes", "held_by", "road_minutes"),
    [
        # by hand, 2,250 gal a round of 10 + 5 + 5 min: two of each kind are just the four that the sites have room for, 112.5 gpm each
        ((2, 2), (5, 5), 450, 0, "road", 10),
        ((2, 3), (5, 5), 450, 5, "fill", 10),   # five take 25 min at either site; alike, the fill site is named
        ((3, 3), (4, 6), 375, 16, "dump", 10),  # six take 36 min at the dump site: 6 x 2,250 / 36
        ((3, 3), (6, 4), 375, 16, "fill", 10),
        ((2, 3), (5, 5), 450, 0.5, "fill", 14.5),  # 24.5 min of their own
    ],
)
def test_two_kinds_alike_are_one(run, counts, times, flow_gpm, wait_minutes, held_by, road_minutes):
    """Of kinds that differ in nothing, the mixed rule says what the plain one does."""
    kinds = [{"tankers": count, "tank_gal": 2500, "fill_minutes": times[0], "dump_minutes": times[1]} for count in counts]
    told = run("supply.shuttle", "mixed", kinds=kinds, road_minutes=road_minutes)
    assert told == {"flow_gpm": pytest.approx(flow_gpm), "wait_minutes": pytest.approx(wait_minutes, abs=1e-9), "held_by": held_by}
    plain = run("supply.shuttle", "plan", tankers=sum(counts), tank_gal=2500, road_minutes=road_minutes, fill_minutes=times[0], dump_minutes=times[1])
    assert (plain["flow_gpm"], plain["wait_minutes"], plain["held_by"]) == (told["flow_gpm"], pytest.approx(told["wait_minutes"], abs=1e-9), held_by)


@pytest.mark.parametrize(("load_gal", "portable_gal", "tanks"), [(2500, 3000, 1), (2501, 3000, 2), (2500, 1000, 3), (1, 1000, 1)])
def test_portable_tanks(run, load_gal, portable_gal, tanks):
    """The load and 500 gallons more (NFPA 1142 practice, from memory), just filled or a gallon past."""
    assert run("supply.shuttle", "portable_tanks", load_gal=load_gal, portable_gal=portable_gal) == tanks


@pytest.mark.parametrize(("flow_gpm", "siphons"), [(0, 0), (1, 1), (500, 1), (501, 2), (1500, 3)])
def test_siphons(run, flow_gpm, siphons):
    """About 500 gpm each (planning figure, from memory)."""
    assert run("supply.shuttle", "siphons_for", flow_gpm=flow_gpm) == siphons
