"""What is no number, or out of its bounds, is refused under the name it was given by; the formulas of test_laws have theirs there."""
import pytest

from calc.base.errors import CalcError

ROWS = [{"size_in": 6, "gpm": 1000, "loss_20ft_ft": 3.4, "add_10_ft": 0.6}]
FOAM_LINE = {"coefficient": 15.5, "flow_gpm": 95, "rise_ft": 0, "nozzle_psi": 100}
SHUTTLE = {"tank_gal": 2500, "road_minutes": 11.5, "fill_minutes": 5, "dump_minutes": 4}
HYDRANT = {"static_psi": 65, "residual_psi": 50, "flow_gpm": 500}
SUPPLY_LINE = {"coefficient": 0.08, "length_ft": 500, "rise_ft": 10}
KIND = {"tankers": 2, "tank_gal": 2500, "fill_minutes": 5, "dump_minutes": 4}
NET = {"discharge_accuracy_psi": 2, "lift_accuracy_ft": 0.5, "loss_accuracy_ft": 1}
# arguments that are taken, and the bounds that a docstring gives: both allowed
SOUND = {
    ("hydraulics.air", "pressure_psi"): ({"altitude_ft": 500}, {"altitude_ft": (-1500, 20000)}),
    ("pump.draft", "max_lift_ft"): ({"altitude_ft": 0, "water_f": 60}, {"altitude_ft": (-1500, 20000), "water_f": (32, 212)}),
    ("pump.draft", "net_pump_pressure_psi"): ({"discharge_psi": 150, "lift_ft": 10, "intake_loss_ft": 5}, {}),
    ("pump.draft", "net_pump_pressure_from_intake_psi"): ({"discharge_psi": 150, "intake_psi": -5}, {}),
    ("pump.draft", "lift_from_vacuum_ft"): ({"vacuum_inhg": 15}, {"vacuum_inhg": (0, 30)}),
    ("pump.draft", "suction_loss_ft"): ({"rows": ROWS, "size_in": 6, "flow_gpm": 900, "length_ft": 20}, {"length_ft": (10, 200)}),
    ("pump.draft", "counted_lift_ft"): ({"lift_ft": 10, "altitude_ft": 0, "water_f": 60}, {}),
    ("pump.draft", "practical_lift_ft"): ({"altitude_ft": 0, "water_f": 60}, {}),
    ("pump.draft", "rated_share"): ({"lift_ft": 10}, {"lift_ft": (0, 20)}),
    ("pump.draft", "vacuum_inhg"): ({"head_ft": 10}, {}),
    ("pump.driveline", "gear_of_speed"): ({"shown_mph": 10, "gears": [["1", 10]], "pump_gear": "1"}, {}),
    ("supply.fireflow", "by_area_gpm"): (
        {"length_ft": 50, "width_ft": 30, "floors": 1, "involved_percent": 25, "exposures": 0}, {"floors": (1, 100), "involved_percent": (1, 100)}),
    ("supply.fireflow", "by_volume_gpm"): ({"volume_ft3": 12000}, {}),
    ("supply.fireflow", "store_gal"): ({"volume_ft3": 12000, "hazard": 7, "construction": 1, "is_exposed": False}, {"hazard": (3, 7), "construction": (0.5, 1.5)}),
    ("supply.fireflow", "delivery_gpm"): ({"stored_gal": 3000}, {}),
    ("supply.fireflow", "lines_for"): ({"flow_gpm": 500, "line_gpm": 150}, {}),
    ("supply.hoselay", "trunk_loss_psi"): ({"coefficient": 24, "length_ft": 1000, "spacing_ft": 200, "laterals": 3, "lateral_gpm": 24}, {}),
    ("supply.hoselay", "unlined_coefficient"): ({"coefficient": 24}, {}),
    ("supply.hoselay", "fittings_psi"): ({"fittings": 5}, {}),
    ("supply.hoselay", "field_elevation_psi"): ({"rise_ft": 100}, {}),
    ("supply.hoselay", "pumps_for"): ({"needed_psi": 300, "each_psi": 150}, {}),
    ("supply.foam", "spill_gpm"): ({"area_ft2": 3000, "rate_gpm_per_ft2": 0.2}, {"rate_gpm_per_ft2": (0.01, 1)}),
    ("supply.foam", "eductors_for"): ({"solution_gpm": 600, "eductor_gpm": 125}, {}),
    ("supply.foam", "concentrate_gpm"): ({"flow_gpm": 95, "percent": 3}, {"percent": (0.1, 6)}),
    ("supply.foam", "foam_minutes"): ({"concentrate_gal": 20, "flow_gpm": 95, "percent": 3}, {"percent": (0.1, 6)}),
    ("supply.foam", "concentrate_gal"): ({"minutes": 10, "flow_gpm": 95, "percent": 3}, {}),
    ("supply.foam", "back_pressure_psi"): ({**FOAM_LINE, "length_ft": 150}, {}),
    ("supply.foam", "longest_hose_ft"): ({**FOAM_LINE, "most_psi": 130}, {}),
    ("supply.foam", "most_back_pressure_psi"): ({"inlet_psi": 200, "share_percent": 65}, {"share_percent": (50, 80)}),
    ("supply.hydrant", "large_outlet_factor"): ({"pitot_psi": 5}, {}),
    ("supply.hydrant", "more_lines"): ({"test": {"static_psi": 65, "residual_psi": 50, "flow_gpm": 500}, "floor_psi": 20}, {"floor_psi": (0, 65)}),
    ("supply.hydrant", "residual_psi"): ({"test": {"static_psi": 65, "residual_psi": 50, "flow_gpm": 500}, "flow_gpm": 250}, {}),
    ("supply.hydrant", "class_residual_psi"): ({"static_psi": 65}, {}),
    ("supply.hydrant", "reach_ft"): ({"test": HYDRANT, "line": SUPPLY_LINE, "flow_gpm": 250, "least_psi": 20}, {}),
    ("supply.hydrant", "reverse_gpm"): ({"test": HYDRANT, "line": SUPPLY_LINE, "floor_psi": 20, "most_psi": 180}, {}),
    ("pump.rating", "rated_pressure_psi"): ({"rated_gpm": 1000, "flow_gpm": 500}, {"rated_gpm": (50, 6000)}),
    ("pump.rating", "water_power_hp"): ({"flow_gpm": 1000, "net_psi": 150}, {}),
    ("supply.relay", "plan"): (
        {"coefficient": 0.08, "flow_gpm": 1000, "distance_ft": 3000, "rise_ft": 0, "most_psi": 185, "residual_psi": 20}, {}),
    ("supply.relay", "fill_minutes"): ({"bore_in": 5, "length_ft": 3000, "hoses": 1, "flow_gpm": 1000}, {}),
    ("hydraulics.friction_rule", "rounded_flow_gpm"): ({"flow_gpm": 137, "step_gpm": 25}, {}),
    ("supply.shuttle", "travel_minutes"): ({"distance_miles": 3, "is_round_trip": False}, {}),
    ("supply.shuttle", "plan"): ({"tankers": 2, **SHUTTLE}, {}),
    ("supply.shuttle", "tankers_for"): ({"wanted_gpm": 200, **SHUTTLE}, {}),
    ("pump.draft", "suction_size"): ({"rated_gpm": 1250}, {}),
    ("supply.shuttle", "mixed"): ({"kinds": [KIND], "road_minutes": 11.5}, {}),
    ("supply.shuttle", "portable_tanks"): ({"load_gal": 2500, "portable_gal": 3000}, {}),
    ("supply.shuttle", "siphons_for"): ({"flow_gpm": 600}, {}),
    ("supply.sources", "pond_gal"): ({"length_ft": 200, "width_ft": 100, "above_strainer_ft": 4}, {}),
    ("supply.sources", "stream_gpm"): ({"width_ft": 6, "depth_ft": 0.5, "float_ft": 10, "float_s": 8}, {}),
    ("supply.sources", "hydrant_flow_gpm"): ({"static_psi": 65, "residual_psi": 50, "test_flow_gpm": 500, "at_psi": 20}, {"at_psi": (0, 65)}),
    ("supply.sources", "additional_lines"): ({"static_psi": 65, "residual_psi": 50}, {}),
    ("service.uncertainty", "net_band_from_draft_psi"): (NET, {}),
    ("service.uncertainty", "pitot_flow_band_gpm"): (
        {"flows_gpm": [1250], "pitots_psi": [69], "pitot_accuracy_psi": 1, "tip_percent": 0.5}, {}),
    ("supply.sources", "tank_minutes"): ({"tank_gal": 500, "flow_gpm": 150}, {}),
    ("supply.sources", "relay_spacing_ft"): (
        {"coefficient": 0.08, "flow_gpm": 1000, "discharge_psi": 185, "residual_psi": 20, "rise_ft": 0}, {}),
    ("supply.sources", "shuttle_gpm"): ({"tank_gal": 2500, "cycle_minutes": 20}, {}),
}
NAMES = {"rows", "size_in", "gears", "pump_gear", "step_gpm", "test", "is_round_trip", "is_exposed", "kinds", "tankers", "line", "flows_gpm", "pitots_psi"}  # chosen from a table, and refused as unknown elsewhere
ARGUMENTS = [(*which, name) for which, (sound, _) in SOUND.items() for name in sound if name not in NAMES]
BOUNDS = [(*which, name, *ends) for which, (_, bounds) in SOUND.items() for name, ends in bounds.items()]


