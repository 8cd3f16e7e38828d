"""What the rules of the water pages refuse: every input by its own name, whatever is wrong with it."""
import pytest

from calc.base.errors import CalcError

# by rule, a call that is answered: each input with what it may not be. positive: neither 0 nor less; or_zero: not less; any: any number; a pair: from, to
POSITIVE, OR_ZERO, ANY = "positive", "or_zero", "any"

CALLS = {
    "fireflow.by_area_gpm": {"length_ft": (50, POSITIVE), "width_ft": (30, POSITIVE), "floors": (2, (1, 100)), "involved_percent": (50, (1, 100)), "exposures": (1, OR_ZERO)},
    "fireflow.by_volume_gpm": {"volume_ft3": (12000, POSITIVE)},
    "fireflow.store_gal": {"volume_ft3": (12000, POSITIVE), "hazard": (4, (3, 7)), "construction": (1, (0.5, 1.5)), "is_exposed": (False, None)},
    "fireflow.delivery_gpm": {"stored_gal": (5000, OR_ZERO)},
    "fireflow.lines_for": {"flow_gpm": (500, OR_ZERO), "line_gpm": (150, POSITIVE)},
    "foam.spill_gpm": {"area_ft2": (1000, POSITIVE), "rate_gpm_per_ft2": (0.1, (0.01, 1))},
    "foam.eductors_for": {"solution_gpm": (200, OR_ZERO), "eductor_gpm": (95, POSITIVE)},
    "foam.concentrate_gpm": {"flow_gpm": (95, OR_ZERO), "percent": (3, (0.1, 6))},
    "foam.foam_minutes": {"concentrate_gal": (30, OR_ZERO), "flow_gpm": (95, POSITIVE), "percent": (3, (0.1, 6))},
    "foam.concentrate_gal": {"minutes": (10, OR_ZERO), "flow_gpm": (95, OR_ZERO), "percent": (3, (0.1, 6))},
    "foam.back_pressure_psi": {"coefficient": (15.5, POSITIVE), "flow_gpm": (95, OR_ZERO), "length_ft": (150, OR_ZERO), "rise_ft": (10, ANY), "nozzle_psi": (100, OR_ZERO)},
    "foam.longest_hose_ft": {"coefficient": (15.5, POSITIVE), "flow_gpm": (95, POSITIVE), "rise_ft": (10, ANY), "nozzle_psi": (100, OR_ZERO), "most_psi": (130, POSITIVE)},
    "foam.most_back_pressure_psi": {"inlet_psi": (200, POSITIVE), "share_percent": (65, (50, 80))},
    "hoselay.trunk_loss_psi": {"coefficient": (24, POSITIVE), "length_ft": (1000, POSITIVE), "spacing_ft": (200, OR_ZERO), "laterals": (3, POSITIVE), "lateral_gpm": (24, OR_ZERO)},
    "hoselay.unlined_coefficient": {"coefficient": (24, POSITIVE)},
    "hoselay.fittings_psi": {"fittings": (5, OR_ZERO)},
    "hoselay.field_elevation_psi": {"rise_ft": (100, ANY)},
    "hoselay.pumps_for": {"needed_psi": (500, ANY), "each_psi": (200, POSITIVE)},
    "hydrant.outlets_flow_gpm": {"bore_in": (2.5, POSITIVE), "pitot_psi": (20, OR_ZERO), "discharge_coefficient": (0.9, None), "outlets": (1, None)},
    "hydrant.class_residual_psi": {"static_psi": (60, POSITIVE)},
    "hydrant.hydrant_class": {"flow_gpm": (900, OR_ZERO)},
    "relay.plan": {"coefficient": (0.2, POSITIVE), "flow_gpm": (500, POSITIVE), "distance_ft": (3000, POSITIVE), "rise_ft": (20, ANY), "most_psi": (185, POSITIVE), "residual_psi": (20, OR_ZERO)},
    "relay.fill_minutes": {"bore_in": (4, POSITIVE), "length_ft": (3000, OR_ZERO), "hoses": (1, POSITIVE), "flow_gpm": (500, POSITIVE)},
    "shuttle.travel_minutes": {"distance_miles": (3, OR_ZERO), "is_round_trip": (False, None)},
    "shuttle.plan": {"tankers": (3, (1, 30)), "tank_gal": (2000, POSITIVE), "road_minutes": (8, OR_ZERO), "fill_minutes": (4, POSITIVE), "dump_minutes": (3, POSITIVE)},
    "shuttle.tankers_for": {"wanted_gpm": (500, POSITIVE), "tank_gal": (2000, POSITIVE), "road_minutes": (8, OR_ZERO), "fill_minutes": (4, POSITIVE), "dump_minutes": (3, POSITIVE)},
    "shuttle.portable_tanks": {"load_gal": (2000, POSITIVE), "portable_gal": (2500, POSITIVE)},
    "shuttle.siphons_for": {"flow_gpm": (900, OR_ZERO)},
    "sources.hydrant_flow_gpm": {"static_psi": (80, POSITIVE), "residual_psi": (60, OR_ZERO), "test_flow_gpm": (500, POSITIVE), "at_psi": (20, None)},
    "sources.additional_lines": {"static_psi": (80, POSITIVE), "residual_psi": (70, OR_ZERO)},
    "sources.tank_minutes": {"tank_gal": (1000, OR_ZERO), "flow_gpm": (150, POSITIVE)},
    "sources.relay_spacing_ft": {"coefficient": (0.2, POSITIVE), "flow_gpm": (500, POSITIVE), "discharge_psi": (185, POSITIVE), "residual_psi": (20, OR_ZERO), "rise_ft": (10, ANY)},
    "sources.shuttle_gpm": {"tank_gal": (2000, OR_ZERO), "cycle_minutes": (15, POSITIVE)},
    "sources.pond_gal": {"length_ft": (100, POSITIVE), "width_ft": (50, POSITIVE), "above_strainer_ft": (4, OR_ZERO)},
    "sources.stream_gpm": {"width_ft": (10, POSITIVE), "depth_ft": (2, POSITIVE), "float_ft": (20, POSITIVE), "float_s": (10, POSITIVE)},
}


