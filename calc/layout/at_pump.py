"""The pump under a layout: net pressure from where its water comes, its rating, and the engine speed to expect."""
from calc.base import display, entry
from calc.base.errors import CalcError, check_not_negative
from calc.base.rounding import rounded, to_step
from calc.layout import answer as layout_answer
from calc.pump import draft, engine_speed, rating
from calc.supply import sources

RPM_STEP = 10  # an estimate is not read closer
SPEEDS = ("speed_capacity", "speed_seventy", "speed_fifty")  # of a rig's profile, in the order of pump.test_points


def answer(layout, shelf, units, profile):
    """How hard a layout makes the pump work, ready to be read.

    layout: as for calc.layout.answer, with where its water comes from, contract `source`
    shelf, units: as for calc.layout.answer
    profile: of the rig, see calc.rig.profile; what it does not hold is left out

    Returns what read does. Raises CalcError naming the typed field. Source: calc.pump.rating, calc.pump.draft, calc.pump.engine_speed.
    """
    return read(layout_answer.solved(layout, shelf, units), layout, units, profile)


def read(solution, layout, units, profile):
    """How hard a layout that is worked out makes the pump work.

    solution: of calc.layout.answer.solved
    layout, units, profile: as for answer

    Returns contract `at_pump`. Raises CalcError as answer does. Source: as for answer.
    """
    _, _, report = solution
    discharge_psi, flow_gpm = report["discharge_psi"], report["flow_gpm"]
    fed_psi = _fed_psi(layout.get("source"), units)
    added_psi = max(net_psi(layout.get("source"), discharge_psi, units), 0) if discharge_psi > 0 else 0
    rated_gpm = _known(profile, "pump_rated", units)
    return {
        "net": display.text(units, "pressure", added_psi),
        "power": display.text(units, "power", rating.water_power_hp(flow_gpm, added_psi)),
        "supply": None if fed_psi is None else _supply(fed_psi, discharge_psi, units),
        "rating": None if rated_gpm is None else _rating(rated_gpm, flow_gpm, added_psi, units),
        "engine": None if rated_gpm is None or added_psi == 0 else _engine(profile, units, rated_gpm, flow_gpm, added_psi),
        "picture": {
            "rating": [] if rated_gpm is None else [
                _drawn(curve_gpm, curve_psi, units) for curve_gpm, curve_psi in rating.rating_curve(rated_gpm)
            ],
            "point": _drawn(flow_gpm, added_psi, units),
        },
    }


def net_psi(source, discharge_psi, units):
    """Net pump pressure: what the pump itself adds, psi.

    source: where its water comes from, contract `source`
    discharge_psi: at the pump
    units: see calc.base.display

    Raises CalcError naming the typed field, source where its kind is not known. Source: calc.pump.draft.
    """
    kind = source.get("kind") if isinstance(source, dict) else None
    if kind == "tank":
        return discharge_psi
    if kind == "fed":
        return draft.net_pump_pressure_from_intake_psi(discharge_psi, _fed_psi(source, units))
    if kind == "draft":
        heights_ft = []
        for name in ("lift", "loss"):
            field = "suction" if name == "loss" else name
            height_ft = entry.quantity(units, "lift", field, source.get(name))
            check_not_negative(field, height_ft)
            heights_ft.append(height_ft)
        return draft.net_pump_pressure_psi(discharge_psi, heights_ft[0], heights_ft[1])
    raise CalcError("source", "unknown")


def _fed_psi(source, units):
    """What the intake gauge shows of a pump that is fed; None of another."""
    if not isinstance(source, dict) or source.get("kind") != "fed":
        return None
    return entry.quantity(units, "pressure", "intake", source.get("intake"))


def _supply(intake_psi, discharge_psi, units):
    """What to watch at an intake. Source: 20 psi residual, driver/operator study cards; the rest common practice."""
    level, code = "caution", None
    if intake_psi <= 0:
        level, code = "stop", "no_supply"
    elif intake_psi < sources.LEAST_RESIDUAL_PSI:
        code = "low_supply"
    elif intake_psi >= discharge_psi:
        code = "high_supply"
    return code and {"level": level, "code": code, "limit": display.text(units, "pressure", sources.LEAST_RESIDUAL_PSI)}


def _known(profile, name, units):
    typed = profile.get(name) if isinstance(profile, dict) else None
    return entry.quantity(units, "flow", name, typed) if typed else None


def _rating(rated_gpm, flow_gpm, net_psi, units):
    demand = rating.within_rating(rated_gpm, flow_gpm, net_psi)
    return {
        "within": demand["within"],
        "limit": demand["limit"],
        "rated": display.text(units, "flow", rated_gpm),
        "promised": display.text(units, "pressure", demand["rated_psi"]),
        "margin": display.text(units, "pressure", abs(demand["margin_psi"])),
        "extrapolated": demand["extrapolated"],
    }


def _engine(profile, units, rated_gpm, flow_gpm, net_psi):
    speeds_rpm = [entry.number(name, profile[name], "speed", display.decimal(units)) if profile.get(name) else None for name in SPEEDS]
    test = engine_speed.at_rating(rated_gpm, speeds_rpm)
    if len(test) < 2:
        return None
    try:
        estimate = engine_speed.estimated_rpm(test, flow_gpm, net_psi)
    except CalcError as error:
        return {"code": error.code}
    return {"rpm": rounded(to_step(estimate["engine_rpm"], RPM_STEP), 0), "basis": estimate["basis"]}


def _drawn(flow_gpm, net_psi, units):
    return [flow_gpm * display.scale(units, units["shown"], "flow")["factor"],
            net_psi * display.scale(units, units["shown"], "pressure")["factor"]]