@pytest.mark.parametrize(("module", "function", "name"), ARGUMENTS)
def test_no_number(run, module, function, name):
    """Text and nothing are no numbers, and ten million is the most of anything, but of a pond."""
    sound, _ = SOUND[module, function]
    assert run(module, function, **sound) is not None
    for value, code in (("10", "not_a_number"), (None, "not_a_number"), (2e10 if name == "tank_gal" and module == "supply.sources" else 2e7, "too_large")):
        with pytest.raises(CalcError) as refused:
            run(module, function, **{**sound, name: value})
        assert (refused.value.field, refused.value.code) == (name, code)


@pytest.mark.parametrize(("module", "function", "name", "least", "most"), BOUNDS)
def test_bounds(run, module, function, name, least, most):
    """A bound is allowed; a ten-thousandth of the range past it is not, and the refusal tells both bounds."""
    sound, _ = SOUND[module, function]
    past = (most - least) / 10000
    for value in (least, most):
        assert run(module, function, **{**sound, name: value}) is not None
    for value in (least - past, most + past):
        with pytest.raises(CalcError) as refused:
            run(module, function, **{**sound, name: value})
        assert (refused.value.field, refused.value.code) == (name, "out_of_range")
        assert (refused.value.facts["least"], refused.value.facts["most"]) == (least, most)


def test_a_gear_without_speed(run):
    """A gear whose wheels would stand is none to compare with."""
    with pytest.raises(CalcError) as refused:
        run("pump.driveline", "gear_of_speed", shown_mph=10, gears=[["1", 10], ["2", 0]], pump_gear="1")
    assert (refused.value.field, refused.value.code) == ("gears", "not_positive")
