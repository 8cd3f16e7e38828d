"""The relay page's answer: how many pumpers, and what each must show."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.hydraulics import hose
from calc.pump import rating
from calc.supply import friction, relay, strain

LEAST_LEG_FT = 200  # closer than this more or larger hose is less work than one pumper more; our own judgment
NAMES = {"distance_ft": "distance", "most_psi": "most"}  # calc's names of entries


def answer(entries, shelf, units):
    """A relay from the water to the fire, ready to be read.

    entries: text as typed or chosen: `distance`, `climb`, `hose`, `lines`, `flow`, `most` (pressure a pumper may show),
        `floor` (pressure wanted at each intake) and, where it is known, `rated` (capacity of the pumpers)
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `relay_picture`. Raises CalcError naming the entry. Source: calc.supply.relay.
    """
    supply_hose = readout.hose(entries, shelf)
    hoses = readout.count(entries, "lines", 1, hose.MOST_PARALLEL)
    typed = readout.amounts(entries, units, (
        ("distance", "length", 1, 50000), ("climb", "rise", -3000, 3000), ("flow", "flow", 1, 10000),
        ("most", "pressure", 1, 600), ("floor", "pressure", 0, 100)))
    rated_gpm = readout.if_given(entries, units, "rated", "flow", 50, 6000)
    coefficient = hose.parallel_coefficient([supply_hose["coefficient"]] * hoses)
    plan = _plan(coefficient, typed)
    minutes = relay.fill_minutes(supply_hose["bore_in"], typed["distance"], hoses, typed["flow"])
    held_gal = hose.water_in_hose_gal(supply_hose["bore_in"], typed["distance"]) * hoses
    pressure_text = display.setting(units, plan["discharge_psi"])
    _, leg_friction = friction.read(units, "leg_friction", (supply_hose["coefficient"], hoses), typed["flow"], plan["leg_ft"])
    rows = [
        readout.row(units, "pressure", "pressure", plan["discharge_psi"], (
            ("floor", "pressure", typed["floor"]), ("friction", "pressure", plan["friction_psi"]),
            ("elevation", "pressure", plan["elevation_psi"]), ("pressure", "pressure", plan["discharge_psi"])), ("relay",)),
        leg_friction,
        readout.row(units, "pumpers", None, str(plan["pumpers"]), (
            ("distance", "length", typed["distance"]), ("reach", "length", plan["reach_ft"] or typed["distance"]),
            ("pumpers", None, str(plan["pumpers"]))), ("relay_pumpers",)),
        readout.row(units, "leg", "length", plan["leg_ft"], (
            ("distance", "length", typed["distance"]), ("legs", None, str(plan["pumpers"] - 1)),
            ("leg", "length", plan["leg_ft"])), ()),
        readout.row(units, "fill", "time", minutes, (
            ("held", "volume", held_gal), ("flow", "flow", typed["flow"]), ("minutes", "time", minutes)), ("relay_fill",)),
        readout.row(units, "shut", "pressure", plan["shut_psi"], (
            ("pressure", "pressure", plan["discharge_psi"]), ("elevation", "pressure", plan["elevation_psi"]),
            ("shut", "pressure", plan["shut_psi"])), ("elevation",)),
    ]
    return {
        "sum": "relay",
        "figure": {"kind": "pressure", "text": pressure_text},
        "facts": {"pumpers": str(plan["pumpers"]), "shut": display.text(units, "pressure", plan["shut_psi"])},
        "rows": rows,
        "cautions": _cautions(units, typed, plan, supply_hose, rated_gpm),
        "picture": {"pumpers": plan["pumpers"], "pressure": pressure_text, "floor": display.text(units, "pressure", typed["floor"]),
                    "leg": display.text(units, "length", plan["leg_ft"]), "climb": typed["climb"] / typed["distance"], "hoses": hoses},
    }


def _plan(coefficient, typed):
    try:
        return relay.plan(coefficient, typed["flow"], typed["distance"], typed["climb"], typed["most"], typed["floor"])
    except CalcError as error:
        raise CalcError(NAMES[error.field], error.code)


def _cautions(units, typed, plan, supply_hose, rated_gpm):
    cautions = strain.cautions(units, supply_hose, max(plan["discharge_psi"], plan["shut_psi"]))
    if plan["discharge_psi"] < 0:
        cautions.append(readout.caution(units, "caution", "slope_carries", ()))
    if plan["pumpers"] > 2 and plan["leg_ft"] < LEAST_LEG_FT:
        cautions.append(readout.caution(units, "caution", "legs_short", (("amount", "length", plan["leg_ft"]),)))
    if rated_gpm is not None:
        net_psi = plan["discharge_psi"] - typed["floor"]
        promised_psi = rating.rated_pressure_psi(rated_gpm, typed["flow"])
        if net_psi > promised_psi:
            code = "past_rating" if promised_psi > 0 else "past_capacity"
            cautions.append(readout.caution(units, "caution", code, (
                ("flow", "flow", typed["flow"]), ("amount", "pressure", net_psi), ("limit", "pressure", promised_psi))))
    return cautions
