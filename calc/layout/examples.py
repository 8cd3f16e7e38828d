"""The trade's printed examples, worked out where they are asked for: on this phone, by the functions that its pages use."""
from calc.base.errors import CalcError
from calc.hydraulics import friction_rule, hose, nozzle, water
from calc.hydraulics.air import pressure_psi as air_psi
from calc.layout import pressure
from calc.pump import draft, heat, rating
from calc.supply import fireflow, foam, hoselay, hydrant, sources

EXACT = 1e-9  # what two sums of the same figures may differ by
# Topics whose answer is one figure: its name, and the function that gives it.
FIGURES = {
    "affinity": ("pressure_psi", rating.pressure_at_speed_psi),
    "air_pressure": ("pressure_psi", air_psi),
    "coefficient_metric": ("friction_psi", hose.friction_loss_psi),
    "elevation_pressure": ("pressure_psi", water.elevation_psi),
    "field_elevation": ("pressure_psi", hoselay.field_elevation_psi),
    "fittings": ("loss_psi", hoselay.fittings_psi),
    "trunk_loss": ("friction_psi", hoselay.trunk_loss_psi),
    "foam_draw": ("concentrate_gpm", foam.concentrate_gpm),
    "fire_area": ("flow_gpm", fireflow.by_area_gpm),
    "fire_volume": ("flow_gpm", fireflow.by_volume_gpm),
    "foam_minutes": ("minutes", foam.foam_minutes),
    "foam_spill": ("solution_gpm", foam.spill_gpm),
    "foam_total": ("concentrate_gal", foam.concentrate_gal),
    "friction_by_rule": ("friction_psi", friction_rule.loss_psi),
    "friction_loss_single_line": ("friction_psi", hose.friction_loss_psi),
    "hose_volume": ("held_gal", hose.water_in_hose_gal),
    "head_from_pressure": ("head_ft", water.head_ft),
    "hydrant_flow": ("flow_gpm", sources.hydrant_flow_gpm),
    "hydrant_pitot": ("flow_gpm", hydrant.outlets_flow_gpm),
    "lift_from_vacuum": ("lift_ft", draft.lift_from_vacuum_ft),
    "net_from_draft": ("net_psi", draft.net_pump_pressure_psi),
    "net_from_intake": ("net_psi", draft.net_pump_pressure_from_intake_psi),
    "nozzle_flow_smooth_bore": ("flow_gpm", nozzle.smooth_bore_flow_gpm),
    "nozzle_pressure_for_flow": ("nozzle_psi", nozzle.smooth_bore_pressure_psi),
    "nozzle_reaction_fog": ("reaction_lbf", nozzle.fog_reaction_lbf),
    "nozzle_reaction_smooth_bore": ("reaction_lbf", nozzle.smooth_bore_reaction_lbf),
    "parallel_coefficient": ("coefficient", hose.parallel_coefficient),
    "pitot_flow": ("flow_gpm", nozzle.pitot_flow_gpm),
    "rated_share": ("share", draft.rated_share),
    "relay_spacing": ("spacing_ft", sources.relay_spacing_ft),
    "shuttle": ("flow_gpm", sources.shuttle_gpm),
    "shutoff_rise": ("rise_f_per_min", heat.shutoff_rise_f_per_min),
    "tank_minutes": ("minutes", sources.tank_minutes),
    "tip_flow_metric": ("flow_gpm", nozzle.smooth_bore_flow_gpm),
    "tip_flow_rounded": ("flow_gpm", nozzle.smooth_bore_flow_gpm),
    "tip_flow_understated": ("flow_gpm", nozzle.smooth_bore_flow_gpm),
}
SEGMENTS = ("pdp_chart", "pdp_metric", "pdp_whole")  # hoses one behind another
SIZES = ("friction_metric",)  # one flow in hoses of several sizes
LINES = ("pdp_by_rule", "pdp_relay", "pdp_single_line", "pdp_siamese_master_stream")  # one line: its hose, its end and where it lies


