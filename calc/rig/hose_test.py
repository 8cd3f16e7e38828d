"""A hose's own coefficient from readings of two gauges, and how far it can be trusted."""
import math

from calc.base import display, entry, rounding
from calc.base.errors import CalcError
from calc.hydraulics import hose
from calc.rig.fields import MOST_READINGS

LEAST_DROP_PSI = 10  # two panel gauges read to about 2 psi each: a smaller drop is mostly gauge
MOST_DISAGREEMENT = 0.1


def fitted_coefficient(readings):
    """The coefficient that fits several readings best, by least squares of the loss.

    readings: [{"loss_psi", "flow_gpm", "length_ft"}], one to twenty, each above 0

    Returns `{"coefficient", "spread", "cautions"}`: spread is the root mean square of the readings'
    own coefficients about the fit, as a fraction; cautions among "drop_too_small", "readings_disagree",
    "one_reading". Raises CalcError naming the field and, as a fact, the reading.
    Source: square law of friction; limits common practice.
    """
    if not isinstance(readings, list) or not readings:
        raise CalcError("readings", "missing")
    if len(readings) > MOST_READINGS:
        raise CalcError("readings", "too_many", most=MOST_READINGS)
    coefficients, weights = [], []
    for count, reading in enumerate(readings):
        try:
            coefficients.append(hose.coefficient_from_test(reading["loss_psi"], reading["flow_gpm"], reading["length_ft"]))
        except CalcError as error:
            raise CalcError(error.field, error.code, reading=count)
        weights.append(hose.friction_loss_psi(1, reading["flow_gpm"], reading["length_ft"]) ** 2)
    total = sum(weights)
    coefficient = sum(weight * own for weight, own in zip(weights, coefficients)) / total
    spread = math.sqrt(sum((own / coefficient - 1) ** 2 for own in coefficients) / len(coefficients))
    cautions = []
    if any(reading["loss_psi"] < LEAST_DROP_PSI for reading in readings):
        cautions.append("drop_too_small")
    if max(coefficients) - min(coefficients) > MOST_DISAGREEMENT * coefficient:
        cautions.append("readings_disagree")
    if len(readings) == 1:
        cautions.append("one_reading")
    return {"coefficient": coefficient, "spread": spread, "cautions": cautions}


def read(readings, handbook, units):
    """Readings as typed to a coefficient as read out, beside the handbook's and what it changes.

    readings: as typed, each contract `hose_reading`
    handbook: the handbook's coefficient of this hose, in calc's unit
    units: see calc.base.display

    Returns contract `hose_test`. Raises CalcError naming the typed field and, as a fact, the reading. Source: fitted_coefficient.
    """
    plain = []
    for count, typed in enumerate(readings if isinstance(readings, list) else []):
        try:
            inlet_psi = entry.quantity(units, "pressure", "inlet", typed.get("inlet"))
            outlet_psi = entry.quantity(units, "pressure", "outlet", typed.get("outlet"))
            flow_gpm = entry.quantity(units, "flow", "flow", typed.get("flow"))
            length_ft = entry.quantity(units, "length", "length", typed.get("length"))
            if not inlet_psi > outlet_psi:
                raise CalcError("outlet", "not_below_inlet")
            for name, amount in (("flow", flow_gpm), ("length", length_ft)):
                if not amount > 0:
                    raise CalcError(name, "not_positive")
        except CalcError as error:
            raise CalcError(error.field, error.code, reading=count)
        plain.append({"loss_psi": inlet_psi - outlet_psi, "flow_gpm": flow_gpm, "length_ft": length_ft})
    fit = fitted_coefficient(plain)
    hundred_ft = 100 / display.scale(units, units["shown"], "length")["factor"]
    losses = [hose.friction_loss_psi(own, plain[0]["flow_gpm"], hundred_ft) for own in (fit["coefficient"], handbook)]
    return {
        "coefficient": display.working(units, "coefficient", fit["coefficient"]),
        "typed": as_entry(units, fit["coefficient"]),
        "readings": str(len(plain)),
        "handbook": display.working(units, "coefficient", handbook),
        "percent": rounding.rounded(abs(fit["coefficient"] / handbook - 1) * 100, 0),
        "is_lower": fit["coefficient"] < handbook,
        "spread": rounding.rounded(fit["spread"] * 100, 0),
        "cautions": fit["cautions"],
        "example": {
            "flow": display.text(units, "flow", plain[0]["flow_gpm"]),
            "measured": display.text(units, "pressure", losses[0]),
            "handbook": display.text(units, "pressure", losses[1]),
        },
    }


def as_entry(units, coefficient):
    """A coefficient as an entry of a profile, which has a point in every language.

    units: see calc.base.display
    coefficient: in calc's unit

    Raises CalcError naming units.
    """
    shown = display.scale(units, units["shown"], "coefficient")
    return rounding.plain(coefficient * shown["factor"], shown["places"] + 2) + "@" + units["shown"]
