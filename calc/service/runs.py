"""The pumping runs of a service test: for each rated point, what the gauges should show at this site."""
import math

from calc.base.errors import CalcError, check_positive
from calc.hydraulics import nozzle
from calc.pump import draft

MOST_TIPS = 4  # lines of nozzles one pump is tested through
MOST_OPTIONS = 6
END_GRACE_S = 30  # the last reading of a run is taken no sooner than this before its end


def runs_of(standard, rated_gpm):
    """The runs of a standard that apply to a pump of this rating.

    standard: as calc.service.plan says
    rated_gpm: rated capacity, US gallons per minute

    Raises nothing.
    """
    return [run for run in standard["runs"] if rated_gpm >= run.get("from_gpm", 0)]


def step_for(steps, bound, amount):
    """The first of the steps whose upper bound lies above the amount, or None.

    steps: list of dicts; the last may have no bound
    bound: the key of the bound, such as "below_gpm"
    amount: what is looked up, in the bound's unit

    Raises nothing.
    """
    for step in steps:
        if bound not in step or amount < step[bound]:
            return step
    return None


def tip_options(flow_gpm, tips_in, least_psi, most_psi):
    """Ways to pass a flow through equal tips with a pitot reading in the good range, the best first.

    flow_gpm: flow of the run, US gallons per minute, above 0
    tips_in: diameters at hand, inches
    least_psi, most_psi: good range of the pitot reading, psi

    Returns up to six, each contract `plan_tip` less its texts: the fewest tips first, then nearest the middle of
    the range; empty where no tip fits. Raises CalcError naming the input.
    Source: smooth_bore_pressure_psi; fewest tips, middle of the range: common practice.
    """
    check_positive("flow_gpm", flow_gpm)
    middle_psi = (least_psi + most_psi) / 2
    options = []
    for place, tip_in in enumerate(tips_in):
        for count in range(1, MOST_TIPS + 1):
            pitot_psi = nozzle.smooth_bore_pressure_psi(tip_in, flow_gpm / count)
            if least_psi <= pitot_psi <= most_psi:
                options.append((count, abs(pitot_psi - middle_psi), place, tip_in, pitot_psi))
    return [
        {"tip_in": tip_in, "place": place, "count": count, "pitot_psi": pitot_psi}
        for count, _, place, tip_in, pitot_psi in sorted(options)[:MOST_OPTIONS]
    ]


def run_plan(run, rig, conditions):
    """One pumping run as it is to go at this site.

    run: a row of the standard's runs
    rig, conditions: as calc.service.plan says

    Returns contract `plan_test`, less its texts. Raises CalcError naming the input.
    Source: the standard's data; draft.net_pump_pressure_psi solved for the gauge.
    """
    standard = rig["standard"]
    rated_gpm = rig["rated_gpm"]
    flow_gpm = rated_gpm * run["share_percent"] / 100
    hold = step_for(run["holds"], "below_gpm", rated_gpm)
    hold_s = hold["hold_s"] if hold else None
    band = standard["flow"]["band_percent"] / 100
    missing = [] if hold else ["hold"]
    loss_ft, gauge_psi = _gauge(run["net_psi"], flow_gpm, conditions, standard, missing)
    by_pitot = conditions.get("flow_by", "pitot") == "pitot"
    fields = _fields(by_pitot, conditions)
    return {
        "id": run["id"],
        "kind": "run",
        "flow_gpm": flow_gpm,
        "net_psi": run["net_psi"],
        "hold_s": hold_s,
        "due_s": due_s(hold_s, run["interval_s"]),
        "end_grace_s": END_GRACE_S,
        "interval_s": run["interval_s"],
        "flow_least_gpm": flow_gpm * (1 - band),
        "flow_most_gpm": flow_gpm * (1 + band),
        "suction_loss_ft": loss_ft,
        "gauge_psi": gauge_psi,
        "tips": _tips(flow_gpm, conditions, standard) if by_pitot else [],
        "expected": _expected(run, rig),
        "missing": missing,
        "fields": fields,
        "start": [field["id"] for field in fields if field["needed"]],
    }