def answers(topic, inputs):
    """What calc says of an example, by name.

    topic: one of FIGURES, LINES, SEGMENTS or SIZES
    inputs: figures by name as the topic's function takes them; of LINES: coefficient, length_ft, nozzle_psi, flow_gpm, perhaps
        rule, rise_ft, appliance_psi, parallel; of SEGMENTS: segments from the pump on, each [coefficient, length_ft, how many
        side by side, rise_ft], two or three of tip_in, nozzle_psi and flow_gpm, perhaps appliance_psi; of SIZES: coefficients
        by name, flow_gpm, length_ft

    Returns its figures by name, of LINES discharge_psi and friction_psi. Raises CalcError naming topic, or the input.
    """
    if topic in FIGURES:
        name, function = FIGURES[topic]
        return {name: function(**inputs)}
    if topic in SEGMENTS:
        return {"discharge_psi": _discharge_psi(**inputs)}
    if topic in SIZES:
        return {name: hose.friction_loss_psi(coefficient, inputs["flow_gpm"], inputs["length_ft"]) for name, coefficient in inputs["coefficients"].items()}
    if topic not in LINES:
        raise CalcError("topic", "unknown")
    line = dict(inputs)
    line["end"] = {"kind": "open", "pressure_psi": inputs["nozzle_psi"], "flow_gpm": inputs["flow_gpm"]}
    report = pressure.discharge_pressure({"lines": [line]}, rule=inputs.get("rule", "square"))
    return {"discharge_psi": report["discharge_psi"], "friction_psi": report["lines"][0]["friction_psi"]}


def _discharge_psi(segments, nozzle_psi=None, tip_in=None, flow_gpm=None, appliance_psi=0):
    if nozzle_psi is None:
        nozzle_psi = nozzle.smooth_bore_pressure_psi(tip_in, flow_gpm)
    end = {"kind": "open", "pressure_psi": nozzle_psi, "flow_gpm": flow_gpm} if tip_in is None else {"kind": "smooth", "tip_in": tip_in, "nozzle_psi": nozzle_psi}
    for coefficient, length_ft, parallel, rise_ft in reversed(segments):
        line = {"coefficient": coefficient, "length_ft": length_ft, "parallel": parallel, "rise_ft": rise_ft, "end": end}
        line["appliance_psi"] = 0 if "lines" in end else appliance_psi
        end = {"lines": [line]}
    return pressure.discharge_pressure(end)["discharge_psi"]


def agrees(answer, expected, tolerance, is_rounded_down):
    """Whether an answer is the printed one, within what its rounding allows; never below it where it was rounded down.

    answer, expected, tolerance: figures of one unit; the tolerance is not below 0
    is_rounded_down: whether print is known to be rounded down

    Raises nothing.
    """
    return (expected if is_rounded_down else expected - tolerance) - EXACT <= answer <= expected + tolerance + EXACT


def compared(examples):
    """Every example worked out and held to what is printed.

    examples: contract `printed_example`

    Returns the answer of contract `examples.compared`: of each topic how many there are, how many agree and, as a share of
    the printed figure, the deviation furthest off. A topic that ends in an error agrees in none. Raises nothing.
    """
    by_topic = {}
    for example in examples:
        held = by_topic.setdefault(example["topic"], {"topic": example["topic"], "examples": 0, "agree": 0, "worst": 0})
        held["examples"] += 1
        try:
            figures = answers(example["topic"], example["inputs"])
        except CalcError:
            held["worst"] = None
            continue
        expected = example["expected"]
        held["agree"] += all(agrees(figures[name], expected[name], example["tolerance"][name], example["rounded_down"]) for name in expected)
        if held["worst"] is not None:
            held["worst"] = max(held["worst"], max(abs(figures[name] / expected[name] - 1) for name in expected))
    return {"topics": [by_topic[topic] for topic in sorted(by_topic)]}
