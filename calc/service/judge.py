"""One figure against its limits, and one set of readings of a pumping run."""
from calc.base.errors import check_not_negative, check_number
from calc.hydraulics import nozzle
from calc.pump import draft
from calc.service import uncertainty

PASS, FAIL, NOT_PROVEN = "pass", "fail", "not_proven"
EDGE = 1e-9  # a limit that went through a conversion of units is met to nine figures


def judged(name, kind, value, least, most, band=None):
    """One figure against its limits.

    name, kind: of the figure, and of its quantity
    value: the figure, or None where it was not read
    least, most: limits, or None
    band: how far the figure may be off, or None where that is not known

    Returns contract `figure_judged`, less its texts. Raises CalcError naming the figure.
    """
    figure = {"id": name, "kind": kind, "value": value, "least": least, "most": most, "band": band, "margin": None,
              "status": NOT_PROVEN, "is_close": False}
    if value is None:
        return figure
    check_number(name, value)
    margins = [value - least] if least is not None else []
    if most is not None:
        margins.append(most - value)
    if not margins:
        return figure
    figure["margin"] = min(margins)
    edge = EDGE * max(1, abs(value))
    figure["status"] = PASS if figure["margin"] >= -edge else FAIL
    figure["is_close"] = band is not None and abs(figure["margin"]) <= band + edge
    return figure


def summed(figures, missing, code="blank"):
    """What several figures prove together: a failed one outweighs whatever is missing.

    figures: of judged
    missing: names of what was not read
    code: why it is not proven, where something is missing

    Returns `{"status", "code", "decided", "missing", "figures", "is_close"}`, the last where all passed and another gauge might say
    otherwise of one. Raises nothing.
    """
    failed = [figure for figure in figures if figure["status"] == FAIL]
    if failed:
        decided = deciding(failed)
        return {"status": FAIL, "code": _side(decided), "decided": decided, "missing": missing, "figures": figures, "is_close": False}
    missing = missing + [figure["id"] for figure in figures if figure["status"] == NOT_PROVEN and figure["id"] not in missing]
    if missing or not figures:
        return {"status": NOT_PROVEN, "code": code, "decided": None, "missing": missing, "figures": figures, "is_close": False}
    return {"status": PASS, "code": "met", "decided": deciding(figures), "missing": missing, "figures": figures,
            "is_close": any([figure["is_close"] for figure in figures])}


def _side(figure):
    if figure["kind"] == "check":
        return "no"
    return "below" if figure["least"] is not None and figure["value"] < figure["least"] else "above"


def deciding(figures):
    """The figure nearest to its limit, or furthest past it, for its size; None where there is none.

    figures: of judged

    Raises nothing.
    """
    best, best_share = None, None
    for figure in figures:
        if figure["margin"] is None:
            best = best or figure
            continue
        limit = figure["least"] if figure["least"] is not None else figure["most"]
        share = figure["margin"] / max(abs(limit), 1)
        if best_share is None or share < best_share:
            best, best_share = figure, share
    return best


def judged_set(test, tip, values, plan):
    """One set of readings of a run, with the flow and the net pressure it stands for.

    test: a run of the plan
    tip: `{"tip_in", "count"}` the flow is read at, or None
    values: the set, see calc.service.verdict
    plan: of calc.service.plan

    Returns contract `set_judged`, less its texts. Raises CalcError naming the field.
    Source: calc.hydraulics.nozzle, calc.pump.draft, calc.service.uncertainty.
    """
    flow_gpm, flow_band_gpm = _flow(tip, values, plan["accuracy"])
    net_psi, net_band_psi = _net(test, values, plan)
    for field in test["fields"]:
        if field["id"] != "pitot_psi" and values.get(field["id"]) is not None:
            check_number(field["id"], values[field["id"]])
    check_not_negative("at_s", values.get("at_s"))
    missing = [field["id"] for field in test["fields"] if field["needed"] and values.get(field["id"]) is None]
    if flow_gpm is None and "pitot_psi" not in missing and "meter_gpm" not in missing:
        missing.append("pitot_psi")
    figures = [
        judged("flow_gpm", "flow", flow_gpm, test["flow_gpm"], None, flow_band_gpm),
        judged("net_psi", "pressure", net_psi, test["net_psi"], None, net_band_psi),
    ]
    outcome = summed(figures, missing)
    outcome["at_s"] = values["at_s"]
    outcome["is_by_mean"] = False
    for name in ("engine_rpm", "pump_rpm", "panel_rpm"):
        outcome[name] = values.get(name)
    outcome["is_strayed"] = flow_gpm is not None and not test["flow_least_gpm"] <= flow_gpm <= test["flow_most_gpm"]
    return outcome


def _flow(tip, values, accuracy):
    """Flow of a set and its band; None where it was not read."""
    if values.get("meter_gpm") is not None:
        check_not_negative("meter_gpm", values["meter_gpm"])
        return values["meter_gpm"], values["meter_gpm"] * accuracy["meter_percent"] / 100
    pitots_psi = values.get("pitot_psi")
    if not tip or not isinstance(pitots_psi, list) or len(pitots_psi) != tip["count"] or None in pitots_psi:
        return None, None
    for pitot_psi in pitots_psi:
        check_not_negative("pitot_psi", pitot_psi)
    flows_gpm = [nozzle.smooth_bore_flow_gpm(tip["tip_in"], pitot_psi) for pitot_psi in pitots_psi]
    return sum(flows_gpm), uncertainty.pitot_flow_band_gpm(flows_gpm, pitots_psi, accuracy["pitot_psi"], accuracy["tip_percent"])


def _net(test, values, plan):
    """Net pressure of a set and its band; None where it cannot be worked out. Never the gauge alone."""
    discharge_psi, accuracy = values.get("discharge_psi"), plan["accuracy"]
    if discharge_psi is None:
        return None, None
    check_not_negative("discharge_psi", discharge_psi)
    if plan["conditions"]["source"] == "pressurised":
        if values.get("intake_psi") is None:
            return None, None
        net_psi = draft.net_pump_pressure_from_intake_psi(discharge_psi, values["intake_psi"])
        return net_psi, uncertainty.combined_band([accuracy["discharge_psi"], accuracy["intake_psi"]])
    lift_ft, loss_ft = plan["conditions"].get("lift_ft"), test["suction_loss_ft"]
    if lift_ft is None or loss_ft is None:
        return None, None
    return draft.net_pump_pressure_psi(discharge_psi, lift_ft, loss_ft), uncertainty.net_band_from_draft_psi(
        accuracy["discharge_psi"], accuracy["lift_ft"], loss_ft * accuracy["loss_percent"] / 100)
