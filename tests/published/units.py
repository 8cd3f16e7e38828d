"""Printed examples as calc takes them: hose by its coefficient, metric figures by Pint in US units."""
import pint

from site_src.content import catalogue, data

PINT = pint.UnitRegistry()
LABELS = ("hose", "supply", "tip")  # say what is meant, not part of the sum
PRESSURE, FLOW = ("kPa", "psi"), ("liter/minute", "gallon/minute")


def turned(amount, unit, other):
    return _short(PINT.Quantity(amount, unit).to(other).magnitude)


def _coefficient(name):
    return _short((catalogue.piped() if name == "piped" else catalogue.hose(data.by_id(data.named("hoses"))[name]))["coefficient"])


def _short(value):
    """Seven figures: a phone carries each of them."""
    return float(f"{value:.7g}")


def segments(named):
    """Hoses one behind another from the pump on, [name, length_ft, side by side, rise_ft], by their coefficients."""
    return [[_coefficient(name), *where] for name, *where in named]


def _whole(inputs):
    return {**inputs, "segments": segments(inputs["segments"])}


def _metric_whole(inputs):
    length_ft, rise_ft = (turned(inputs[name], "meter", "foot") for name in ("length_m", "rise_m"))
    return {"segments": segments([[inputs["laid"], length_ft, inputs["runs"], rise_ft]]),
            "nozzle_psi": turned(inputs["nozzle_kpa"], *PRESSURE), "flow_gpm": turned(inputs["flow_lpm"], *FLOW)}


def _metric_friction(inputs):
    """Loss in 30 m of each size, by the printed metric set; 77 mm hose has 65 mm couplings there."""
    names = {size: "metric-77-on-65" if size == 77 else f"metric-{size}" for size in inputs["sizes_mm"]}
    return {"coefficients": {f"in_{size}_psi": _coefficient(name) for size, name in names.items()},
            "flow_gpm": turned(inputs["flow_lpm"], *FLOW), "length_ft": turned(30, "meter", "foot")}


def _metric_tip(inputs):
    return {"tip_in": turned(inputs["tip_mm"], "mm", "inch"), "nozzle_psi": turned(inputs["nozzle_kpa"], *PRESSURE)}


def _metric_coefficient(inputs):
    """Loss in 100 m at 100 L/min, which is what a metric coefficient says."""
    return {"coefficient": _coefficient(inputs["laid"]), "flow_gpm": turned(100, *FLOW), "length_ft": turned(100, "meter", "foot")}


# by topic: its inputs, and what its answer's name and unit become
TURNED = {
    "pdp_chart": (_whole, None), "pdp_whole": (_whole, None),
    "pdp_metric": (_metric_whole, (("pump_kpa", "discharge_psi"), PRESSURE)),
    "friction_metric": (_metric_friction, (("kpa", "psi"), PRESSURE)),
    "tip_flow_metric": (_metric_tip, (("lpm", "gpm"), FLOW)),
    "coefficient_metric": (_metric_coefficient, (("loss_kpa", "friction_psi"), PRESSURE)),
}


def in_calc(row):
    """The row with what goes in, what is expected and how near, as calc has it."""
    inputs = {name: value for name, value in row["inputs"].items() if name not in LABELS}
    if row["topic"] not in TURNED:
        return {**row, "inputs": inputs}
    take, answer = TURNED[row["topic"]]
    row = {**row, "inputs": take(inputs)}
    if answer:
        names, units = answer
        row.update({part: {name.replace(*names): turned(value, *units) for name, value in row[part].items()} for part in ("expected", "tolerance")})
    return row
