"""What stands at the end of a line: a nozzle, or an inlet that takes water at a pressure.

An end is plain data, one of
    {"kind": "smooth", "tip_in", "nozzle_psi"}
    {"kind": "fog", "rated_gpm", "rated_psi"}
    {"kind": "selectable", "settings_gpm": [...], "set_gpm", "rated_psi"}   a fixed fog at the flow it is set to
    {"kind": "automatic", "min_gpm", "max_gpm", "rated_psi"}                reckoned at its greatest flow
    {"kind": "open", "pressure_psi", "flow_gpm"}                            a standpipe, sprinkler connection, next pumper
"""
from calc.base.errors import CalcError, check_positive
from calc.hydraulics import nozzle

MOST_SETTINGS = 20


def rating(end):
    """What an end is rated for: `(least_gpm, most_gpm, nozzle_psi)`, the flows alike but for an automatic nozzle.

    end: as the module says, every number above 0

    Raises CalcError naming the field. Source: common practice; nozzle.smooth_bore_flow_gpm for a smooth bore.
    """
    kind = end.get("kind")
    if not isinstance(kind, str) or kind not in _NEEDED:
        raise CalcError("kind", "unknown")
    for field in _NEEDED[kind]:
        if field not in end:
            raise CalcError(field, "missing")
        check_positive(field, end[field])
    if kind == "smooth":
        flow_gpm = nozzle.smooth_bore_flow_gpm(end["tip_in"], end["nozzle_psi"])
        return flow_gpm, flow_gpm, end["nozzle_psi"]
    if kind == "fog":
        return end["rated_gpm"], end["rated_gpm"], end["rated_psi"]
    if kind == "selectable":
        _check_setting(end)
        return end["set_gpm"], end["set_gpm"], end["rated_psi"]
    if kind == "automatic":
        if end["min_gpm"] > end["max_gpm"]:
            raise CalcError("min_gpm", "above_max", most=end["max_gpm"])
        return end["min_gpm"], end["max_gpm"], end["rated_psi"]
    return end["flow_gpm"], end["flow_gpm"], end["pressure_psi"]


def passing(end, flow_gpm, nozzle_psi):
    """An end as it is reported while this flows: `{"kind", "nozzle_psi", "flow_gpm", "reaction_lbf"}`.

    end: one that rating accepts
    flow_gpm: flow, US gallons per minute, 0 or more
    nozzle_psi: pressure at the end, psi, 0 or more

    The reaction of an inlet is None: nobody holds it. Raises CalcError naming the input.
    Source: nozzle.smooth_bore_reaction_lbf and nozzle.fog_reaction_lbf.
    """
    if end["kind"] == "open":
        reaction_lbf = None
    elif end["kind"] == "smooth":
        reaction_lbf = nozzle.smooth_bore_reaction_lbf(end["tip_in"], nozzle_psi)
    else:
        reaction_lbf = nozzle.fog_reaction_lbf(flow_gpm, nozzle_psi)
    return {"kind": end["kind"], "nozzle_psi": nozzle_psi, "flow_gpm": flow_gpm, "reaction_lbf": reaction_lbf}


def _check_setting(end):
    settings_gpm = end.get("settings_gpm")
    if not isinstance(settings_gpm, (list, tuple)) or not settings_gpm:
        raise CalcError("settings_gpm", "missing")
    if len(settings_gpm) > MOST_SETTINGS:
        raise CalcError("settings_gpm", "too_many", most=MOST_SETTINGS)
    for setting_gpm in settings_gpm:
        check_positive("settings_gpm", setting_gpm)
    if end["set_gpm"] not in settings_gpm:
        raise CalcError("set_gpm", "not_a_setting")


_NEEDED = {
    "smooth": ("tip_in", "nozzle_psi"),
    "fog": ("rated_gpm", "rated_psi"),
    "selectable": ("set_gpm", "rated_psi"),
    "automatic": ("min_gpm", "max_gpm", "rated_psi"),
    "open": ("pressure_psi", "flow_gpm"),
}