def refusals():
    """Of each input what is refused of it, and by which code."""
    for rule, inputs in CALLS.items():
        for name, (good, bounds) in inputs.items():
            if isinstance(good, bool):
                continue
            yield rule, name, "x", "not_a_number"
            if bounds in (POSITIVE, OR_ZERO, ANY):
                yield rule, name, 1e13, "too_large"
            if bounds == POSITIVE:
                yield rule, name, 0, "not_positive"
            if bounds in (POSITIVE, OR_ZERO):
                yield rule, name, -0.5, "not_positive" if bounds == POSITIVE else "negative"
            if isinstance(bounds, tuple):
                yield rule, name, bounds[0] * 0.99, "out_of_range"
                yield rule, name, bounds[1] * 1.001, "out_of_range"


def call(run, rule, **changed):
    module, function = rule.split(".")
    return run.unheld("supply." + module, function, **{name: good for name, (good, _) in CALLS[rule].items()} | changed)


@pytest.mark.parametrize(("rule", "name", "value", "code"), list(refusals()), ids=str)
def test_every_input_is_refused_by_its_name(run, rule, name, value, code):
    with pytest.raises(CalcError) as refusal:
        call(run, rule, **{name: value})
    assert (refusal.value.field, refusal.value.code) == (name, code)


@pytest.mark.parametrize(("rule", "name", "value"), [
    (rule, name, value) for rule, inputs in CALLS.items() for name, (_, bounds) in inputs.items()
    for value in (bounds if isinstance(bounds, tuple) else (0,) if bounds == OR_ZERO else (-5,) if bounds == ANY else ())
], ids=str)
def test_every_bound_is_allowed(run, rule, name, value):
    assert call(run, rule, **{name: value}) is not None or rule == "shuttle.tankers_for"