def due_s(hold_s, interval_s):
    """When readings are due, in seconds of a run's clock: at its start, at each interval, at its end.

    hold_s: length of the run, seconds, or None where it is not known
    interval_s: seconds between readings, above 0

    Raises CalcError naming interval_s. Source: common practice.
    """
    check_positive("interval_s", interval_s)
    if hold_s is None:
        return [0]
    return [count * interval_s for count in range(math.ceil(hold_s / interval_s))] + [hold_s]


def _gauge(net_psi, flow_gpm, conditions, standard, missing):
    """Loss of the suction hose and what the discharge gauge shows at the net pressure; notes what is missing."""
    if conditions["source"] == "pressurised":
        return None, None  # net is above whatever the intake shows
    loss_ft = suction_loss_ft(flow_gpm, conditions, standard, missing)
    lift_ft = conditions.get("lift_ft")
    if lift_ft is None:
        missing.append("lift_ft")
    if loss_ft is None or lift_ft is None:
        return loss_ft, None
    return loss_ft, net_psi - draft.net_pump_pressure_psi(0, lift_ft, loss_ft)


def suction_loss_ft(flow_gpm, conditions, standard, missing):
    """Loss of suction hose and strainer at a flow, in feet of water, or None where the table has no such hose.

    flow_gpm: flow into the pump, US gallons per minute
    conditions, standard: as calc.service.plan says
    missing: list that the names of what is not known are added to

    Raises CalcError naming the input. Source: draft.suction_loss_ft.
    """
    needed = ("suction_size_in", "suction_length_ft", "suction_lines")
    absent = [name for name in needed if conditions.get(name) is None]
    missing.extend(absent)
    if absent:
        return None
    check_positive("suction_lines", conditions["suction_lines"])
    try:
        return draft.suction_loss_ft(
            standard["suction"], conditions["suction_size_in"], flow_gpm / conditions["suction_lines"],
            conditions["suction_length_ft"])
    except CalcError as error:
        if error.code != "unknown":
            raise CalcError("suction_length_ft" if error.field == "length_ft" else error.field, error.code, **error.facts)
        missing.append("suction_size_in")
        return None


def _tips(flow_gpm, conditions, standard):
    flow = standard["flow"]
    return tip_options(flow_gpm, conditions.get("tips_in", []), flow["pitot_least_psi"], flow["pitot_most_psi"])


def _expected(run, rig):
    """Engine and pump speed to expect, from when the pump was new and from its last test, by the affinity laws."""
    speeds = []
    for source in ("new", "last"):
        earlier = (rig.get(source) or {}).get(run["id"])
        is_estimate = earlier is None and run["id"] == "overload"
        if is_estimate:
            earlier = (rig.get(source) or {}).get("capacity")
        if not earlier or not earlier.get("engine_rpm"):
            continue
        from_psi = earlier.get("net_psi") or _rated_psi(rig, run if not is_estimate else {"id": "capacity"})
        check_positive("net_psi", from_psi)
        check_positive("engine_rpm", earlier["engine_rpm"])
        engine_rpm = earlier["engine_rpm"] * math.sqrt(run["net_psi"] / from_psi)
        ratio = rig.get("pump_ratio")
        speeds.append({"of": source, "engine_rpm": engine_rpm, "pump_rpm": engine_rpm * ratio if ratio else None,
                      "is_estimate": is_estimate})
    return speeds


def _rated_psi(rig, run):
    return [other["net_psi"] for other in rig["standard"]["runs"] if other["id"] == run["id"]][0]


def _fields(by_pitot, conditions):
    flow = [{"id": "pitot_psi", "kind": "pitot", "needed": True}] if by_pitot else [
        {"id": "meter_gpm", "kind": "flow", "needed": True}]
    intake = [{"id": "intake_psi", "kind": "pressure", "needed": True}] if conditions["source"] == "pressurised" else [
        {"id": "intake_inhg", "kind": "vacuum", "needed": False}]
    return [{"id": "discharge_psi", "kind": "pressure", "needed": True}] + flow + [
        {"id": "engine_rpm", "kind": "speed", "needed": True}] + intake + [
        {"id": "pump_rpm", "kind": "speed", "needed": False},
        {"id": "panel_rpm", "kind": "speed", "needed": False},
        {"id": "engine_f", "kind": "temperature", "needed": False},
        {"id": "oil_psi", "kind": "pressure", "needed": False},
    ]