def test_a_floor_below_the_first(run):
    for floor in (0, 0.5, -3):
        with pytest.raises(CalcError) as refusal:
            run.unheld("supply.connection", "floors_psi", floor=floor)
        assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("floor", "out_of_range", {"least": "1"})


def test_laterals_on_their_trunk(run):
    """Twenty at most, and all within its length: five by 250 ft on 1,000 ft begin at the pump, a foot more and they do not fit."""
    assert call(run, "hoselay.trunk_loss_psi", laterals=20, spacing_ft=50) > 0 and call(run, "hoselay.trunk_loss_psi", laterals=5, spacing_ft=250) > 0
    for changed, expected in (({"laterals": 21, "spacing_ft": 0}, ("laterals", "too_many", {"most": 20})), ({"laterals": 5, "spacing_ft": 251}, ("spacing_ft", "past_trunk", {}))):
        with pytest.raises(CalcError) as refusal:
            call(run, "hoselay.trunk_loss_psi", **changed)
        assert (refusal.value.field, refusal.value.code, refusal.value.facts) == expected


@pytest.mark.parametrize(("stored_gal", "gpm"), [(2499, 250), (2500, 500), (9999, 500), (10000, 750), (19999, 750), (20000, 1000)])
def test_delivery_at_its_bounds(run, stored_gal, gpm):
    """NFPA 1142's delivery by what is stored, from memory."""
    assert call(run, "fireflow.delivery_gpm", stored_gal=stored_gal) == gpm


@pytest.mark.parametrize(("trunk", "pump_psi", "feet"), [
    ({"length_ft": 1000, "lateral_gpm": 100}, 20, 0), ({"length_ft": 1000, "lateral_gpm": 100}, 260, 1000),  # by hand, C 24 and 100 gpm: 24 psi a hundred feet
    ({"length_ft": 1000, "lateral_gpm": 100}, 140, 500), ({"length_ft": 1000, "lateral_gpm": 100}, 259.999, 999.996),
])
def test_the_next_pump(run, trunk, pump_psi, feet):
    whole = {"coefficient": 24, "spacing_ft": 0, "laterals": 1, "rise_ft": 0, "fittings": 0} | trunk
    assert run.unheld("supply.hoselay", "next_pump_ft", trunk=whole, pump_psi=pump_psi) == pytest.approx(feet, abs=0.001)


def test_the_next_pump_of_no_trunk(run):
    with pytest.raises(CalcError) as refusal:
        run.unheld("supply.hoselay", "next_pump_ft", pump_psi=-1, trunk={"coefficient": 24, "length_ft": 1000, "spacing_ft": 0, "laterals": 1, "lateral_gpm": 50, "rise_ft": 0, "fittings": 0})
    assert (refusal.value.field, refusal.value.code) == ("pump_psi", "negative")


def test_tankers_are_whole(run):
    with pytest.raises(CalcError) as refusal:
        call(run, "shuttle.plan", tankers=2.5)
    assert (refusal.value.field, refusal.value.code) == ("tankers", "not_whole")


def test_tankers_for_a_flow(run):
    """By hand: 2,000 gal x 0.9 over a cycle of 64 min (60 road, 2, 2) is 28.125 gpm each, 30 of them 843.75; sites that take 2 min each have no one waiting."""
    calm = {"road_minutes": 60, "fill_minutes": 2, "dump_minutes": 2}
    answers = [call(run, "shuttle.tankers_for", wanted_gpm=wanted, **calm) for wanted in (28.125, 28.2, 843.75, 843.8)]
    assert answers == [1, 2, 30, None]


def test_what_holds_a_shuttle(run):
    """Sites alike hold at the fill site; at what is just busy nobody waits (by hand: 8 + 4 + 4 min, a site takes four of 4 min each)."""
    alike = {"road_minutes": 8, "fill_minutes": 4, "dump_minutes": 4}
    held = [call(run, "shuttle.plan", tankers=tankers, **alike) for tankers in (4, 5)]
    assert [(plan["held_by"], plan["wait_minutes"], plan["useful"]) for plan in held] == [("road", 0, 4), ("fill", 4, 4)]
